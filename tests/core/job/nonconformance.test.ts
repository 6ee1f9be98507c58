// What did not conform has a number, is never silent, and a permit given beforehand changes nothing about it.
import { describe, expect, it } from 'vitest'
import { deviable, permitsFor } from '../../../src/core/job/admit-deviation.ts'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { nonconformances } from '../../../src/core/job/nonconformance.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { markedVoid } from '../../../src/core/sheet/shown-block.ts'
import { openItems } from '../../../src/core/talk/open-items.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'
import { SCORED } from '../../helpers/scored.ts'
import { gate, NO_START, type Raw, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const STYLE = { width: 79, record: 'EXAMPLE', ascii: true } as const
const list = (walk: Walk) => nonconformances(walk.engine.defs, walk.state)
const open = (walk: Walk) => openItems(walk.engine.defs, walk.state)
const shown = (walk: Walk, type: string, step?: string) => {
  const entry = walk.entries.findLast(
    (e) => e.type === type && (step === undefined || ('step' in e && e.step === step)),
  )
  const block = entry === undefined ? null : entryBlock(walk.engine.defs, walk.state, entry)
  return block === null ? '' : plainText(layOut(block, STYLE))
}

describe('one whose verdict fell', () => {
  /** One diameter far out, then put right: HOLD or REWORK before, ACCEPT now, and NC-1 left behind. */
  const turned = () => {
    const all = Array.from({ length: 10 }, () => '9.5009')
    const walk = new Walk(exampleDefs({ machine: noOverhauls })).toBore()
    walk.keys('9.5200', '9.5200', ...all, ...AFTER_LINES)
    expect(list(walk)).toMatchObject([{ name: 'NC-1', stands: true }])
    const { word } = list(walk)[0] ?? { word: '' }
    for (const n of [0, 1]) {
      const of = walk.state.readings['bore.head_end.vertical']?.[n]?.seq ?? -1
      walk.bring({ do: 'correct', of, typed: '9.5009', why: 'misread' })
    }
    const now = walk.state.verdicts.bore_judged?.verdict.result.verdict
    const fellBy = walk.state.raised.find(({ seq }) => seq === list(walk)[0]?.seq)?.voidBy
    return { walk, word, now, fellBy }
  }

  it('is said to have fallen, with what and what it came to since: on the sheet, at a hand-over and at the close', () => {
    const { walk, word, now } = turned()
    expect(now).toBe('ACCEPT')
    const fell = 'fell when sheet 7.1, Bore, was corrected; ACCEPT since'
    const said = `NC-1 Bore judged: ${word}; ${fell}, and no decision is due on it`
    const flat = (text: string) => text.replace(/\n.*?\| +/g, ' ')
    expect(flat(shown(walk, 'verdict.given'))).toContain(`Nonconformance ${said}.`)
    expect(handOverLines(walk.engine.defs, walk.state).join('\n')).toMatch(
      new RegExp(`NC-1 at \\d+ Bore judged, ${word}: ${fell}`),
    )
    walk.key('')
    expect(walk.last.type).toBe('job.closed')
    expect(flat(shown(walk, 'job.closed'))).toContain(said)
  })

  it('has VOID on its block where the log is read back, and no other block has', () => {
    const { walk, fellBy } = turned()
    const blocks = walk.entries
      .filter(({ type }) => type === 'verdict.given')
      .map((entry) => {
        const own = entryBlock(walk.engine.defs, walk.state, entry)
        return markedVoid(own === null ? [] : [own], entry, walk.state)
      })
      .map((read) => read.map((block) => plainText(layOut(block, STYLE))).join('\n'))
    expect(blocks[0]).toContain(`VOID since entry ${fellBy}: it counts for nothing`)
    expect(blocks[0]).toMatch(new RegExp(`\\( \\w+ \\)  VOID since entry ${fellBy}`))
    expect(blocks.at(-1)).toContain('( ACCEPT )')
    expect(blocks.at(-1)).not.toContain('VOID')
  })
})

describe('a nonconformance', () => {
  it('is every verdict but ACCEPT and every finding marked so, numbered in order of entry', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, ...SCORED)
    expect(list(walk)).toMatchObject([
      { name: 'NC-1', step: 'surface', word: 'scored', stands: true, decided: null },
      { name: 'NC-2', step: 'bore_judged', word: 'MONITOR', stands: true, decided: null },
    ])
    expect(shown(walk, 'finding.observed', 'surface')).toMatch(/Nonconformance NC-1/)
    expect(shown(walk, 'verdict.given')).toMatch(/Nonconformance NC-2/)
  })

  it('is none for ACCEPT or for a finding that is not marked', () => {
    const walk = new Walk(exampleDefs({ machine: noOverhauls })).toBore().keys('9.5009', '9.5009')
    walk.keys(...Array.from({ length: 10 }, () => '9.5009'), ...AFTER_LINES)
    expect(walk.state.verdicts.bore_judged?.verdict.result.verdict).toBe('ACCEPT')
    expect(list(walk)).toEqual([])
    expect(shown(walk, 'verdict.given')).not.toMatch(/Nonconformance/)
  })

  it('keeps its number when it becomes void, and the next verdict gets the next', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h')
    const of = walk.state.readings['bore.centre.vertical']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of, typed: '9.5070', why: 'misread' })
    expect(list(walk)).toMatchObject([
      { name: 'NC-1', stands: false, decided: null },
      { name: 'NC-2', stands: true, decided: null },
    ])
    expect(open(walk)).toEqual(['NC-2 Bore judged: MONITOR, its disposition is void'])
  })

  it('is closed by a disposition, and a finding without one holds up the end', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, ...SCORED, '1', 'KH', 'read again after 4000 h', '')
    expect(list(walk).at(-1)).toMatchObject({ name: 'NC-2', decided: { choice: 'accept' } })
    expect(walk.prompt).toMatchObject({ kind: 'findings', open: [{ name: 'NC-1' }] })
    expect(walk.state.closed).toBeNull()
  })

  it('said to be put right stands by one word, and that is said before it is and beside it; on hold or by concession not', () => {
    const atEnd = () =>
      new Walk().toBore().keys(...BORE_LINES, ...SCORED, '1', 'KH', 'read again after 4000 h', '', '1')
    const made = (word: string) => {
      const walk = atEnd().keys(word)
      const before = walk.said.join(' ')
      walk.keys('KH', 'stoned and wiped, seen by ML')
      return { before, after: shown(walk, 'disposition.set').replace(/\n.*?\| +/g, ' ') }
    }
    for (const word of ['rework', 'repair', 'replace']) {
      expect(made(word).before).toContain('Only if it was done')
      expect(made(word).after).toContain('by the word of KH: nothing on record shows it as it is now')
    }
    expect(made('accept').before).not.toContain('Only if it was done')
    expect(made('accept').after).not.toContain('by the word of')
  })

  it('by concession on the word of one of the crew says that they are named and did not sign; a paper stands as it is', () => {
    const conceded = (authority: string) => {
      const walk = new Walk()
        .toVerdict()
        .keys('5', 'KH', 'runs until the liner is here', authority, '2026-06-30')
      return shown(walk, 'disposition.set').replace(/\n.*?\| +/g, ' ')
    }
    expect(conceded('PB')).toContain('on the authority of PB, named and not signed, until 2026-06-30')
    expect(conceded('MT-12')).toContain('on the authority of MT-12, until')
  })

  it('of a procedure without a decision is left open at the end, not silent', () => {
    const defs = exampleDefs()
    const steps = defs.steps.filter((s) => s.id !== 'disposition')
    const walk = new Walk({ ...defs, steps }).toVerdict().keys('')
    expect(walk.state.closed).toBe('MONITOR')
    expect(shown(walk, 'job.closed')).toMatch(/open: NC-1 Bore judged: MONITOR, no disposition/)
  })
})

describe('what is open', () => {
  it('says of a hold point that is not complete that nobody goes in, and nothing of one that is', () => {
    const at = new Walk().toGate().keys('L-101', 'open')
    expect(at.said.join('\n')).toMatch(
      /Hold point 2 is not complete: nobody goes in\.\nNothing that was found or put off is open/,
    )
    expect(new Walk().toBore().keys('open').said.join('\n')).not.toContain('nobody goes in')
  })

  it('is said at any prompt: n/a, doubts kept, late readings kept', () => {
    const walk = new Walk().toBore().keys('open')
    expect(walk.said.at(-1)).toBe('Nothing that was found or put off is open so far.')
    walk.keys('9.60', '3', 'bored out last year', 'n/a', 'no room')
    walk.wait(31).keys('9.5021', 'ALL OUT', '20.9', '0', '0', '20.9', '0', '0', 'ML', '1')
    expect(open(walk)).toEqual([
      expect.stringMatching(/TOP TO BOTTOM: n\/a, no room$/),
      expect.stringMatching(/kept, bored out last year$/),
      expect.stringMatching(/kept, keyed after the gate had closed, confirmed since$/),
    ])
    expect(open(new Walk().toBore().keys('stop'))).toEqual(['STOP is not released'])
  })
})

describe('a deviation permit', () => {
  const permit = (walk: Walk, more: Record<string, string> = {}) =>
    walk.bring({
      do: 'permit-deviation',
      step: 'bore_judged',
      what: 'the counterbore is not measured',
      why: 'it was renewed',
      authority: 'site rule MT-2',
      until: '2026-12-31',
      person: 'KH',
      ...more,
    })

  it('is given beforehand, shown with the verdict and to whoever decides, and changes nothing', () => {
    const walk = new Walk().toBore()
    expect(permit(walk)).toBeNull()
    expect(walk.last).toMatchObject({ type: 'deviation.permitted', valid: { until: '2026-12-31' } })
    walk.keys(...BORE_LINES, ...AFTER_LINES)
    const without = new Walk().toVerdict()
    const { readings: _a, ...verdict } = walk.state.verdicts.bore_judged?.verdict ?? { readings: [] }
    const { readings: _b, ...other } = without.state.verdicts.bore_judged?.verdict ?? { readings: [] }
    expect(verdict).toEqual(other)
    expect(shown(walk, 'verdict.given')).toMatch(/Deviation permit DP-1, until 2026-12-31/)
    expect(permitsFor(walk.engine.defs, walk.state, 'bore_judged').map((p) => p.name)).toEqual(['DP-1'])
  })

  it.each([
    ['hold_point', 'a gate'],
    ['hold_point.oxygen_inside', 'evidence of a gate'],
    ['bore', 'a step with hazards'],
    ['surface', 'a finding'],
    ['disposition', 'a decision'],
    ['tidy', 'a task'],
    ['nothing', 'no step'],
  ])('is never for %s, %s', (step) => {
    const walk = new Walk().toBore()
    expect(permit(walk, { step })).toBe('not-deviable')
    expect(walk.state.deviations).toEqual([])
  })

  it('is never for anything that exposes people, nor for a gate, in the whole of a job', () => {
    const walk = new Walk().throughGate()
    const steps = deviable(walk.engine.defs, walk.state)
    expect(steps.map((s) => s.id)).toEqual([
      'gauge_temp_before',
      'set_before',
      'gauge_temp_after',
      'set_after',
      'bore_judged',
    ])
    expect(steps.every((s) => (s.step.exposes ?? []).length === 0)).toBe(true)
  })

  it('is never for work that lets a hazard in', () => {
    const isolated = gate('isolated', ['start'], [NO_START, WITNESS])
    const steps = (more: Raw) => [readOne('size', more), isolated, tell('end', { exposes: ['start'] })]
    const permitted = (more: Raw) =>
      permit(new Walk(smallDefs(steps(more))).keys('RO', 'TC-401-1'), { step: 'size' })
    expect(permitted({})).toBeNull()
    expect(permitted({ lets_in: ['start'] })).toBe('not-deviable')
  })

  it('comes too late once there is a reading or a verdict, also a void one', () => {
    const walk = new Walk().toVerdict()
    expect(permit(walk)).toBe('not-deviable')
    expect(permit(walk, { step: 'set_after' })).toBe('not-deviable')
    walk.bring({ do: 'doubt-instrument', instrument: 'M-3', why: 'dropped', says: 'the laboratory' })
    expect(permit(walk)).toBe('not-deviable')
    expect(permit(walk, { step: 'set_after' })).toBe('not-deviable')
  })

  it.each([
    [{ person: 'ML' }, 'not-lead'],
    [{ person: 'TS' }, 'not-lead'],
    [{ person: '' }, 'unknown-person'],
    [{ what: '1' }, 'no-words'],
    [{ why: '' }, 'no-words'],
    [{ authority: '' }, 'no-authority'],
    [{ authority: 'KH' }, 'own-authority'],
    [{ authority: 'RO' }, 'own-authority'],
    [{ until: '' }, 'validity'],
    [{ until: '2026-03-14' }, 'validity'],
  ])('with %j is refused: %s', (more, code) => {
    expect(permit(new Walk().toBore(), more)).toBe(code)
  })

  it('is not given by the lead who does the work', () => {
    const walk = new Walk().toBore()
    walk.state = { ...walk.state, doer: 'KH' }
    expect(permit(walk)).toBe('own-work')
  })

  it('is refused under STOP and asked for in words', () => {
    const walk = new Walk().toBore().keys('stop')
    expect(permit(walk)).toBe('stopped')
    const asked = new Walk()
      .toBore()
      .keys('deviation', '3', 'no check after', 'ring is away', 'rule MT-2', '4000 h', 'KH')
    expect(asked.last).toMatchObject({
      type: 'deviation.permitted',
      step: 'bore_judged',
      valid: { hours: 4000 },
    })
  })
})
