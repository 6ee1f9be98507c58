// A test over time on a sheet that is keyed in: judged by the figures where the times tell start, stand and end, and HOLD where not.
import { describe, expect, it } from 'vitest'
import { testHolds } from '../../../src/core/job/paper-test.ts'
import { tiedDefs } from '../../helpers/all-kinds.ts'
import { Walk } from '../../helpers/example.ts'
import { fill, sheetJob } from '../../helpers/filled-sheet.ts'
import { reviewed } from '../../helpers/reviewed.ts'
import { rightLine } from '../../helpers/right-line.ts'

const defs = tiedDefs()
const gauge =
  new Walk(defs).engine.defs.instruments.instruments.find(({ kind }) => kind === 'pressure_gauge')?.id ?? ''

const SAYS: Readonly<Record<string, string>> = {
  day: '2026-03-14',
  ended: '2026-03-14 11:30',
  people: 'RO ML',
  'seat.low_range': gauge,
  'ready try_start': '06:30 RO NO START',
  'ready witness': '06:31 ML ML',
  'gas_on done': '06:35 RO',
  'first first.here': '06:40 RO',
  'stood no_rise.begun': '06:41 RO ALL SHUT IN',
  'stood no_rise': '06:57 RO NO RISE',
  'stood witness': '06:58 ML ML',
  'last last.here': '06:59 RO',
  'gas_off done': '07:05 RO',
  'look done': '07:10 RO 1',
}
const FIGURES: Readonly<Record<string, string>> = { first: '1.0', last: '1.4' }

/** Figures are asked behind the line they stand on, in a box of the same row. */
function sheetOf(change: Readonly<Record<string, string>> = {}): Walk {
  const walk = sheetJob(defs).keys('RO')
  const says = { ...SAYS, ...change }
  for (;;) {
    fill(walk, says, 'figure')
    if (walk.prompt.kind !== 'sheet') return walk
    walk.keys(FIGURES[walk.prompt.box.placed?.id ?? ''] ?? '-')
  }
}
function takenAtStart(walk: Walk): boolean {
  fill(walk.keys('RO'), SAYS, 'figure').keys('1.0')
  return walk.entries.some((e) => e.type === 'reading.taken' && e.step === 'first')
}
const verdict = ({ state }: Walk) => state.verdicts.judged?.verdict.result
const inputs = ({ state }: Walk) => state.verdicts.judged?.verdict.inputs

describe('a test over time on a sheet', () => {
  const whole = sheetOf()

  it('comes to what the same figures come to at a machine', () => {
    const live = new Walk(defs)
    for (let n = 0; n < 60 && live.state.verdicts.judged === undefined; n++) {
      const { prompt } = live
      if (prompt.kind === 'read') live.keys(FIGURES[prompt.step.id] ?? '')
      else if (prompt.kind === 'evidence' && prompt.item.key === 'no_rise')
        live.keys('ALL SHUT IN').wait(15).keys('NO RISE')
      else live.keys(rightLine(defs, live.state, live.talk))
    }
    expect(inputs(whole)).toEqual(inputs(live))
    expect(verdict(whole)?.verdict).not.toBe(undefined)
  })

  it('is HOLD where its times do not tell the stand, or what came before it and after it', () => {
    const told = (change: Readonly<Record<string, string>>) => [
      verdict(sheetOf(change))?.verdict,
      verdict(sheetOf(change))?.holds.join(' '),
    ]
    const hold = (why: RegExp) => ['HOLD', expect.stringMatching(why)]
    expect(told({ 'stood no_rise': '06:56 RO NO RISE' })).toEqual(
      hold(/06:41 to 06:56, each to the minute: 15 min/),
    )
    expect(told({ 'stood no_rise': '-' })).toEqual(hold(/the stand of 15 min is blank/))
    expect(told({ 'stood no_rise.begun': '-' })).toEqual(hold(/that it was begun does not stand there/))
    expect(told({ 'first first.here': '06:50 RO' })).toEqual(hold(/start is not told to be written before/))
    expect(told({ 'first first.here': '- RO' })).toEqual(hold(/start is not told to be written before/))
    expect(told({ 'last last.here': '06:56 RO' })).toEqual(
      hold(/end is not told to be written after the stand/),
    )
    expect(told({ 'gas_off done': '06:50 RO' })).toEqual(hold(/before it was let off/))
    expect(told({ 'gas_off done': '-' })).toEqual(hold(/before it was let off/))
  })

  it('counts how long it settled, by the times too', () => {
    // Nobody waits for it at a desk: the figure is taken.
    const soon = sheetJob(tiedDefs({ settles: '900 h' }))
    expect(takenAtStart(soon)).toBe(true)
    const settling = tiedDefs({ settles: '5 min' })
    const judge = settling.steps.find(({ id }) => id === 'judged') ?? settling.steps[0]
    if (judge === undefined) throw new Error('no judge')
    expect(testHolds(settling, whole.state, judge).join(' ')).toMatch(/settled before its start/)
    expect(testHolds(defs, whole.state, judge)).toEqual([])
  })

  it('is judged anew where a time is put right, and told in the review while it is no test', () => {
    const walk = sheetOf({ 'stood no_rise': '06:50 RO NO RISE' })
    const all = () => reviewed(walk).exceptions.map(({ what }) => what)
    expect(all()).toContain('Leak of the pocket: NO TEST by the times on the sheet')
    const of = walk.entries.find((e) => e.type === 'paper.row' && e.row === 'no_rise')?.seq ?? -1
    walk.bring({ do: 'sheet-correct', of, typed: '06:57 RO NO RISE', why: 'misread' })
    expect(verdict(walk)).toEqual(verdict(whole))
    expect(all()).not.toContain('Leak of the pocket: NO TEST by the times on the sheet')
  })
})
