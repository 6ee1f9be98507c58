// barover show: the whole sheet of a job, as it was filled in.
import { headLines } from '../../app/head.ts'
import { changedVerdicts, replay } from '../../app/replay.ts'
import { handOverLines } from '../../core/job/hand-over.ts'
import { openWords } from '../../core/job/open-words.ts'
import { layOut, plainText, row } from '../../core/sheet/block.ts'
import { entryBlocks } from '../../core/sheet/shown-block.ts'
import { fileLines } from '../../core/talk/ask-file.ts'
import { wordLine } from '../../core/talk/radio-words.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { readingLines } from '../../core/talk/tell-about.ts'
import { findJob } from '../../node/job-folder.ts'
import { readSound } from '../../node/job-store.ts'
import { behindText } from '../../node/journal/examine.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { definitionsOf } from '../open.ts'
import { print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

const NO_HEAD = 'No head is shown of a log that is not sound.'

export const showCommand: Command = {
  name: 'show',
  usage: 'barover show JOB [--handover] [--jobs DIR]',
  summary: 'Show a job back: every entry on its sheet, then all readings.',
  options: {
    handover: { type: 'boolean', says: 'only what the next crew needs: done, next, locks, what is open' },
    jobs: SHARED.jobs,
    json: SHARED.json,
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
    const defs = definitionsOf(file.path, entries)
    const { state, shown } = replay(entries)
    if (values.json === true) {
      print(
        JSON.stringify({
          job: state.job,
          record: state.record,
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
    const style = sheetStyle(values, state.record)
    const cautions = [
      ...(broken === null
        ? []
        : [row(`THE LOG IS NOT SOUND: ${broken} What follows is of the lines before it.`, 'caution')]),
      ...(torn === null ? [] : [row(torn, 'caution')]),
    ]
    if (values.handover === true) {
      const lines = [...handOverLines(defs, state), ...(head === null ? [NO_HEAD] : headLines(head))]
      const rows = [row('HAND-OVER', 'strong'), ...cautions, ...lines.map((l) => row(l))]
      print(plainText(layOut({ margin: '', rows }, style)))
      return code
    }
    if (cautions.length > 0) print(plainText(layOut({ margin: '', rows: cautions }, style)))
    for (const one of shown) {
      if (one.kind !== 'entry') continue
      for (const block of entryBlocks(defs, one.state, one.entry, style))
        print(plainText(layOut(block, style)))
    }
    const after = [
      row('All readings', 'strong'),
      ...readingLines(defs, state).map((line) => row(line)),
      ...(state.files.length === 0 ? [] : [row('Attached files', 'strong')]),
      ...fileLines(state).map((line) => row(line)),
      ...openWords(state).map((word) => row(`NOT COUNTERSIGNED: ${wordLine(defs, word)}`, 'caution')),
      ...changedVerdicts(defs, entries).map((line) => row(line, 'caution')),
      ...cautions,
      ...(state.fellFrom === null ? [] : [row(`This job was ${standingOf(state)}.`, 'caution')]),
      row(head === null ? NO_HEAD : `Head: ${head}`),
    ]
    print(plainText(layOut({ margin: '', rows: after }, style)))
    return code
  },
}
