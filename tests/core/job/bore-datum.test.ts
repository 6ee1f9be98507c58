// The datum of wear where no strip is left: the bore as bored, or as an overhaul left it, and only while it is the same bore.
import { describe, expect, it } from 'vitest'
import { recordedDatum } from '../../../src/core/job/bore-datum.ts'
import { changesOf } from '../../../src/core/job/changes.ts'
import { asKind, type Definitions, stepById } from '../../../src/core/job/definitions.ts'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { quantity } from '../../../src/core/units/index.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, Walk } from '../../helpers/example.ts'

const DEFS = exampleDefs()
type Machine = Definitions['machine']
type Overhaul = NonNullable<Machine['overhauls']>[number]
const [FIRST, SECOND, THIRD] = DEFS.machine.overhauls as [Overhaul, Overhaul, Overhaul]
const text = (value: number, unit: string) => ({
  ...quantity(value, unit),
  value,
  unit,
  text: `${value} ${unit}`,
})
const BORED = {
  diameter: text(9.5004, 'in'),
  source: 'Bore report 7 (invented)',
} as Machine['bore']['as_bored'] & object
const DIAMETERS = asKind(stepById(DEFS, 'bore'), 'read')

function told(overhauls: readonly Overhaul[], bored?: Machine['bore']['as_bored'], step = DIAMETERS) {
  const { as_bored: _none, ...bore } = DEFS.machine.bore
  const machine = {
    ...DEFS.machine,
    overhauls: [...overhauls],
    bore: { ...bore, ...(bored && { as_bored: bored }) },
  }
  return recordedDatum({ machine }, step)
}

describe('the datum of the record', () => {
  it('is as bored before as left, and of several overhauls the earliest', () => {
    expect(told([FIRST, SECOND], BORED)).toMatchObject({
      datum: { from: 'as-bored record', source: BORED.source },
    })
    const { datum } = told([SECOND, FIRST])
    expect(datum).toMatchObject({ from: 'as-left record', since: FIRST.day, source: FIRST.report })
    expect(datum?.byPlace).toHaveLength(6)
    expect(datum?.byPlace?.[0]).toMatchObject({
      station: 'head_end',
      axis: 'vertical',
      expandedU: 0.0003 * 0.0254,
    })
    expect(told([])).toEqual({ datum: null, why: null })
  })

  it('is never of before a rebore or a new liner: what was left then begins it', () => {
    for (const renewed of ['bore', 'liner'] as const) {
      const cut = { ...SECOND, renewed: [renewed] }
      expect(told([FIRST, cut, THIRD]).datum).toMatchObject({ since: SECOND.day })
      // Nothing of the bore was measured then, nor since: there is none.
      expect(told([FIRST, { ...cut, left: [] }]).datum).toBeNull()
    }
    expect(told([FIRST, { ...SECOND, renewed: ['rings', 'piston'] }]).datum).toMatchObject({
      since: FIRST.day,
    })
  })

  it('is never of another material', () => {
    const chrome = { ...FIRST, bore_material: 'chrome plate' }
    expect(told([chrome, SECOND]).datum).toMatchObject({ since: SECOND.day })
    expect(told([{ ...FIRST, bore_material: ' Grey cast IRON ' }, SECOND]).datum).toMatchObject({
      since: FIRST.day,
    })
    const { datum, why } = told([], { ...BORED, material: 'chrome plate' })
    expect([datum, why]).toEqual([
      null,
      expect.stringContaining('it is of chrome plate, and the bore is grey cast iron'),
    ])
  })

  it('as bored is not used where it may be of before that, and it is said why', () => {
    const cut = { ...SECOND, renewed: ['bore' as const], left: [] }
    expect(told([FIRST, cut], BORED)).toEqual({ datum: null, why: expect.stringContaining('it has no day') })
    expect(told([FIRST, cut], { ...BORED, day: FIRST.day }).why).toContain(
      'renewed or cut after it (OR-2021-11',
    )
    expect(told([FIRST, cut], { ...BORED, day: SECOND.day }).datum).toMatchObject({ from: 'as-bored record' })
    // What was left since is told from in its place.
    expect(told([FIRST, cut, THIRD], BORED).datum).toMatchObject({ from: 'as-left record', since: THIRD.day })
  })

  it('has every place or is none: the one left out may be the one that wore', () => {
    const partly = { ...FIRST, left: FIRST.left.slice(1) }
    expect(told([partly, SECOND]).datum).toMatchObject({ since: SECOND.day })
    expect(told([partly]).datum).toBeNull()
  })

  it('is none for what is left on this job', () => {
    const left = { ...DIAMETERS, step: { ...DIAMETERS.step, stage: 'as_left' as const } }
    expect(told([FIRST], BORED, left)).toEqual({
      datum: null,
      why: expect.stringContaining('may have been cut'),
    })
  })
})

describe('wear from the record', () => {
  const gone = (defs = DEFS) => new Walk(defs).toBore().keys(...BORE_LINES, '3', ...AFTER_LINES.slice(5))
  const shown = (walk: Walk) => {
    const entry = walk.entries.findLast((e) => e.type === 'verdict.given')
    if (entry === undefined) throw new Error('not judged')
    const style = { width: 200, record: 'EXAMPLE' as const, ascii: true }
    return entryBlocks(walk.engine.defs, walk.state, entry, style).flatMap(({ rows }) =>
      rows.map((r) => r.text),
    )
  }

  it('is each place less its own size, the greatest of an axis, with the U of the two', () => {
    const walk = gone()
    const record = boreRecord(walk.state.verdicts.bore_judged?.verdict)
    const [vertical] = record?.result.wearFromDatum?.perAxis ?? []
    // Centre, top to bottom: 9.50685 now by 0.99999 to 20 degC, 9.5022 as left in 2019.
    expect((vertical?.wearM ?? 0) / 0.0254).toBeCloseTo(9.50681 - 9.5022, 5)
    expect(vertical?.station).toBe('centre')
    expect((vertical?.expandedU ?? 0) / 0.0254).toBeCloseTo(
      Math.hypot((record?.inputs.readingU ?? 0) / 0.0254, 0.0003),
      9,
    )
    expect(shown(walk).join('\n')).toMatch(
      /wear from as-left record of 2019-05-14 \(OR-2019-07 \(invented\)\): top to bottom 0\.0046 \(U 0\.0004\) {2}side to side 0\.0023 \(U 0\.0004\)\n {2}the sizes of the record taken as at 20 degC/,
    )
  })

  it('is none where the record may not be used, and the sheet says why', () => {
    const bored = '  as_bored: { diameter: 9.5004 in, source: report (invented) }\n  lined: false'
    const defs = exampleDefs({
      machine: (all) =>
        all
          .replace('  lined: false', bored)
          .replace('renewed: [rings, rod]', 'renewed: [bore]')
          .replace(
            /^ {4}left:[\s\S]*?(?=^limits:)/m,
            '    left:\n      - { of: bore diameter, value: 9.5000 in }\n',
          )
          .replace('of: bore diameter, value', 'of: rod diameter, value'),
    })
    expect(shown(gone(defs)).join('\n')).toContain(
      'no datum of wear: no unswept strip was read, and the size as bored is not used: it has no day, and the bore was renewed or cut since (OR-2019-07 (invented))',
    )
  })

  it('no rate of wear reaches across another material either', () => {
    const rateOf = (defs: Definitions) => changesOf(defs, new Walk(defs).toVerdict().state)[0]?.rate
    // No running hours are read in this procedure: where there are figures to tell a rate from, that is what is missing.
    expect(rateOf(DEFS)).toMatchObject({ ok: false, error: { code: 'no-hours' } })
    const chrome = exampleDefs({
      machine: (all) => all.replaceAll(/^ {4}report:/gm, '    bore_material: chrome plate\n    report:'),
    })
    expect(rateOf(chrome)).toBeNull()
  })
})
