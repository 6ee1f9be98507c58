// barover doubt: an instrument was found out of calibration after the jobs it was used on were closed. Nothing in their
// logs is changed: an entry is added to each, and what rested on the instrument falls.
import { findJob, listJobs } from '../../node/job-folder.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { listDoubted } from '../doubt-list.ts'
import { signDoubt } from '../doubt-sign.ts'
import { EXIT } from '../exit.ts'
import { knownInstrument } from '../registers.ts'
import { jobsFolder } from './run.ts'

export const doubtCommand: Command = {
  name: 'doubt',
  usage: 'barover doubt [JOB ...] --instrument ID [--why TEXT --says WHO --by INITIALS] [--jobs DIR]',
  summary:
    'An instrument was found out of calibration: list the jobs it read on and what would fall, or, with JOB, let it fall there.',
  options: {
    instrument: { type: 'string', says: 'its id in the register, for example M-3' },
    why: { type: 'string', says: 'what was found wrong with it' },
    says: { type: 'string', says: 'who says so: a person, a laboratory, a paper' },
    by: { type: 'string', says: 'initials of who signs; the PIN is asked for' },
    ...SHARED,
  },
  positionals: { least: 0, most: 500 },
  run: async (values, jobs) => {
    const folder = jobsFolder(values)
    if (jobs.length === 0) {
      const [instrument] = needed(values, 'instrument')
      const files = listJobs(folder)
      return listDoubted(files, knownInstrument(files, instrument), folder, values)
    }
    const [instrument, why, says, by] = needed(values, 'instrument', 'why', 'says', 'by')
    // One job named twice is one.
    const files = [
      ...new Map(jobs.map((job) => findJob(folder, job)).map((file) => [file.path, file])).values(),
    ]
    const said = { instrument: knownInstrument(files, instrument), why, says }
    return signDoubt({ files, said, by: by.trim().toUpperCase(), others: listJobs(folder), values })
  },
}

/** All that is missing is named at once. */
function needed<const N extends readonly string[]>(values: Values, ...names: N): { [K in keyof N]: string } {
  const given = names.map((name) => text(values, name) ?? '')
  const missing = names.filter((_, i) => (given[i] ?? '').trim() === '')
  if (missing.length === 0) return given as { [K in keyof N]: string }
  throw new UserError(
    `barover doubt needs ${missing.map((name) => `--${name}`).join(', ')}.`,
    EXIT.wrongUse,
    `barover doubt JOB --instrument M-3 --why "what is wrong" --says "who says so" --by INITIALS`,
  )
}
