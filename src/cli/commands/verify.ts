// barover verify: is a job's log as it was written? Says what could be checked, and never more.
import { replay } from '../../app/replay.ts'
import { readEntries } from '../../core/job/entry-schema.ts'
import { clean } from '../../core/lib/text.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { findJob } from '../../node/job-folder.ts'
import { examine } from '../../node/journal/examine.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { checkLog, headFrom } from '../log-check.ts'
import { print } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const verifyCommand: Command = {
  name: 'verify',
  usage: 'barover verify JOB [--head HASH] [--jobs DIR]',
  summary: "Check a job's log against itself and, with --head, against a hash that was noted elsewhere.",
  options: {
    head: { type: 'string', says: 'head hash from a hand-over, a report or a countersignature' },
    jobs: SHARED.jobs,
    json: SHARED.json,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const file = findJob(jobsFolder(values), job ?? '')
    const { bytes, found, inside, isSound, attached, isWhole } = checkLog(file.path, headFrom(values))
    const standing = found.content.state === 'sound' ? standingIn(bytes) : null
    const { files, strays } = attached
    if (values.json === true)
      print(
        JSON.stringify({
          job: file.id,
          record: file.record,
          sound: isSound,
          ...found,
          inside,
          standing,
          files,
          strays,
        }),
      )
    else {
      const line = (text: string) => print(`${file.record}  ${text}`)
      line(`${file.id}  ${found.lines} lines`)
      line(`  content   ${found.content.what}`)
      line(`  tail      ${found.tail.what}`)
      line(`  whole     ${found.whole.what}`)
      for (const fault of inside) line(`  inside    ${fault}`)
      for (const { name, what } of files) line(`  file      ${clean(name)}: ${what}`)
      for (const stray of strays) line(`  stray     ${clean(stray)}`)
      if (standing !== null) line(`  standing  ${standing}`)
      line(`  head      ${found.head}`)
    }
    return isSound && isWhole ? EXIT.done : EXIT.checkFailed
  },
}

/** How the job stands by its entries, in words; null when they cannot be read. */
function standingIn(bytes: Buffer): string | null {
  const read = readEntries(examine(bytes).lines)
  return read.ok ? standingOf(replay(read.value).state) : null
}
