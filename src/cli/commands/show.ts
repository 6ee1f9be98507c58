// barover show: the whole sheet of a job, as it was filled in.
import { headLines } from '../../app/head.ts'
import { changedVerdicts, replay } from '../../app/replay.ts'
import { defsAt, defsNow } from '../../core/job/editions.ts'
import { handOverLines } from '../../core/job/hand-over.ts'
import { openWords } from '../../core/job/open-words.ts'
import { layOut, plainText, row } from '../../core/sheet/block.ts'
import { entryBlocks } from '../../core/sheet/shown-block.ts'
import { fileLines } from '../../core/talk/ask-file.ts'
import { wordLine } from '../../core/talk/radio-words.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { readingLines } from '../../core/talk/tell-about.ts'
import { findJob } from '../../node/job-folder.ts'
import { readJob } from '../../node/job-store.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { editionsOf } from '../open.ts'
import { print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

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
    const { entries, head, torn } = readJob(file.path)
    const editions = editionsOf(file.path, entries)
    const defs = defsNow(editions)
    const { state, shown } = replay(entries)
    if (values.json === true) {
      print(
        JSON.stringify({
          job: state.job,
          record: state.record,
          closed: state.closed,
          fellFrom: state.fellFrom,
          head,
          files: state.files,
          entries,
        }),
      )
      return EXIT.done
    }
    const style = sheetStyle(values, state.record)
    if (values.handover === true) {
      const lines = [...handOverLines(defs, state), ...headLines(head)]
      print(
        plainText(
          layOut({ margin: '', rows: [row('HAND-OVER', 'strong'), ...lines.map((l) => row(l))] }, style),
        ),
      )
      return EXIT.done
    }
    for (const one of shown) {
      if (one.kind !== 'entry') continue
      for (const block of entryBlocks(defsAt(editions, one.entry.seq), one.state, one.entry, style))
        print(plainText(layOut(block, style)))
    }
    const after = [
      row('All readings', 'strong'),
      ...readingLines(defs, state).map((line) => row(line)),
      ...(state.files.length === 0 ? [] : [row('Attached files', 'strong')]),
      ...fileLines(state).map((line) => row(line)),
      ...openWords(state).map((word) => row(`NOT COUNTERSIGNED: ${wordLine(defs, word)}`, 'caution')),
      ...changedVerdicts(defs, entries).map((line) => row(line, 'caution')),
      ...(torn ? [row('An unfinished last line follows; it was never shown as saved.', 'caution')] : []),
      ...(state.fellFrom === null ? [] : [row(`This job was ${standingOf(state)}.`, 'caution')]),
      row(`Head: ${head}`),
    ]
    print(plainText(layOut({ margin: '', rows: after }, style)))
    return EXIT.done
  },
}
