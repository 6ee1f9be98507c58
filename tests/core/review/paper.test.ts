// The review and the report of a job that was keyed from a sheet: that it is one stands first, and what the sheet shows is told.
import { describe, expect, it } from 'vitest'
import { digestOf } from '../../../src/core/history/digest.ts'
import { historyOf } from '../../../src/core/history/history.ts'
import { historyPaper } from '../../../src/core/history/paper.ts'
import { asOpened } from '../../../src/core/job/editions.ts'
import { checkMark } from '../../../src/core/job/paper.ts'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import { reportOf } from '../../../src/core/report/report.ts'
import { reportSchema } from '../../../src/core/report/schema.ts'
import { reportCsv } from '../../../src/core/report/write/csv.ts'
import { reportHtml } from '../../../src/core/report/write/html.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { fileCopies, type Walk } from '../../helpers/example.ts'
import {
  AFTER_BORE,
  anHourLater,
  BEFORE_BORE,
  BORE,
  END_LINES,
  FRONT_LINES,
  fill,
  permitLines,
  SIGN_LINES,
  sheetJob,
  toJudge,
  WHOLE,
} from '../../helpers/filled-sheet.ts'
import { reviewed } from '../../helpers/reviewed.ts'
import { gate, NO_START, smallDefs, tell } from '../../helpers/small-job.ts'

/** All behind the hold point an hour later. */
const LATER = {
  before: anHourLater(BEFORE_BORE),
  bore: anHourLater(BORE),
  after: anHourLater(AFTER_BORE),
}

const whole = sheetJob().keys(...WHOLE)
const told = (walk: Walk) =>
  reviewed(walk).exceptions.map(({ what, sentences }) => [what, ...sentences].join('\n'))
const toldWith = (more: Parameters<typeof toJudge>[0], end = END_LINES) =>
  told(sheetJob().keys(...toJudge(more), ...end, ...SIGN_LINES)).join('\n')

describe('the review of a sheet', () => {
  it('has first of all that its gates were not enforced, and by whom it was keyed and compared', () => {
    const [first] = reviewed(whole).exceptions
    expect(first).toMatchObject({
      number: 1,
      kind: 'paper',
      what: 'From paper: gates not enforced by Barover',
      open: false,
    })
    expect(first?.sentences.join(' ')).toMatch(/Signed as keyed by RO\. Compared with the sheet by KH\./)
    expect(reviewed(sheetJob().keys('RO')).exceptions[0]).toMatchObject({ kind: 'paper', open: true })
  })

  it('never calls a hold point open or complete, with no gap to be told either', () => {
    expect(told(whole).join('\n')).not.toMatch(/WOULD HAVE HELD|WOULD NOT/)
    expect(reviewed(whole).usual.join('\n')).not.toMatch(/hold points complete/)
  })

  it('holds what lapsed against the steps behind it, by the times on the sheet', () => {
    const late = toldWith(LATER)
    expect(late).toMatch(/WOULD HAVE HELD/)
    expect(late).toMatch(
      /On paper: oxygen inside the opening 06:52, 3 Wipe the bore 07:53: older than 30 min\./,
    )
  })

  it('tells once that a step with figures has no time, and of a place where nothing stands that nobody was there', () => {
    const untimed = toldWith({ before: ['06:53 RO', '-', '-', '71.2', ...BEFORE_BORE.slice(4)] })
    expect(
      untimed.match(/4 Bore temperature, before has no time: whether this page stood then cannot be told/g),
    ).toHaveLength(1)
    const unread = toldWith({ before: ['06:53 RO', '-', '-', '?', ...BEFORE_BORE.slice(4)] })
    expect(unread).toMatch(/4 Bore temperature, before has no time/)
    expect(toldWith({ before: ['06:53 RO', '-', '-', '-', ...BEFORE_BORE.slice(4)] })).not.toMatch(
      /has no time/,
    )
  })

  it('takes the last copy of the page that was filled in before the step', () => {
    const copy = anHourLater(permitLines())
    const walk = sheetJob().keys(
      ...toJudge({ ...LATER, permit: [...permitLines().slice(0, -2), '07:25 RO ALL OUT', '1', ...copy] }),
    )
    expect(walk.state.verdicts.bore_judged?.void).toBe(false)
    expect(told(walk).join('\n')).not.toMatch(/WOULD HAVE HELD/)
  })

  it('names a blank line, words that are others, a gas out of its limit', () => {
    const spoilt = (from: string, to: string) =>
      toldWith({ permit: permitLines().map((line) => (line === from ? to : line)) })
    expect(spoilt('06:33 RO L-103', '-')).toMatch(/lock at .*: blank/)
    expect(spoilt('06:40 RO NO FLOW', '06:40 RO A LITTLE')).toMatch(/it says A LITTLE, and asked is NO FLOW/)
    expect(spoilt('06:52 RO 20.9 G-7', '06:52 RO 18.1 G-7')).toMatch(/18\.1 %vol, below 19\.5/)
    expect(spoilt('06:53 ML ML', '-')).toMatch(/witness: blank/)
    expect(spoilt('06:40 RO NO START', '- RO NO START')).toMatch(/try start has no time/)
    const permit = permitLines().map((line) => line.replace(/^06:53 (ML ML|RO)/, '07:54 $1'))
    const [first = '', ...rest] = LATER.before
    expect(toldWith({ ...LATER, permit, before: [first, '2', ...rest] })).toMatch(
      /witness 07:54, 3 Wipe the bore 07:53: written after it/,
    )
  })

  it('tells a gas out of its limit first, also where nobody wrote which meter read it', () => {
    const figures = ['0', '20.9 %LEL', '95', 'G-7 20.8', '0, G-7', '0']
    let n = 0
    const permit = permitLines().map((line) => (/ G-7$/.test(line) ? `06:52 RO ${figures[n++]}` : line))
    const front = (meter: string) => FRONT_LINES.map((line) => (line === 'G-7' ? meter : line))
    const lines = (meter: string) =>
      told(sheetJob().keys('RO', ...front(meter), '06:31 RO', ...permit)).join('\n')
    const none = lines('-')
    expect(none).toMatch(
      /: 0 %vol, below 19\.5 %vol[^\n]*\n[^\n]*: 0: no gas meter of the register is named\./,
    )
    expect(none).toMatch(/: 20\.9 %LEL, above [^\n]*\n[^\n]*: 20\.9 %LEL: no gas meter/)
    expect(none).toMatch(/: 95 ppm, above [^\n]*\n[^\n]*: 95: no gas meter/)
    // The number goes on either side of the figure, and the one of the front counts for lines without any.
    expect(none).not.toMatch(/20\.8|0, G-7/)
    const named = lines('G-7')
    expect(named).toMatch(/: 95 ppm, above /)
    expect(named).not.toMatch(/no gas meter/)
    expect(lines('T-2')).toMatch(/: 95: no gas meter/)
  })

  it('takes no meter of the front for a line that names another, or has two figures', () => {
    const spoilt = (to: string) => {
      const permit = permitLines().map((line) => (line === '06:52 RO 20.9 G-7' ? to : line))
      return told(sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO', ...permit)).join('\n')
    }
    expect(spoilt('06:52 RO 20.9 G-8')).toMatch(/what G-8 is cannot be told/)
    expect(spoilt('06:52 RO 20.9 18.1 G-7')).toMatch(/what 18\.1 is cannot be told/)
    expect(spoilt('06:52 RO 20,9 G-7')).not.toMatch(/cannot be told/)
  })

  /** As far as the hold point, with lines of the front and of the permit changed. */
  const toldAtGate = (changes: Readonly<Record<string, string>>, ...more: string[]) => {
    const lines = ['RO', ...FRONT_LINES, '06:31 RO', ...permitLines()].map((line) => changes[line] ?? line)
    return told(sheetJob().keys(...lines, ...more)).join('\n')
  }

  it('tells a witness who did the work, has no role for it, is nobody, or signed with initials alone', () => {
    const witness = (line: string) => toldAtGate({ '06:53 ML ML': line })
    expect(witness('06:53 RO R. O.')).toMatch(
      /witness at 06:53: RO did the work by this sheet \(17 of its lines and step 1\), and a witness is somebody else/,
    )
    expect(witness('06:53 XY X. Y.')).toMatch(/witness at 06:53: XY is nobody of the crew file/)
    expect(witness('06:53 ML')).toMatch(/witness at 06:53: signed with ML alone: no name stands there/)
    expect(witness('06:53 ML M. L.')).not.toMatch(/witness/)
    // Who does a step further down did the work as well.
    expect(toldAtGate({}, '06:53 ML')).toMatch(/ML did the work by this sheet \(step 3\)/)
  })

  it('tells one lock at two points', () => {
    expect(toldAtGate({ '06:33 RO L-103': '06:33 RO l102' })).toMatch(
      /lock at .* at 06:33: l102 stands at lock at .* too/,
    )
    expect(toldAtGate({})).not.toMatch(/stands at/)
  })

  it('tells a plate that is blank, and a list of people that is blank or has somebody nobody knows', () => {
    const bare = toldAtGate({ '06:30 RO TC-401-1': '-', 'RO ML': '-' })
    expect(bare).toMatch(/Plate on the cylinder: BLANK/)
    expect(bare).toMatch(/Who is on the job: BLANK/)
    expect(toldAtGate({ '06:30 RO TC-401-1': '06:30 RO -', 'RO ML': 'RO, XY' })).toMatch(
      /Plate on the cylinder: signed by RO, and no tag[\s\S]*Who is on the job: XY in no crew file/,
    )
    expect(toldAtGate({})).not.toMatch(/Plate|Who is on the job/)
  })

  it('tells a verdict by hand that is another, and a decision on paper that is not what was signed', () => {
    const lines = [...toJudge().slice(0, -1), '08:40 KH ACCEPT', '08:42 KH rework', ...END_LINES.slice(1)]
    const all = told(sheetJob().keys(...lines, ...SIGN_LINES)).join('\n')
    expect(all).toMatch(/18 Bore judged: the sheet says ACCEPT; worked out here MONITOR/)
    expect(all).toMatch(/decided on the sheet rework; signed for accept by KH/)
    expect(told(whole).join('\n')).not.toMatch(/the sheet says MONITOR|decided on the sheet/)
  })

  it('tells a sheet of another edition, boxes that are blank, times that are missing, initials of nobody', () => {
    // One that is another is asked about, and stands so on the paper.
    const marks = (text: string) => {
      const walk = sheetJob().keys('RO', text)
      if (walk.talk.ask?.kind === 'sheet-sure') walk.keys('2')
      return told(walk.keys(...FRONT_LINES.slice(1))).join('\n')
    }
    expect(marks('bore_inspection, edition 2, 00000000')).toMatch(
      /printed from other files: not on it edition 8 and check mark/,
    )
    expect(marks('-')).toMatch(/printed from other files/)
    expect(marks('00000000')).toMatch(/printed from other files/)
    expect(marks(checkMark(fileCopies()).toUpperCase())).not.toMatch(/printed from other files/)
    expect(told(whole).join('\n')).not.toMatch(/printed from other files/)
    const odd = toldWith({
      bore: ['M-3', '- XY', '-', ...BORE.slice(4)],
      before: [
        ...BORE.slice(0, 0),
        '-',
        '-',
        '06:53 RO',
        '71.2',
        '-',
        '06:54 RO',
        '70.4',
        '-',
        '06:54 RO',
        '9.5000',
      ],
    })
    expect(odd).toMatch(/1 place without a value on the sheet/)
    expect(odd).toMatch(/1 box blank on the sheet/)
    expect(odd).toMatch(/1 line signed on the sheet without a time/)
    expect(odd).toMatch(/nobody in the crew file: XY/)
  })

  it('tells a STOP on the sheet, a lead who did not sign it, a box that was put right', () => {
    const end = [...END_LINES.slice(0, 4), '07:00 RO gas smelt', '2', '-', '-', '-', '08:30 RO R. O.', '-']
    const walk = sheetJob().keys(...toJudge(), ...END_LINES.slice(0, 4), ...end.slice(4))
    walk.bring({ do: 'sheet-correct', of: 3, typed: 'WO-71', why: 'turned round' })
    const all = told(walk).join('\n')
    expect(all).toMatch(/STOP on the sheet: gas smelt/)
    expect(all).toMatch(/lead who did none of it: BLANK/)
    expect(all).toMatch(/Job or work order: WO-17, now WO-71/)
  })
})

describe('the report and the history of a sheet', () => {
  const { defs } = whole.engine
  const report = reportOf(asOpened(defs), whole.entries, whole.state, reviewed(whole), {
    ...{ head: 'ab', version: 'test', checks: [], files: new Map() },
  })

  it('has the word on every line, in every form, and its own at the head', () => {
    expect(reportSchema.parse(report)).toEqual(report)
    expect(report).toMatchObject({ paper: true, record: 'EXAMPLE' })
    expect(report.cautions[0]).toMatch(/^From paper: gates not enforced by Barover/)
    const paper = paperOf(report)
    const text = reportText(paper).trimEnd().split('\n')
    expect(text.filter((line) => !line.startsWith('EXAMPLE from paper'))).toEqual([])
    expect(reportHtml(paper)).toContain('EXAMPLE from paper')
    const rows = reportCsv(report).trimEnd().split('\r\n').slice(1)
    expect(rows.filter((row) => !row.startsWith('"EXAMPLE from paper"'))).toEqual([])
    expect(rows.some((row) => row.includes('from paper 06:59 RO'))).toBe(true)
  })

  it('calls its hold points neither complete nor fallen', () => {
    expect(report.gates.map(({ status }) => status)).toEqual(['on paper, gates not enforced by Barover'])
  })

  it('is counted by name in a history', () => {
    const job = digestOf(defs, whole.entries, whole.state)
    const history = historyOf({ jobs: () => [job] }, { record: 'EXAMPLE', machine: null, next: null })
    expect(history.paper).toEqual(['test'])
    expect(JSON.stringify(historyPaper(history))).toMatch(
      /1 job from paper, gates not enforced by Barover: test/,
    )
  })
})

describe('a start on a sheet', () => {
  const scored = [{ id: 'scored', label: 'Scored', finding: true, note: true }]
  const defs = smallDefs([
    gate('isolated', ['start'], [NO_START]),
    { id: 'look', kind: 'observe', title: 'look', conditions: [...scored, { id: 'sound', label: 'Sound' }] },
    tell('started', { title: 'Start the driver', exposes: ['start'], lets_in: ['start'] }),
  ])
  const says = {
    day: '2026-03-14',
    people: 'RO',
    'look done': '06:40 RO 1 at three',
    'started done': '07:10 RO',
  }

  it('is told by the sheet, and never as undecided by the order of keying, as decisions are keyed at its end', () => {
    const review = reviewed(fill(sheetJob(defs).keys('RO'), says))
    expect(review.started?.what).toMatch(
      /^Started RO 2026-03-14 07:10 by the sheet: what was decided by then stands on the sheet;/,
    )
    expect(review.exceptions.filter(({ kind }) => kind === 'started')).toEqual([])
  })
})
