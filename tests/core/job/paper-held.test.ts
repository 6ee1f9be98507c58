// Waits, locks that come off and steps that let a hazard in, on a sheet that is keyed in: kept as written, opening nothing, and told to
// whoever may be less safe by them.
import { describe, expect, it } from 'vitest'
import { hanging } from '../../../src/core/job/locks-on.ts'
import { paperGates } from '../../../src/core/job/paper-gate.ts'
import { standingOf, watch, watchFrom } from '../../../src/core/job/watch.ts'
import { boxName } from '../../../src/core/talk/sheet-names.ts'
import type { Walk } from '../../helpers/example.ts'
import { fill, fromDisk, sheetJob } from '../../helpers/filled-sheet.ts'
import { gate, LOCKS, NO_START, type Raw, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const WAIT: Raw = {
  id: 'stood',
  kind: 'wait',
  ask: 'Wait.',
  begin_words: 'SHUT IN',
  words: 'NO RISE',
  lasts: '10 min',
}
const OFF: Raw = { id: 'off', kind: 'locks', ask: 'Take it off.', same_as: 'lock', taken_off: 'before_start' }

const defs = smallDefs([
  gate('isolated', ['start'], [{ ...LOCKS, notes: 'lock' }, NO_START, WITNESS]),
  tell('opened', { exposes: ['start'], lets_in: ['bad_air'] }),
  gate('air', ['bad_air'], [WAIT, WITNESS]),
  tell('wiped', { exposes: ['bad_air'] }),
  tell('opened_more', { lets_in: ['bad_air'] }),
  tell('wiped_again', { exposes: ['bad_air'] }),
  gate('locks_off', ['fall'], [OFF, WITNESS]),
  tell('closed', { exposes: ['fall'] }),
])
const [first, second] = defs.machine.site.isolation_points.map(({ id }) => id)

const SAYS: Readonly<Record<string, string>> = {
  marks: 'small, edition 1',
  day: '2026-03-14',
  ended: '2026-03-14 11:30',
  people: 'RO ML',
  [`isolated locks.${first}`]: '06:31 RO L-101',
  [`isolated locks.${second}`]: '06:32 RO L-102',
  'isolated try_start': '06:33 RO NO START',
  'isolated witness': '06:34 ML ML',
  'isolated .complete': '06:34 RO -',
  'opened done': '06:40 RO',
  'air stood.begun': '06:45 RO SHUT IN',
  'air stood': '06:56 RO NO RISE',
  'air witness': '06:57 ML ML',
  'air .complete': '06:57 RO -',
  'air .clear': '07:11 RO ALL OUT',
  'wiped done': '07:00 RO',
  'opened_more done': '07:10 RO',
  'air copy': '1',
  'air stood.begun#2': '07:12 RO SHUT IN',
  'air stood#2': '07:23 RO NO RISE',
  'air witness#2': '07:24 ML ML',
  'air .complete#2': '07:24 RO -',
  'wiped_again done': '07:30 RO',
  [`locks_off off.${first}`]: '08:00 RO L-101 RO',
  [`locks_off off.${second}`]: '08:01 RO L-102 ML',
  'locks_off witness': '08:02 ML ML',
  'locks_off .complete': '08:02 RO -',
  'closed done': '08:10 RO',
}

function sheetOf(change: Readonly<Record<string, string>> = {}, until?: string): Walk {
  return fill(sheetJob(defs).keys('RO'), { ...SAYS, ...change }, until)
}

const why = ({ state }: Walk) =>
  state.paper === null ? [] : paperGates(defs, state, state.paper).flatMap((one) => one.why)

function seenOf(walk: Walk) {
  const [opened, ...rest] = walk.entries
  if (opened?.type !== 'job.opened') throw new Error('not opened')
  return standingOf(
    defs,
    rest.reduce((watched, entry) => watch(defs, watched, entry), watchFrom(opened)),
  )
}

const whole = sheetOf()

describe('a wait on a sheet', () => {
  it('is its beginning and its end, and opens nothing', () => {
    expect(whole.prompt).toEqual({ kind: 'sheet-sign', as: 'keyed' })
    expect(whole.state.gates).toEqual({})
    expect(fromDisk(whole.entries).ok).toBe(true)
    expect(why(whole)).toEqual([])
    expect(boxName(defs, { step: 'air', row: 'stood.begun#2' })).toBe(
      `${boxName(defs, { step: 'air', row: 'stood' })}, begun, copy 2`,
    )
  })

  it('would not have stood where its times do not tell that it was over', () => {
    const told = (change: Readonly<Record<string, string>>) => why(sheetOf(change)).join('\n')
    expect(told({ 'air stood': '06:55 RO NO RISE' })).toMatch(
      /06:45 to 06:55, each to the minute: 10 min are not told/,
    )
    expect(told({ 'air stood.begun': '-' })).toMatch(/that it was begun does not stand there/)
    expect(told({ 'air stood.begun': '- RO SHUT IN' })).toMatch(/how long it lasted cannot be told/)
    expect(told({ 'air stood.begun': '06:45 RO SHUT' })).toMatch(/begins with SHUT, and asked is SHUT IN/)
    expect(told({ 'air stood': '06:56 RO A LITTLE' })).toMatch(/it says A LITTLE/)
  })
})

describe('a step of a sheet that lets a hazard in', () => {
  it('has what proves that hazard written anew before the next that it holds', () => {
    const told = why(sheetOf({ 'air copy': '-' })).join('\n')
    expect(told).toMatch(/is not written anew between 5 opened_more, which lets in .* and 6 wiped_again/)
    expect(why(sheetOf({ 'opened_more done': '-' })).join('\n')).toMatch(
      /whether 5 opened_more let anything in before 6 wiped_again does not stand there/,
    )
    // In one minute with it is not told to be behind it.
    expect(why(sheetOf({ 'opened_more done': '07:24 RO' })).join('\n')).toMatch(/witness is not written anew/)
  })

  it('is told to other jobs, and so is a box of it that is blank', () => {
    const lets = (walk: Walk) => seenOf(walk).doings.filter(({ what }) => what === 'let-in')
    expect(lets(whole)).toMatchObject([{ step: 'opened' }, { step: 'opened_more' }])
    expect(lets(sheetOf({ 'opened done': '-' }))).toMatchObject([{ step: 'opened' }, { step: 'opened_more' }])
  })

  it('may be going on until the sheet says that the work has ended', () => {
    expect(seenOf(sheetOf({ ended: '-' }, 'opened done')).letting?.hazards).toMatchObject([{ id: 'bad_air' }])
    expect(seenOf(sheetOf({}, 'opened done')).letting).toBeNull()
    expect(seenOf(sheetJob(defs)).letting).not.toBeNull()
  })
})

describe('locks that come off by a sheet', () => {
  const on = (walk: Walk) => hanging(defs, walk.state).on.map(({ shown }) => shown)

  it('are off for whoever asks what hangs, and on where it does not say so', () => {
    expect(on(sheetOf({}, `locks_off off.${second}`))).toEqual(['L-101', 'L-102'])
    expect(on(whole)).toEqual([])
    expect(hanging(defs, whole.state).off.map(({ told }) => told.offBy)).toContain('ML')
    expect(on(sheetOf({ [`locks_off off.${second}`]: '-' }))).toEqual(['L-102'])
  })

  it('stay off where the line that hung them is put right later', () => {
    const walk = sheetOf()
    const of = walk.entries.find((e) => e.type === 'paper.row' && e.says === 'L-101')?.seq ?? -1
    expect(walk.bring({ do: 'sheet-correct', of, typed: '06:30 RO L-101', why: 'slip' })).toBeNull()
    expect(on(walk)).toEqual([])
  })

  it('are told to other jobs, and one whose box is blank may be off', () => {
    const gone = (walk: Walk) => seenOf(walk).doings.filter(({ what }) => what === 'removed')
    expect(gone(whole)).toMatchObject([
      { numbers: ['L-102'], told: true },
      { numbers: ['L-101'], told: true },
    ])
    expect(gone(sheetOf({ [`locks_off off.${second}`]: '-' }))).toMatchObject([
      { numbers: ['L-102'], clause: 'whether L-102 is still on does not stand on a sheet' },
      { numbers: ['L-101'] },
    ])
  })

  it('would have held with another number, or nobody’s hand', () => {
    const told = (line: string) => why(sheetOf({ [`locks_off off.${first}`]: line })).join('\n')
    expect(told('08:00 RO L-109 RO')).toMatch(/noted before is L-101/)
    expect(told('08:00 RO L-101')).toMatch(/who took it off does not stand there/)
  })
})
