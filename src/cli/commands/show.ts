// barover show: the whole sheet of a job, as it was filled in.
import process from 'node:process'
import { headGroups, headLines } from '../../app/head.ts'
import { changedVerdicts, replay } from '../../app/replay.ts'
import { defsAt, defsNow } from '../../core/job/editions.ts'
import { handOverLines } from '../../core/job/hand-over.ts'
import { openWords } from '../../core/job/open-words.ts'
import { markOf, NOT_ENFORCED_BY } from '../../core/job/paper.ts'
import { gradeOf } from '../../core/practice/grade.ts'
import { gradeLines } from '../../core/practice/grade-lines.ts'
import { type Block, layOut, plainText, row, type SheetStyle } from '../../core/sheet/block.ts'
import { blockText, marked } from '../../core/sheet/linear.ts'
import { entryBlocks, markedVoid } from '../../core/sheet/shown-block.ts'
import { fileLines } from '../../core/talk/ask-file.ts'
import { makeSafeLines } from '../../core/talk/make-safe.ts'
import { wordLine } from '../../core/talk/radio-words.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { readingLines } from '../../core/talk/tell-about.ts'
import { findJob } from '../../node/job-folder.ts'
import { readSound } from '../../node/job-store.ts'
import { behindText } from '../../node/journal/examine.ts'
import { type Command, SHARED, type Values } from '../args.ts'
import { asCalled } from '../called.ts'
import { EXIT } from '../exit.ts'
import { editionsOf } from '../open.ts'
import { canDraw, print, rowsOf, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

const NO_HEAD = 'No check number is shown of a log that is not sound.'

export const showCommand: Command = {
  name: 'show',
  usage: 'barover show JOB [--handover] [--jobs DIR]',
  summary: 'Show a job back: every entry on its sheet, then all readings. JOB: enough of its name, as eb06.',
  options: {
    handover: { type: 'boolean', says: 'only what the next crew needs: done, next, locks, what is open' },
    jobs: SHARED.jobs,
    json: SHARED.json,
    plain: SHARED.plain,
    ascii: SHARED.ascii,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const file = findJob(jobsFolder(values), job ?? '')
    const { entries, head: last, torn, fault } = readSound(file.path)
    // Of a log that is not sound no head is shown: somebody may write it down.
    const head = fault === null ? last : null
    const broken = fault === null ? null : `${fault.what} ${behindText(fault.behind)}`
    const code = fault !== null ? EXIT.fileProblem : torn !== null ? EXIT.checkFailed : EXIT.done
    const editions = editionsOf(file.path, entries)
    const defs = defsNow(editions)
    const { state, shown } = replay(entries)
    if (values.json === true) {
      print(
        JSON.stringify({
          job: state.job,
          record: state.record,
          ...(state.paper === null ? {} : { fromPaper: NOT_ENFORCED_BY }),
          closed: state.closed,
          fellFrom: state.fellFrom,
          head,
          damaged: fault,
          files: state.files,
          entries,
        }),
      )
      return code
    }
    const cautions = [
      ...(state.paper === null ? [] : [row(`From paper: ${NOT_ENFORCED_BY}.`, 'caution')]),
      ...(broken === null
        ? []
        : [row(`THE LOG IS NOT SOUND: ${broken} What follows is of the lines before it.`, 'caution')]),
      ...(torn === null ? [] : [row(torn, 'caution')]),
    ]
    const grade = gradeOf(defs, entries)
    const after = () => [
      ...(grade === null ? [] : gradeLines(grade)).map((line, n) =>
        row(asCalled(line), n === 0 ? 'strong' : 'plain'),
      ),
      row('All readings', 'strong'),
      ...readingLines(defs, state).map((line) => row(line)),
      ...(state.files.length === 0 ? [] : [row('Attached files', 'strong')]),
      ...fileLines(state).map((line) => row(line)),
      ...openWords(state).map((word) => row(`NOT COUNTERSIGNED: ${wordLine(defs, state, word)}`, 'caution')),
      ...changedVerdicts(defs, entries).map((line) => row(line, 'caution')),
      ...cautions,
      ...(state.fellFrom === null ? [] : [row(`This job was ${standingOf(state)}.`, 'caution')]),
      ...(head === null ? [NO_HEAD] : ['Check number of the log:', ...headGroups(head)]).map((line) =>
        row(line),
      ),
    ]
    const blocks = (style: SheetStyle): Block[] =>
      values.handover === true
        ? [
            {
              margin: '',
              rows: [
                ...cautions,
                ...[...handOverLines(defs, state), ...(head === null ? [NO_HEAD] : headLines(head))].map(
                  (line) => row(line),
                ),
              ],
            },
          ]
        : [
            ...(cautions.length === 0 ? [] : [{ margin: '', rows: cautions }]),
            ...shown.flatMap((one) =>
              one.kind === 'entry'
                ? markedVoid(
                    entryBlocks(defsAt(editions, one.entry.seq), one.state, one.entry, style, 'read-back'),
                    one.entry,
                    state,
                  )
                : [],
            ),
            { margin: '', rows: after() },
          ]
    const heading =
      values.handover === true
        ? 'HAND-OVER'
        : `${defs.machine.machine}  ${defs.procedure.title}: ${standingOf(state)}`
    return await shownOn(values, markOf(state), code, {
      // On paper or in a pipe a job begins with its own first entry.
      heading: values.handover === true ? heading : null,
      screenHeading: heading,
      blocks,
      safe: () => makeSafeLines(defs, state),
    })
  },
}

interface Shown {
  readonly heading: string | null
  readonly screenHeading: string
  readonly blocks: (style: SheetStyle) => readonly Block[]
  readonly safe: () => readonly string[]
}

/** Whole in lines, or on a terminal that is lower than it a screen at a time. */
async function shownOn(
  values: Values,
  record: SheetStyle['record'],
  code: number,
  what: Shown,
): Promise<number> {
  const style = sheetStyle(values, record)
  const linesOf = (blocks: readonly Block[], at: SheetStyle) => blocks.flatMap((block) => layOut(block, at))
  const head = (text: string, at: SheetStyle) => layOut({ margin: '', rows: [row(text, 'strong')] }, at)
  if (style.linear === true) {
    // As people hear it: no margin and no columns.
    if (what.heading !== null) print(marked(what.heading, style))
    for (const block of what.blocks(style)) print(blockText(block, style))
    return code
  }
  const lines = [
    ...(what.heading === null ? [] : head(what.heading, style)),
    ...linesOf(what.blocks(style), style),
  ]
  if (!canDraw(values) || lines.length < rowsOf(process.stdout)) {
    print(plainText(lines))
    return code
  }
  const { drawPages } = await import('../../ui/draw-pages.tsx')
  const laid = lastOf((width: number) => linesOf(what.blocks({ ...style, width }), { ...style, width }))
  const interrupted = await drawPages({
    style,
    numbers: null,
    home: (at) => ({ head: head(what.screenHeading, at), body: laid(at.width) }),
    open: () => null,
    safe: what.safe,
  })
  return interrupted ? EXIT.interrupted : code
}

/** A whole job is laid out once for each width of the terminal, and not with every key. */
function lastOf<T>(work: (width: number) => T): (width: number) => T {
  let last: { readonly width: number; readonly made: T } | null = null
  return (width) => {
    if (last?.width !== width) last = { width, made: work(width) }
    return last.made
  }
}
