// A job that is keyed in from a sheet: it is kept as it stands, opens nothing, and can be taken for no live job.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { openJob } from '../../../src/core/job/open-job.ts'
import { FRONT } from '../../../src/core/job/paper-rows.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { exampleDefs, fileCopies, Walk } from '../../helpers/example.ts'
import {
  AFTER_BORE,
  BEFORE_BORE,
  BORE,
  END_LINES,
  FRONT_LINES,
  fromDisk,
  one,
  permitLines,
  SIGN_LINES,
  sheetJob,
  toJudge,
  WHOLE,
} from '../../helpers/filled-sheet.ts'

const verdictOf = ({ state }: Walk) => state.verdicts.bore_judged?.verdict.result.verdict

describe('a sheet keyed in whole', () => {
  const walk = sheetJob().keys(...WHOLE)

  it('comes to the verdict its figures come to, and closes once a lead compared it', () => {
    expect(verdictOf(walk)).toBe('MONITOR')
    expect(walk.state.closed).toBe('MONITOR')
    expect(walk.state.paper).toMatchObject({ keyedBy: 'RO', comparedBy: 'KH' })
    const live = new Walk().toVerdict()
    expect(walk.state.verdicts.bore_judged?.verdict.inputs).toEqual(
      live.state.verdicts.bore_judged?.verdict.inputs,
    )
  })

  it('has no hold point that was ever open, and no evidence of any', () => {
    expect(walk.state.gates).toEqual({})
    const types = new Set(walk.entries.map((e) => e.type))
    for (const type of ['gate.opened', 'evidence.given', 'people.clear', 'point.signed'] as const)
      expect([type, types.has(type)]).toEqual([type, false])
  })

  it('keeps beside each figure the time and the initials on the sheet, and who keyed it when', () => {
    const taken = walk.entries.find((e) => e.type === 'reading.taken' && e.typed === '9.5068')
    expect(taken).toMatchObject({ paper: { time: '2026-03-14 06:59', who: 'RO' }, by: 'RO' })
    expect(taken?.at.slice(0, 13)).toBe('2026-03-14T16')
  })

  it('is read back from disk as it was', () => {
    const disk = fromDisk(walk.entries)
    if (!disk.ok) throw new Error(disk.error.say)
    const [first, ...rest] = disk.value
    if (first?.type !== 'job.opened') throw new Error('not opened')
    expect(rest.reduce(fold, opening(first))).toStrictEqual(walk.state)
  })
})

/** One of each that only a person at a machine can bring. */
const LIVE: readonly Input[] = [
  { do: 'evidence', step: 'hold_point', item: 'locks.e_1', typed: 'L-101' },
  { do: 'name-machine', typed: 'TC-401-1' },
  { do: 'pick', seat: 'gauge', instrument: 'M-3' },
  { do: 'read', place: 'bore.head_end.vertical', typed: '9.5033' },
  { do: 'done', step: 'brief' },
  { do: 'confirm', step: 'wiped' },
  { do: 'sign-point', step: 'bore', person: 'KH' },
  { do: 'come-on', person: 'ML' },
  { do: 'hand-over', from: 'RO', fromProved: true, person: 'ML' },
  { do: 'settle-doubt', choice: 'kept', why: 'so it is' },
  { do: 'not-applicable', place: 'bore.head_end.vertical', why: 'cannot be read' },
  { do: 'place', what: 'a blind', where: 'there', number: null } as unknown as Input,
]

const OF_SHEET: readonly Input[] = [
  { do: 'sheet-row', step: null, row: 'marks', typed: 'x' },
  { do: 'sheet-row', step: 'brief', row: 'done', typed: '06:30 RO' },
  { do: 'sheet-doubt', choice: 'kept' },
  { do: 'sheet-correct', of: 3, typed: '9.5', why: 'slip' },
  { do: 'sheet-sign', as: 'compared', person: 'KH' },
]

describe('the wall between paper and live work', () => {
  it('takes nothing live into a job from paper', () => {
    const walk = sheetJob().keys('RO', ...FRONT_LINES)
    for (const input of LIVE) expect([input.do, walk.bring(input)]).toEqual([input.do, 'from-paper'])
  })

  it('takes nothing from a sheet into a live job', () => {
    const walk = new Walk().keys('RO', 'TC-401-1')
    for (const input of OF_SHEET) expect([input.do, walk.bring(input)]).toEqual([input.do, 'not-from-paper'])
  })

  it('reads no log in which they are mixed', () => {
    const sheet = sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO')
    const live = new Walk().throughGate()
    const renumbered = (entries: readonly Entry[]) => entries.map((e, seq) => ({ ...e, seq }))
    const opened = live.entries.filter((e) => e.type === 'gate.opened')
    const row = sheet.entries.filter((e) => e.type === 'paper.row').slice(0, 1)
    const done = sheet.entries.filter((e) => e.type === 'step.done')
    expect(opened.length + row.length + done.length).toBe(3)
    expect(fromDisk(renumbered([...sheet.entries, ...opened]))).toMatchObject({ ok: false })
    expect(fromDisk(renumbered([...live.entries, ...row]))).toMatchObject({ ok: false })
    expect(fromDisk(renumbered([...live.entries, ...done]))).toMatchObject({ ok: false })
    // Nor what was done at a machine, without what stands beside it on a sheet.
    const brief = live.entries.filter((e) => e.type === 'step.done')
    expect(brief).toHaveLength(1)
    expect(fromDisk(renumbered([...sheet.entries, ...brief]))).toMatchObject({ ok: false })
    // Nor one that was made live, or into paper, at its first line.
    const [first, ...rest] = sheet.entries
    if (first?.type !== 'job.opened') throw new Error('not opened')
    const { paper: _paper, ...bare } = first
    expect(fromDisk([bare, ...rest])).toMatchObject({ ok: false })
    const [head, ...more] = live.entries
    expect(fromDisk([{ ...head, paper: true } as Entry, ...more])).toMatchObject({ ok: false })
  })

  it('is not taken up as a live job, nor takes a changed record', () => {
    const walk = sheetJob().keys('RO', ...FRONT_LINES, 'leave')
    walk.bring({ do: 'take-up' })
    walk.keys('RO')
    expect(walk.prompt.kind).toBe('sheet')
    expect(walk.bring({ do: 'take-in' } as unknown as Input)).toBe('from-paper')
  })

  it('holds whatever is keyed or brought, in any order', () => {
    const lines = fc.constantFrom(
      ...WHOLE,
      ...[
        '-',
        '?',
        '1',
        '2',
        '3',
        '06:10 RO',
        '23:59 RO',
        'blank',
        'correct',
        'back',
        'stop',
        'leave',
        'n/a',
      ],
    )
    const inputs = fc.constantFrom(...LIVE, ...OF_SHEET, { do: 'take-up' } as const, { do: 'tick' } as const)
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: WHOLE.length }),
        fc.array(fc.oneof(lines, inputs), { maxLength: 12 }),
        (from, acts) => {
          const walk = wholeUpTo(from).copy()
          for (const act of acts) typeof act === 'string' ? walk.key(act) : walk.bring(act)
          expect(walk.state.gates).toEqual({})
          expect(walk.state.paper).not.toBeNull()
          expect(fromDisk(walk.entries).ok).toBe(true)
          const now = walk.now.ms
          for (const { time } of Object.values(walk.state.paper?.rows ?? {}))
            if (time !== null) expect(Date.parse(`${time.replace(' ', 'T')}:00Z`)).toBeLessThanOrEqual(now)
          if (walk.state.closed === null || walk.state.closed === 'STOP') return
          const compared = walk.state.paper?.comparedBy ?? ''
          expect(['KH', 'PB']).toContain(compared)
          expect(walk.state.paper?.keyers).not.toContain(compared)
        },
      ),
      { numRuns: 60, seed: 20260317 },
    )
  })
})

/** The walk as far as so many of its lines, each walked once. */
const walked: Walk[] = [sheetJob()]
function wholeUpTo(count: number): Walk {
  for (let n = walked.length; n <= count; n++)
    walked.push((walked[n - 1] as Walk).copy().keys(WHOLE[n - 1] as string))
  return walked[count] as Walk
}

describe('times on the sheet', () => {
  const walk = sheetJob().keys('RO', ...FRONT_LINES)

  it('are never in the future', () => {
    expect(walk.copy().key('17:40 RO')).toBe('sheet-future')
    expect(
      sheetJob()
        .keys('RO', ...FRONT_LINES.slice(0, 2))
        .key('2026-03-15'),
    ).toBe('sheet-future')
  })

  it('that go back are asked about, and kept with a mark', () => {
    const asked = walk.copy()
    asked.keys('06:10 RO')
    expect(asked.talk.ask?.kind).toBe('sheet-sure')
    expect(asked.last).toMatchObject({ type: 'paper.row', row: 'seat.gauge' })
    expect(asked.copy().keys('1').last).toMatchObject({ type: 'paper.row', row: 'seat.gauge' })
    expect(asked.keys('2').last).toMatchObject({
      type: 'step.done',
      paper: { time: '2026-03-14 06:10', who: 'RO', back: true },
    })
  })

  it('may be missing, and are unknown then', () => {
    expect(walk.copy().keys('- RO').last).toMatchObject({
      type: 'step.done',
      paper: { time: null, who: 'RO' },
    })
    expect(walk.copy().keys('-').last).toMatchObject({ type: 'paper.row', step: 'brief', says: null })
    expect(walk.copy().keys('-').state.done.brief).toBeUndefined()
  })
})

describe('a figure on the sheet', () => {
  const walk = sheetJob().keys(...toJudge({ bore: [] }).slice(0, -AFTER_BORE.length - 1), 'M-3', '06:55 RO')

  it('that cannot be is doubted, and nobody can measure again', () => {
    const doubted = walk.copy().keys('9.053')
    expect(doubted.last).toMatchObject({ type: 'reading.doubted', typed: '9.053' })
    expect(doubted.copy().keys('1').last).toMatchObject({ type: 'doubt.settled', choice: 'mistyped' })
    expect(doubted.copy().keys('2').last).toMatchObject({ choice: 'kept', why: 'it is what the sheet says' })
    const none = doubted.copy().keys('3')
    expect(none.last).toMatchObject({ type: 'paper.unread', is: 'unreadable', says: '9.053' })
    expect(none.state.readings['bore.head_end.vertical'] ?? []).toEqual([])
  })

  it('that is blank or cannot be read is no value, and the verdict is HOLD', () => {
    for (const sign of ['-', '?']) {
      const bore = ['M-3', '06:55 RO', '9.5033', sign, ...BORE.slice(4)]
      expect([sign, verdictOf(sheetJob().keys(...toJudge({ bore })))]).toEqual([sign, 'HOLD'])
    }
  })

  it('read with an instrument past its day is kept as words, and the verdict is HOLD', () => {
    const bore = [
      'M-1',
      '06:55 RO',
      '9.5033',
      ...['06:57', '06:59', '07:01', '07:03', '07:05'].flatMap((t) => [`${t} RO`, '9.5033']),
    ]
    const old = sheetJob().keys(...toJudge({ bore }))
    expect(old.entries.filter((e) => e.type === 'paper.unread')).toHaveLength(6)
    expect(old.entries.find((e) => e.type === 'paper.unread')).toMatchObject({
      is: 'instrument',
      says: '9.5033',
    })
    expect(verdictOf(old)).toBe('HOLD')
  })

  it('without a day on the sheet is in nobody knows what calibration', () => {
    const front = FRONT_LINES.map((line) => (line === '2026-03-14' ? '-' : line))
    const walkAway = sheetJob().keys(
      'RO',
      ...front,
      '06:31 RO',
      ...permitLines(),
      '06:53 RO',
      '-',
      '06:53 RO',
      '71.2',
    )
    expect(walkAway.last).toMatchObject({ type: 'paper.unread', is: 'instrument' })
  })
})

describe('what was keyed wrong', () => {
  const correct = (walk: Walk, of: number, typed: string) =>
    walk.bring({ do: 'sheet-correct', of, typed, why: 'keyed wrong' })
  const walk = sheetJob().keys(...toJudge())
  const seqOf = (test: (e: Entry) => boolean) => walk.entries.find(test)?.seq ?? -1

  it('keeps the old figure, and what hung on it falls and is worked out anew', () => {
    const twin = walk.copy()
    expect(
      correct(
        twin,
        seqOf((e) => e.type === 'reading.taken' && e.typed === '9.5018'),
        '9.5017',
      ),
    ).toBeNull()
    const kinds = twin.entries.slice(walk.entries.length).map((e) => e.type)
    expect(kinds).toEqual(['reading.corrected', 'verdict.given'])
    expect(twin.entries.find((e) => e.type === 'reading.corrected')).toMatchObject({
      paper: { who: 'RO' },
      voids: ['bore_judged'],
    })
  })

  it('asks a step again, and a place that was called blank', () => {
    const twin = walk.copy()
    expect(
      correct(
        twin,
        seqOf((e) => e.type === 'step.done'),
        '-',
      ),
    ).toBeNull()
    expect(twin.prompt).toMatchObject({ kind: 'sheet', box: { row: 'done' } })
    const blank = sheetJob().keys(...toJudge({ bore: ['M-3', '06:55 RO', '-', ...BORE.slice(4)] }))
    const seq = blank.entries.find((e) => e.type === 'paper.unread')?.seq ?? -1
    expect(correct(blank, seq, '-')).toBeNull()
    expect(blank.prompt).toMatchObject({ kind: 'sheet', box: { takes: 'figure' } })
    expect(blank.state.verdicts.bore_judged?.void).toBe(true)
  })

  it('puts a box right with the old one pointed at; the day stays under its times', () => {
    const twin = walk.copy()
    const of = seqOf((e) => e.type === 'paper.row' && e.row === FRONT.order)
    expect(correct(twin, of, 'WO-71')).toBeNull()
    expect(twin.entries.find((e) => e.type === 'paper.row' && e.of === of)).toMatchObject({ says: 'WO-71' })
    expect(
      correct(
        twin,
        seqOf((e) => e.type === 'paper.row' && e.row === FRONT.day),
        '2026-03-13',
      ),
    ).toBe('sheet-hangs')
  })

  it('takes both signatures away', () => {
    const twin = sheetJob().keys(...toJudge(), ...END_LINES, ...SIGN_LINES.slice(0, -1))
    expect(twin.state.paper?.keyedBy).toBe('RO')
    correct(twin, twin.entries.find((e) => e.type === 'paper.row')?.seq ?? -1, 'other marks')
    expect(twin.state.paper?.keyedBy).toBeNull()
  })
})

describe('who signs', () => {
  const walk = sheetJob().keys(...toJudge(), ...END_LINES, ...SIGN_LINES.slice(0, 3))

  it('that it is keyed: whoever has the keyboard', () => {
    expect(walk.copy().key('ML')).toBe('not-on')
  })

  it('that it was compared: a lead who keyed none of it', () => {
    const keyed = walk.copy().keys('RO')
    expect(keyed.copy().key('ML')).toBe('not-lead')
    expect(keyed.copy().key('RO')).toBe('not-lead')
    const byLead = sheetJob().keys('PB', ...toJudge().slice(1), ...END_LINES, '1', 'KH', 'So it is.', 'PB')
    expect(byLead.key('PB')).toBe('same-person')
    expect(byLead.key('KH')).toBeNull()
    expect(byLead.state.closed).toBe('MONITOR')
  })

  it('that it was compared: also a lead who came to the keyboard after, and keyed nothing', () => {
    const later = walk.copy().keys('RO', 'leave')
    later.bring({ do: 'take-up' })
    later.keys('KH')
    expect(later.state.everOn).toEqual(['RO', 'KH'])
    expect(later.copy().keys('KH').state.paper).toMatchObject({ keyers: ['RO'], comparedBy: 'KH' })
    // Nobody signs for what another keyed; who put a box of it right does not compare it.
    const signed = walk.copy().keys('leave')
    signed.bring({ do: 'take-up' })
    expect(signed.keys('KH').key('KH')).toBe('not-keyer')
    expect(signed.state.paper?.keyedBy).toBeNull()
    const of = later.entries.find((e) => e.type === 'paper.row' && e.row === FRONT.order)?.seq ?? -1
    expect(later.bring({ do: 'sheet-correct', of, typed: 'WO-71', why: 'turned round' })).toBeNull()
    expect(later.state.paper?.keyers).toEqual(['RO', 'KH'])
  })

  it('for what is decided: a lead who neither wrote the figures nor keyed them', () => {
    const bore = BORE.map((line) => line.replace(' RO', ' KH'))
    const decided = sheetJob().keys(...toJudge({ bore }), ...END_LINES, '1')
    expect(decided.key('KH')).toBe('own-work')
    expect(decided.said.at(-1)).toContain('KH did that work')
    // Whoever only keyed it in is told that, and no work is put down to them.
    const byLead = sheetJob().keys('PB', ...toJudge().slice(1), ...END_LINES, '1')
    expect(byLead.key('PB')).toBe('own-work')
    expect(byLead.said.at(-1)).toContain('PB keyed that in from the paper')
  })
})

describe('what was found on the sheet', () => {
  it('is decided on by a lead who did not write it there', () => {
    const after = AFTER_BORE.map((line) => (line === '07:10 RO 1' ? '07:10 KH 2 scored at the bottom' : line))
    const walk = sheetJob().keys(...toJudge({ after }), ...END_LINES, '1', 'PB', 'So it is.', '1', '1')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-who' })
    expect(walk.copy().key('KH')).toBe('own-work')
    expect(walk.copy().key('PB')).toBeNull()
  })
})

describe('which sheets are keyed in', () => {
  it('not one of another machine', () => {
    const walk = sheetJob().keys('RO', ...FRONT_LINES.slice(0, 5))
    expect(walk.key('06:30 RO TC-402-1')).toBe('sheet-machine')
    expect(walk.key('06:30 RO tc 401 1')).toBeNull()
  })

  it('a REAL one without any gate to prove, and with the keys and the clock of any', () => {
    const own = (text: string) => text.replace(/^invented: true$/m, '')
    const defs = exampleDefs({ machine: own, crew: own, instruments: own })
    const asked = {
      record: 'REAL',
      job: 'x',
      version: 'x',
      zone: 'UTC',
      clock: 'system',
      answers: 'person',
    } as const
    const keyed = { ...defs, crew: { ...defs.crew, crew: [] } }
    expect(openJob(keyed, { ...asked, files: fileCopies() })).toMatchObject({ error: { code: 'not-proved' } })
    expect(openJob(keyed, { ...asked, files: fileCopies(), paper: true })).toMatchObject({ ok: true })
    expect(openJob(keyed, { ...asked, answers: 'script', files: fileCopies(), paper: true })).toMatchObject({
      error: { code: 'answers' },
    })
  })
})

describe('a line with time and initials and nothing behind them', () => {
  const gas = sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO', ...permitLines().slice(0, 10))

  it('is asked about, and takes what comes now as its own', () => {
    const walk = gas.copy()
    walk.keys('06:52 RO')
    expect(walk.talk.ask?.kind).toBe('sheet-rest')
    expect(walk.entries.length).toBe(gas.entries.length)
    // The line below is not taken for what stands in this one.
    walk.keys('06:53 RO 0 G-7')
    expect(walk.talk.ask?.kind).toBe('sheet-rest')
    expect(walk.entries.length).toBe(gas.entries.length)
    expect(walk.copy().keys('20.9 G-7').last).toMatchObject({ says: '20.9 G-7', paper: { who: 'RO' } })
    expect(walk.copy().keys('-').last).toMatchObject({ says: null, paper: { who: 'RO' } })
    expect(gas.copy().keys('06:52 RO -').last).toMatchObject({ says: null, paper: { who: 'RO' } })
    // A time that goes back is asked about first, and this after it.
    const back = gas.copy().keys('06:10 RO', '2')
    expect(back.talk.ask?.kind).toBe('sheet-rest')
    expect(back.keys('20.9').last).toMatchObject({ says: '20.9', paper: { back: true } })
  })

  it('is whole where only a signature is wanted', () => {
    const walk = gas.copy().keys(...permitLines().slice(10, 16), '06:53 ML')
    expect(walk.last).toMatchObject({ says: null, paper: { who: 'ML' } })
  })
})

describe('the lines of a sheet', () => {
  it('ask about an instrument that the register does not hold, and take it as it stands then', () => {
    const walk = sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO', ...permitLines(), ...BEFORE_BORE)
    walk.keys('M-3 G-9')
    expect(walk.talk.ask).toMatchObject({
      kind: 'sheet-sure',
      why: expect.stringContaining('not in the register'),
    })
    const shown = JSON.stringify(
      promptView(walk.engine.defs, walk.state, walk.talk, { width: 79, record: 'EXAMPLE', ascii: true }).ask,
    )
    // As at the foot of a sheet that is another; what was keyed stands there once.
    expect(shown).toMatch(/1 {2}keyed wrong: key it again.*2 {2}it stands so on the paper/)
    expect(shown.split('M-3 G-9')).toHaveLength(2)
    expect(walk.copy().keys('1', 'm-3').last).toMatchObject({ row: 'instrument', says: 'm-3' })
    expect(walk.keys('2').last).toMatchObject({ row: 'instrument', says: 'M-3 G-9' })
  })

  it('go down the paper, and hold no more than they say', () => {
    const walk = sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO', ...permitLines(), ...BEFORE_BORE)
    expect(walk.prompt).toMatchObject({ kind: 'sheet', box: { row: 'instrument', placed: { id: 'bore' } } })
    expect(walk.key('')).toBe('sheet-empty')
    expect(walk.keys('M-3').key('RO 06:55')).toBe('sheet-line')
    expect(one('x', 'y')).toEqual(['-', 'x', 'y'])
  })
})
