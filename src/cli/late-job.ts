// A closed job opened for a lead's words: how it is taken up, and how what was added is told.

import { layOut, plainText, row } from '../core/sheet/block.ts'
import { entryBlocks } from '../core/sheet/shown-block.ts'
import type { JobFile } from '../node/job-folder.ts'
import { UserError } from '../node/user-error.ts'
import type { Values } from './args.ts'
import { EXIT } from './exit.ts'
import { lateClock } from './late-clock.ts'
import { type OpenedJob, takeUpJob } from './open.ts'
import { print, sheetStyle } from './terminal.ts'

/** @throws UserError where the job is open still, or its log cannot be written. */
export function lateJob(file: JobFile): OpenedJob {
  const opened = takeUpJob(file.path, (entries) => lateClock(entries, file.changedMs))
  if (opened.session.snapshot().state.closed !== null) return opened
  opened.journal.close()
  throw new UserError(
    `${file.id} is open still.`,
    EXIT.checkFailed,
    `barover resume ${file.id} takes it up; there the word is note.`,
  )
}

/** What was added since `before`, or why nothing was; the head, which is another now. */
export function finishLate(
  { session, defs, record, mark, path, journal }: OpenedJob,
  values: Values,
  before: number,
  refused: string | null,
): number {
  const { state, shown } = session.snapshot()
  if (values.json === true)
    print(JSON.stringify({ job: state.job, record, path, refused, head: journal.head() }))
  else {
    const style = sheetStyle(values, mark)
    for (const one of shown.slice(before))
      if (one.kind === 'entry')
        for (const block of entryBlocks(defs, one.state, one.entry, style))
          print(plainText(layOut(block, style)))
    if (refused !== null) print(plainText(layOut({ margin: '', rows: [row(refused, 'caution')] }, style)))
    print(`${mark}  head  ${journal.head()}`)
  }
  return refused === null ? EXIT.done : EXIT.checkFailed
}
