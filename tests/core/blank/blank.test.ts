// A blank sheet as data: of every shipped procedure on both machines, nothing that a screen would say or ask is missing on paper.
import { describe, expect, it } from 'vitest'
import type { BlankPiece, BlankSheet } from '../../../src/core/blank/blank.ts'
import { blankOf } from '../../../src/core/blank/blank-of.ts'
import { blankRecord } from '../../../src/core/blank/record.ts'
import type { Evidence, StepOf } from '../../../src/core/definition/procedure.ts'
import { type Definitions, gasLimitById } from '../../../src/core/job/definitions.ts'
import { kitOf } from '../../../src/core/kit/kit.ts'
import { inInk } from '../../../src/core/lib/in-ink.ts'
import { exampleDefs } from '../../helpers/example.ts'
import { SHIPPED, shippedDefs } from '../../helpers/shipped-jobs.ts'

const DAY = '2026-03-14'
const blank = (defs: Definitions) => blankOf(defs, kitOf(defs, DAY), 'EXAMPLE', [])

function flat(pieces: readonly BlankPiece[]): BlankPiece[] {
  return pieces.flatMap((one) =>
    one.is === 'permit' || one.is === 'together' ? [one, ...flat(one.pieces)] : [one],
  )
}
const piecesOf = ({ sections }: BlankSheet) => sections.flatMap(({ pieces }) => flat(pieces))

function textsOf(pieces: readonly BlankPiece[]): string {
  return pieces
    .flatMap((one) => {
      if (one.is === 'words') return [one.text]
      if (one.is === 'ticks') return one.texts
      if (one.is === 'boxes') return [...one.columns.map(({ head }) => head), ...one.rows.flat()]
      return one.is === 'drawing' ? one.lines : []
    })
    .join('\n')
}

/** What a line of a hold point has to say on paper, straight from the files. */
function wantedOf(defs: Definitions, evidence: Evidence): (string | undefined)[] {
  const points = defs.machine.site.isolation_points.map(({ name }) => name)
  switch (evidence.kind) {
    case 'locks':
      return [evidence.ask, ...(evidence.taken_off === undefined ? points : ['taken off by'])]
    case 'numbers':
      return [evidence.ask, ...(evidence.per === 'isolation_point' ? points : [])]
    case 'words':
      return [evidence.ask, `write: ${evidence.words}`, evidence.life?.text]
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      expect(limit).toBeDefined()
      const { gas } = defs.machine.site
      return [
        ...[evidence.ask, limit?.at_least?.text, limit?.at_most?.text, limit?.purpose, limit?.source],
        `Stale after ${gas.life.text}`,
      ]
    }
    case 'measured':
      return [
        ...[evidence.ask, evidence.place, evidence.at_least?.text, evidence.at_most?.text, evidence.source],
        `Stale after ${evidence.life.text}`,
      ]
    case 'wait':
      return [evidence.ask, evidence.lasts.text, evidence.begin_words, evidence.words]
    case 'lift':
      return [evidence.load, evidence.rating, evidence.sling, evidence.inspected, evidence.words]
    case 'witness':
      return [evidence.ask, ...evidence.roles, 'who did none of it', 'signature']
  }
}

function wantedOfRead(defs: Definitions, step: StepOf<'read'>): (string | undefined)[] {
  const kinds: readonly string[] = defs.seats.find(({ id }) => id === step.with)?.kinds ?? []
  return [
    step.repeats.at_most === 1 ? undefined : step.repeats.within.text,
    ...step.stations.flatMap(({ label }) =>
      (step.axes ?? [null]).map((axis) => (axis === null ? label : `${label}, ${axis.label}`)),
    ),
    ...Object.entries(step.how).flatMap(([kind, says]) => (kinds.includes(kind) ? [says] : [])),
  ]
}

function lostOf(defs: Definitions): string[] {
  const all = textsOf(piecesOf(blank(defs)))
  const wanted = defs.steps.flatMap(({ step }) => [
    ...[step.title, step.text, step.hazard, step.trouble],
    ...(step.needs ?? []).map(({ what }) => what),
    ...(step.kind === 'gate'
      ? [step.clear_words, ...step.evidence.flatMap((one) => wantedOf(defs, one))]
      : []),
    ...(step.kind === 'read' ? wantedOfRead(defs, step) : []),
    ...(step.kind === 'confirm' ? [step.seen] : []),
    ...(step.kind === 'observe' ? step.conditions.map(({ label }) => label) : []),
    ...(step.kind === 'decide' ? step.choices : []),
    ...('places' in step ? (step.places ?? []).map(({ what }) => `${what} (step `) : []),
  ])
  const front = [...defs.makeSafe, defs.machine.site.emergency, ...(defs.machine.site.rescue ?? [])]
  const names = [...defs.hazards.map(({ name }) => name), ...defs.procedure.not_for]
  return [...wanted, ...front, ...names].filter(
    (text): text is string => text !== undefined && !all.includes(inInk(text)),
  )
}

describe.each(['tc-401', 'rg-27'] as const)('every shipped procedure on %s', (site) => {
  it('has all it says and asks on its sheet', () => {
    expect(SHIPPED.length).toBeGreaterThan(30)
    const lost = SHIPPED.map((name) => [name, lostOf(shippedDefs(name, site))])
    expect(lost.filter(([, texts]) => texts?.length !== 0)).toEqual([])
  })
})

describe('what a pen does', () => {
  it.each([
    ['Block in? Then type the words.', 'Block in? Then write the words.'],
    ['Show another mechanic or lead, then type.', 'Show another mechanic or lead, then write.'],
    [
      'Each on its tag; key the GREATEST and the LEAST.',
      'Each on its tag; write down the GREATEST and the LEAST.',
    ],
    ['Key the one that is further off zero.', 'Write down the one that is further off zero.'],
    ['Read it once more before you key it.', 'Read it once more before you write it down.'],
    ['Whoever is at the keyboard keys it.', 'Whoever has the sheet writes it down.'],
    ['looks at the block, and keys their own initials', 'looks at the block, and writes their own initials'],
    ['who reads and keys', 'who reads and writes'],
    ['Agree who calls out, who keys and who leads.', 'Agree who calls out, who writes and who leads.'],
    ['Key leave. A lead takes it in.', 'This sheet ends here. A lead takes it in.'],
    [
      'Drive the key out of its keyway. A type 2 key, PRESS SQUARE.',
      'Drive the key out of its keyway. A type 2 key, PRESS SQUARE.',
    ],
  ])('is told for: %s', (keyed, written) => expect(inInk(keyed)).toBe(written))

  it('is what every shipped sheet says, on both machines: nobody keys, types or presses a key on paper', () => {
    const keys = /\b(?:keys?|keyed|keying|keyboard|types?|typed|screen|press enter)\b/i
    const said = (['tc-401', 'rg-27'] as const).flatMap((site) =>
      SHIPPED.flatMap((name) => textsOf(piecesOf(blank(shippedDefs(name, site)))).split('\n')),
    )
    expect([...new Set(said.filter((line) => keys.test(line)))]).toEqual([])
  })
})

describe('a blank sheet of the bore', () => {
  const defs = exampleDefs()
  const sheet = blank(defs)
  const pieces = piecesOf(sheet)
  const all = textsOf(pieces)
  const boxesAfter = (title: string) => {
    const at = pieces.findIndex((one) => one.is === 'words' && one.margin !== '' && one.text === title)
    return pieces.slice(at).flatMap((one) => (one.is === 'boxes' ? [one] : []))
  }

  it('has a box for each repeat at each place, with the unit, and none of them filled in', () => {
    const [grid] = boxesAfter('Bore')
    expect(grid?.columns.map(({ head }) => head)).toEqual([
      ...['where', '1st, in', '2nd, in', '3rd, in', '4th, in', 'time', 'initials'],
    ])
    expect(grid?.rows).toHaveLength(6)
    for (const row of grid?.rows ?? []) expect(row).toHaveLength(1)
  })

  it('has the drawings of the screen, one for each line across', () => {
    const drawings = pieces.filter((one) => one.is === 'drawing').map(({ lines }) => lines.join('\n'))
    expect(drawings.some((one) => one.includes('12 to 6 o'))).toBe(true)
    expect(drawings.some((one) => one.includes('9 to 3 o'))).toBe(true)
    expect(drawings.every((one) => one.includes('#'))).toBe(true)
  })

  it('has each limit with its book and page, and not rounded', () => {
    const [grid] = boxesAfter('Bore judged')
    expect(grid?.rows.map(([what, limit]) => `${what} ${limit}`)).toEqual([
      'out of round at most 0.0095 in',
      'taper at most 0.0055 in',
      'spread of all at most 0.00713 in',
      'largest at most 9.53 in',
    ])
    expect(grid?.rows[0]?.[2]).toMatch(/1996.*p\. 259/)
    expect(grid?.rows[3]?.[2]).toMatch(/^Machine record: Machine book rev\. 4, sheet 12/)
  })

  it('says of a limit that nobody has that it is HOLD', () => {
    const { fallback: _, ...machine } = defs.machine
    const bare = piecesOf(blank({ ...defs, machine: { ...machine, limits: [] } }))
    expect(textsOf(bare).match(/NONE: HOLD/g)).toHaveLength(4)
  })

  it('says on its front and at each hold point that none is enforced', () => {
    const warned = /^Hold points on paper are not enforced by Barover\. /
    const said = (some: readonly BlankPiece[]) =>
      some.filter((one) => one.is === 'words' && one.tone === 'caution' && warned.test(one.text)).length
    expect(said(sheet.sections[0]?.pieces ?? [])).toBe(1)
    const permits = pieces.filter((one) => one.is === 'permit')
    expect(permits).toHaveLength(1)
    for (const permit of permits) expect(said(permit.pieces)).toBe(1)
    expect(all).toContain('The maker’s manual, site permits, local code and licensed practice come first.')
  })

  it('shows no figure of before: whoever reads it first would read what is expected', () => {
    const before = defs.machine.overhauls?.flatMap(({ left }) => left.map(({ value }) => value.text)) ?? []
    expect(before.length).toBeGreaterThan(5)
    expect(before.filter((text) => all.includes(text))).toEqual([])
  })

  it('has nobody sign who may not, but in practice', () => {
    const practice = textsOf(piecesOf(blankOf(defs, kitOf(defs, DAY), 'PRACTICE', [])))
    expect(all).not.toContain('T. Sena')
    expect(practice).toContain('T. Sena')
  })

  it('holds nothing that cannot be seen', () => {
    const procedure = { ...defs.procedure, title: 'Bore\u202e9.5\u0007' }
    expect(blank({ ...defs, procedure }).title).toBe('Bore?9.5?: TC-401-1')
  })

  it('is REAL only where nothing in it is invented', () => {
    const own = { ...defs, machine: { ...defs.machine, invented: false } }
    const mine = {
      ...own,
      crew: { ...own.crew, invented: false },
      instruments: { ...own.instruments, invented: false },
    }
    expect(blankRecord(defs, null)).toEqual({ ok: true, value: 'EXAMPLE' })
    expect(blankRecord(defs, 'REAL').ok).toBe(false)
    expect(blankRecord(own, null).ok).toBe(false)
    expect(blankRecord(mine, null)).toEqual({ ok: true, value: 'REAL' })
    expect(blankRecord(mine, 'PRACTICE')).toEqual({ ok: true, value: 'PRACTICE' })
  })
})
