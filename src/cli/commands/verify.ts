// barover verify: is a job's log as it was written? Says what could be checked, and never more.
import { replay } from '../../app/replay.ts'
import { readEntries } from '../../core/job/entry-schema.ts'
import { clean, wrap } from '../../core/lib/text.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { findJob } from '../../node/job-folder.ts'
import { examine, tornText } from '../../node/journal/examine.ts'
import { type Command, SHARED, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { checkLog, headFrom } from '../log-check.ts'
import { print, printCheckNumber, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const verifyCommand: Command = {
  name: 'verify',
  usage: 'barover verify JOB [--head HASH] [--jobs DIR]',
  summary: "Check a job's log against itself and, with --head, against a hash that was noted elsewhere.",
  options: {
    head: { type: 'string', says: 'check number from a hand-over, a report or a countersignature' },
    jobs: SHARED.jobs,
    json: SHARED.json,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const file = findJob(jobsFolder(values), job ?? '')
    const { bytes, found, inside, isSound, attached, isWhole } = checkLog(file.path, headFrom(values))
    const standing = standingIn(bytes)
    const { files, strays } = attached
    // Of a log that is not sound no head is shown: somebody may write it down, and it would prove what is left as whole.
    const head = isSound ? found.head : null
    if (values.json === true)
      print(
        JSON.stringify({
          job: file.id,
          record: file.record,
          sound: isSound,
          ...found,
          head,
          inside,
          standing,
          files,
          strays,
        }),
      )
    else {
      const line = (text: string) => print(wrapped(file.record, text, values))
      line(`${file.id}  ${found.lines} lines${found.content.state === 'fault' ? ' before the break' : ''}`)
      line(`  content   ${found.content.what}`)
      if (found.torn !== null) line(`  end       ${tornText(found.torn)}`)
      line(`  tail      ${found.tail.what}`)
      line(`  whole     ${found.whole.what}`)
      for (const fault of inside) line(`  inside    ${fault}`)
      for (const { name, what } of files) line(`  file      ${clean(name)}: ${what}`)
      for (const stray of strays) line(`  stray     ${clean(stray)}`)
      if (standing !== null)
        line(
          `  standing  ${found.content.state === 'fault' ? `not known; up to the break ${standing}` : standing}`,
        )
      if (head === null)
        line('  check no. none is shown of a log that is not sound: nothing here is to be noted')
      // A head is to be copied: nothing breaks it but the edge of the screen.
      else printCheckNumber(`${file.record}    `, head)
    }
    if (found.content.state === 'fault') return EXIT.fileProblem
    return isSound && isWhole && found.torn === null ? EXIT.done : EXIT.checkFailed
  },
}

/** Later lines are set in as far as what the first one says. */
function wrapped(record: string, text: string, values: Values): string {
  const room = sheetStyle(values, 'NOT LIVE').width - record.length - 2
  const [lead = ''] = /^ {2}\S+ +/.exec(text) ?? []
  return wrap(text.slice(lead.length), Math.max(20, room - lead.length))
    .map((one, i) => `${record}  ${i === 0 ? lead : ' '.repeat(lead.length)}${one}`)
    .join('\n')
}

/** How the job stands by its entries, in words; null when they cannot be read. */
function standingIn(bytes: Buffer): string | null {
  const read = readEntries(examine(bytes).lines)
  return read.ok ? standingOf(replay(read.value).state) : null
}
