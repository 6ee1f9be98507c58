// How a run ends: what is said, and the exit code.
import { basename, dirname } from 'node:path'
import process from 'node:process'
import { checkNumberLines, KEEP_ELSEWHERE } from '../app/head.ts'
import { type Definitions, stepById } from '../core/job/definitions.ts'
import type { Entry } from '../core/job/entries.ts'
import { outcomeOf } from '../core/job/outcome.ts'
import { labelsOf, seenAt } from '../core/job/seen.ts'
import { openStop, type State, standingVerdict } from '../core/job/state.ts'
import type { Validity } from '../core/job/validity.ts'
import { type Grade, gradeOf } from '../core/practice/grade.ts'
import { endLines } from '../core/practice/grade-end.ts'
import { gradeLines } from '../core/practice/grade-lines.ts'
import { row, type SheetStyle } from '../core/sheet/block.ts'
import { closingLine } from '../core/sheet/closing-rows.ts'
import { blockText, marked } from '../core/sheet/linear.ts'
import { becauseRows } from '../core/sheet/verdict-block.ts'
import { radioOpen } from '../core/talk/standing.ts'
import { unbroken } from '../plain/set-out.ts'
import { text, type Values } from './args.ts'
import { asCalled, calledAs } from './called.ts'
import { EXIT } from './exit.ts'
import type { OpenedJob } from './open.ts'
import { columnsOf, print, printCheckNumber, rowsOf, sheetStyle } from './terminal.ts'
import { edgeOf, toCopy } from './to-copy.ts'

export interface Ending {
  readonly job: string
  readonly record: string
  readonly path: string
  readonly finished: boolean
  readonly verdict: string
  /** The verdict as left in words, where something was done about the one as found. */
  readonly asLeft?: string
  readonly dispositions: readonly {
    /** Title of the verdict or finding that was decided on, and its word. */
    readonly about: string
    readonly word: string
    readonly choice: string
    readonly by: string
    readonly why: string
    /** Said by radio and not countersigned. */
    readonly open: boolean
    readonly authority?: string
    readonly valid?: Validity
  }[]
  readonly head: string
  /** Of a practice session. */
  readonly practice?: Grade
}

export function endingOf({ session, journal, path, defs, record }: OpenedJob): Ending {
  const { state } = session.snapshot()
  const dispositions = Object.values(state.dispositions).filter((d) => !d.void)
  const practice = gradeOf(defs, entriesOf(session))
  return {
    job: state.job,
    record,
    path,
    finished: state.closed !== null,
    verdict: state.closed ?? (openStop(state) === null ? 'OPEN' : outcomeOf(defs, state)),
    ...(state.asLeft === null ? {} : { asLeft: state.asLeft }),
    dispositions: dispositions.map((d) => ({
      about: stepById(defs, d.about).step.title,
      word: state.verdicts[d.about]?.verdict.result.verdict ?? foundText(defs, state, d.about),
      choice: d.choice,
      by: d.person,
      why: d.why,
      open: d.radio !== null && !d.countersigned,
      ...(d.authority === null ? {} : { authority: d.authority }),
      ...(d.valid === null ? {} : { valid: d.valid }),
    })),
    head: journal.head(),
    ...(practice === null ? {} : { practice }),
  }
}

function entriesOf(session: OpenedJob['session']): Entry[] {
  return session.snapshot().shown.flatMap((one) => (one.kind === 'entry' ? [one.entry] : []))
}

/** What was found, as its list calls it. */
function foundText(defs: Definitions, state: State, id: string): string {
  return labelsOf(defs, id, seenAt(state, id)) || 'HOLD'
}

/** 0 when the job is done; 3 when it is left unfinished or ended in HOLD or STOP. */
export function exitCodeOf(state: State): number {
  if (state.closed === null) return EXIT.unfinished
  return state.closed === 'HOLD' || state.closed === 'STOP' ? EXIT.unfinished : EXIT.done
}

/**
 * Paths and hashes are to be copied, so nothing breaks them but the edge of the screen. A path that would reach it is
 * told as the name of its file, which every command takes too, and the folder it is in.
 */
export function logLines(record: string, path: string, columns: number): string[] {
  const whole = `${record}  log   ${path}`
  if (whole.length <= columns || dirname(path) === '.') return [whole]
  return [`${record}  log   ${basename(path)}`, `${record}  in    ${dirname(path)}`]
}

/** What the word rests on: the figure that governs with its limit and source, or what holds it; of the last verdict of that word. */
function governsLines({ defs, session }: OpenedJob): string[] {
  const { state } = session.snapshot()
  const judged = defs.steps.flatMap(({ id }) => standingVerdict(state, id)?.verdict ?? [])
  const last = judged.findLast(({ result }) => result.verdict === state.closed)
  return last === undefined ? [] : becauseRows(defs, last).map((one) => one.text)
}

/** To be copied: names stand whole, whatever the width. */
export function resumeLine(
  opened: OpenedJob,
  values: Values,
  style = sheetStyle(values, opened.mark),
): string {
  return copied(opened, values, style, 'take it up again with:', 'resume')
}

/** `linear`: as people hear it. */
function copied(
  { session, mark }: OpenedJob,
  values: Values,
  style: SheetStyle,
  says: string,
  word: 'resume' | 'review' | 'show',
): string {
  const command = `${calledAs()} ${word} ${session.snapshot().state.job}${folderOption(values)}`
  const head = style.linear === true ? marked(says, style) : `${mark}  ${says}`
  return toCopy(head, command, edgeOf(process.stdout)).join('\n')
}

function folderOption(values: Values): string {
  const where = text(values, 'jobs')
  return where === undefined ? '' : ` --jobs ${/[^\w./-]/.test(where) ? JSON.stringify(where) : where}`
}

/** Where the record of a closed job is read; to be copied, like the line above. */
function readLine(opened: OpenedJob, values: Values, style: SheetStyle): string {
  return copied(opened, values, style, 'read it with:', 'review')
}

/** `linear`: as people hear it. */
export function printEnding(opened: OpenedJob, values: Values, linear?: boolean): number {
  const ending = endingOf(opened)
  if (values.json === true) {
    print(JSON.stringify(ending))
  } else if (ending.practice !== undefined) {
    printSheet(opened, ending.practice, ending.path, values, linear)
  } else {
    const [only, ...more] = ending.dispositions
    const done = only === undefined || more.length > 0 ? '' : `, ${only.choice} by ${only.by}`
    const open = ending.dispositions.filter((d) => d.open).length
    const style = sheetStyle(values, opened.mark, linear)
    const said = (text: string, tone: 'plain' | 'strong' = 'plain') =>
      print(blockText({ margin: '', rows: [row(text, tone)] }, style))
    print('')
    said(
      ending.finished
        ? ending.verdict === 'NONE'
          ? 'Done. Nothing in this procedure was to be judged.'
          : ending.asLeft === undefined
            ? `Verdict ${ending.verdict}${done}.`
            : closingLine(opened.defs, opened.session.snapshot().state, ending.verdict)
        : `Job not finished${ending.verdict === 'STOP' ? ', under STOP' : ''}.`,
      'strong',
    )
    if (ending.finished) for (const text of governsLines(opened)) said(text)
    // Of several, each that was not accepted as it was; the others stand on the sheet.
    if (more.length > 0 || ending.asLeft !== undefined)
      for (const { about, word, choice, by } of ending.dispositions.filter(
        (d) => d.word !== 'ACCEPT' || d.choice !== 'accept',
      ))
        said(`  ${about}: ${word}, ${choice} by ${by}`)
    if (open > 0) said(`${radioOpen(open)}.`, 'strong')
    if (style.linear === true) print(marked(`Log: ${ending.path}`, style))
    else for (const line of logLines(opened.mark, ending.path, columnsOf(process.stdout))) print(line)
    const number = checkNumberLines(ending.head)
    if (style.linear === true) print(marked(number.map((line) => line.trim()).join(' '), style))
    else printCheckNumber(`${opened.mark}  `, ending.head)
    said(KEEP_ELSEWHERE)
    print(ending.finished ? readLine(opened, values, style) : resumeLine(opened, values, style))
  }
  const { state } = opened.session.snapshot()
  return ending.practice === undefined ? exitCodeOf(state) : practiceCode(state, ending.practice)
}

/** A session is over once what was hidden is named; under STOP it is never closed. */
function practiceCode({ practice }: State, grade: Grade): number {
  if (practice?.named === null) return EXIT.unfinished
  return grade.isPassed ? EXIT.done : EXIT.checkFailed
}

/** With the line of the next prompt and the empty one above it. */
export function isOverScreen(
  printed: readonly string[],
  stream: { readonly isTTY?: boolean; readonly rows?: number },
): boolean {
  return printed.join('\n').split('\n').length + 2 > rowsOf(stream)
}

/** The sheet of a practice session, in the place of a verdict: nothing of it is of a machine. */
function printSheet(
  opened: OpenedJob,
  grade: Grade,
  path: string,
  values: Values,
  linear: boolean | undefined,
): void {
  const style: SheetStyle = sheetStyle(values, opened.record, linear)
  const rows = gradeLines(grade).map((line, n) => row(asCalled(line), n === 0 ? 'strong' : 'plain'))
  const sheetOf = (some: typeof rows) => {
    const told = blockText({ margin: '', rows: some }, style)
    return style.linear === true ? unbroken(told, edgeOf(process.stdout)) : told
  }
  const sheet = sheetOf(rows)
  print('')
  print(sheet)
  const log =
    style.linear === true
      ? [marked(`Log: ${path}`, style)]
      : logLines(opened.record, path, columnsOf(process.stdout))
  for (const line of log) print(line)
  // What scrolled off is told once more in few: nobody has to scroll back for whether it was passed.
  if (isOverScreen([sheet, ...log], process.stdout)) {
    const end = endLines(grade).map((line, n) => row(line, n === 0 ? 'strong' : 'plain'))
    print('')
    print(sheetOf(end))
    print(copied(opened, values, style, 'the whole sheet:', 'show'))
  }
  if (opened.session.snapshot().state.practice?.named === null) print(resumeLine(opened, values, style))
}
