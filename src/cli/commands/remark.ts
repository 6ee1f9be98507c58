// barover remark: words of a lead on a job that is closed. They stand in its log, its review and whatever is printed of it.
import { findJob } from '../../node/job-folder.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text } from '../args.ts'
import { askPerson } from '../asker.ts'
import { EXIT } from '../exit.ts'
import { finishLate, lateJob } from '../late-job.ts'
import { signLate } from '../sign-late.ts'
import { jobsFolder } from './run.ts'

export const remarkCommand: Command = {
  name: 'remark',
  usage: 'barover remark JOB --text WORDS --by INITIALS [--jobs DIR]',
  summary: 'Words of a lead on a closed job, signed. On one that is open it is the word note.',
  options: {
    text: { type: 'string', says: 'what is to be said' },
    by: { type: 'string', says: 'initials of the lead who says it; the PIN is asked for' },
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const [said, by] = [text(values, 'text'), text(values, 'by')]
    if (said === undefined || by === undefined)
      throw new UserError('barover remark needs --text and --by.', EXIT.wrongUse, 'barover remark --help')
    const opened = lateJob(findJob(jobsFolder(values), job ?? ''))
    const asker = askPerson()
    try {
      const before = opened.session.snapshot().shown.length
      const what = { do: 'remark', text: said, person: by.trim().toUpperCase() } as const
      const refused = await signLate(opened, what, asker)
      return finishLate(opened, values, before, refused)
    } finally {
      asker.close()
      opened.journal.close()
    }
  },
}
