// What a hold point on paper measures and weighs, held against its limit as a live one is; and the foot of its page.
import { describe, expect, it } from 'vitest'
import { paperGates } from '../../../src/core/job/paper-gate.ts'
import { boxName } from '../../../src/core/talk/sheet-names.ts'
import { fill, sheetJob } from '../../helpers/filled-sheet.ts'
import { gate, type Raw, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const ZERO: Raw = {
  id: 'zero',
  kind: 'measured',
  place: 'the cylinder',
  quantity: 'pressure-gauge',
  with: 'gauge',
  ask: 'Read it.',
  at_least: '-0.5 psig',
  at_most: '0.5 psig',
  source: 'Common practice, no source',
  approved_by: 'Nobody yet',
  since: '2026-01-01',
  life: '1 h',
}
const LIFT: Raw = {
  id: 'lift',
  kind: 'lift',
  load: 'The weight.',
  rating: 'What it carries.',
  sling: 'Number of the sling.',
  inspected: 'Look it over.',
}

const defs = smallDefs(
  [
    gate('isolated', ['start'], [ZERO, LIFT, WITNESS]),
    tell('opened', { exposes: ['start'] }),
    tell('closed', { exposes: ['start'] }),
  ],
  [],
  {},
  { seats: [{ id: 'gauge', kinds: ['pressure_gauge'], for: 'the cylinder' }] },
)

const SAYS: Readonly<Record<string, string>> = {
  marks: 'small, edition 1',
  day: '2026-03-14',
  begun: '06:20',
  ended: '2026-03-14 11:30',
  people: 'RO ML',
  'isolated zero': '06:31 RO 0 psig GAUGE',
  'isolated lift.load': '06:32 RO 400 lb',
  'isolated lift.rating': '06:32 RO 1000 lb',
  'isolated lift.sling': '06:33 RO S-4',
  'isolated lift.inspected': '06:33 RO INSPECTED TODAY',
  'isolated witness': '06:34 ML ML',
  'isolated .complete': '06:34 RO 07:31',
  'opened done': '06:40 RO',
  'closed done': '07:00 RO',
}

const low = defs.instruments.instruments.find(
  (one) => one.kind === 'pressure_gauge' && one.resolution.si < 2000,
)?.id
const coarse = defs.instruments.instruments.find(
  (one) => one.kind === 'pressure_gauge' && one.resolution.si > 5000,
)?.id

function why(change: Readonly<Record<string, string>> = {}): string {
  const says = Object.fromEntries(
    Object.entries({ ...SAYS, ...change }).map(([key, text]) => [key, text.replace('GAUGE', low ?? '?')]),
  )
  const { state } = fill(sheetJob(defs).keys('RO'), says)
  return state.paper === null
    ? ''
    : paperGates(defs, state, state.paper)
        .flatMap((one) => one.why)
        .join('\n')
}

describe('what is measured on paper', () => {
  it('is inside its limit by what its gauge may be off, and then no gap can be told', () => {
    expect([low, coarse]).not.toContain(undefined)
    expect(why()).toBe('')
    expect(why({ 'isolated zero': '06:31 RO GAUGE 0 psig' })).toBe('')
  })

  it.each([
    ['06:31 RO 3 psig GAUGE', /the cylinder at 06:31: 3 psig, above 0\.5 psig/],
    ['06:31 RO 0.45 psig GAUGE', /0\.45 psig, too close to 0\.5 psig/],
    ['06:31 RO zero GAUGE', /is no figure of it/],
    ['06:31 RO 3 psig', /3 psig, above 0\.5 psig[\s\S]*no instrument that measures this is named/],
    ['06:31 RO 0', /0: no instrument that measures this is named/],
    ['06:31 RO 0 psig', /no instrument that measures this is named/],
    ['06:31 RO 0 psig M-3', /no instrument that measures this is named/],
    [`06:31 RO 0 psig ${coarse}`, /too coarse for a limit of|reads .* to/],
    ['-', /the cylinder: blank/],
  ])('would have held as %s', (line, told) => expect(why({ 'isolated zero': line })).toMatch(told))

  it('is read by the gauge of the front where none stands in its line', () => {
    expect(why({ 'isolated zero': '06:31 RO 0', 'seat.gauge': 'GAUGE' })).toBe('')
  })
})

describe('a lift on paper', () => {
  it.each([
    [
      { 'isolated lift.load': '06:32 RO 1200 lb' },
      /the load of 1200 lb is more than the 1000 lb it is rated for/,
    ],
    [{ 'isolated lift.load': '06:32 RO 500 kg' }, /the load of 500 kg is more than the 1000 lb/],
    [{ 'isolated lift.load': '06:32 RO heavy' }, /heavy is no weight/],
    [{ 'isolated lift.load': '06:32 RO 0 lb' }, /0 lb is no weight/],
    [{ 'isolated lift.rating': '-' }, /400 lb: no rating can be read/],
    [{ 'isolated lift.sling': '06:33 RO the blue one' }, /no number can be read there/],
    [{ 'isolated lift.inspected': '06:33 RO LOOKS FINE' }, /it says LOOKS FINE, and asked is INSPECTED/],
  ])('would have held: %j', (change, told) => expect(why(change)).toMatch(told))
})

describe('the foot of a page', () => {
  it('is a box for that it was complete, and one for that all were out, of each copy', () => {
    expect(boxName(defs, { step: 'isolated', row: '.complete' })).toBe('Complete, stale from')
    expect(boxName(defs, { step: 'isolated', row: '.clear#2' })).toBe('All out and clear, copy 2')
  })

  it('tells what is not signed, stale later than its lines allow, or before a step that was done', () => {
    expect(why({ 'isolated .complete': '-' })).toMatch(/that it was complete is signed by nobody/)
    expect(why({ 'isolated .complete': '06:34 RO -' })).toMatch(/from when it is stale does not stand there/)
    expect(why({ 'isolated .complete': '06:34 RO 07:45' })).toMatch(
      /stale from 07:45 is written, and what was read 06:31 is stale after 60 min/,
    )
    expect(why({ 'isolated .complete': '06:34 RO 06:55' })).toMatch(
      /stale from 06:55 by the page itself, 3 closed 07:00/,
    )
  })

  it('tells work behind all out with nothing proved anew, a copy begun before it, and other words', () => {
    expect(why({ 'isolated .clear': '06:50 RO ALL OUT' })).toMatch(
      /ALL OUT 06:50, 3 closed 07:00: nothing was proved anew/,
    )
    expect(why({ 'isolated .clear': '07:10 RO ALL OUT' })).toBe('')
    expect(why({ 'isolated .clear': '07:10 RO ALL GONE' })).toMatch(
      /it says ALL GONE where all out is written/,
    )
    const copy = {
      'isolated copy': '1',
      ...Object.fromEntries(
        Object.entries(SAYS)
          .filter(([key]) => key.startsWith('isolated '))
          .map(([key, line]) => [`${key}#2`, line.replace(/06:3/g, '06:5').replace('07:31', '07:51')]),
      ),
    }
    expect(why({ ...copy, 'isolated .clear': '06:45 RO ALL OUT' })).toBe('')
    expect(why(copy)).toMatch(/that all were out is written by nobody of copy 1/)
    expect(why({ ...copy, 'isolated .clear': '06:53 RO ALL OUT' })).toMatch(
      /ALL OUT 06:53 of copy 1, and the next copy was begun 06:51/,
    )
  })
})

describe('when the work began', () => {
  it('is a time, and nothing else is taken for one', () => {
    const walk = sheetJob(defs).keys('RO', '-', '-', '2026-03-14')
    expect(walk.key('early')).toBe('sheet-line')
    expect(walk.key('6:20')).toBeNull()
    expect(walk.last).toMatchObject({ type: 'paper.row', row: 'begun', says: '2026-03-14 06:20' })
  })
})
