// barover safe: the make-safe sheet, without opening anything. What always holds is printed before any file is looked at.

import { asciiTwin, clean } from '../../core/lib/text.ts'
import { SAFE_ALWAYS, siteLines } from '../../core/talk/make-safe.ts'
import { readTextFile, siteWordsIn } from '../../node/definition-files.ts'
import { findJob } from '../../node/job-folder.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { asCalled } from '../called.ts'
import { EXIT } from '../exit.ts'
import { linesOfJob } from '../safe-lines.ts'
import { print, wantsAscii } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const safeCommand: Command = {
  name: 'safe',
  usage: 'barover safe [JOB] [--machine FILE] [--jobs DIR]',
  summary: 'MAKE SAFE: what to do now, whom to call. No job and no signing on needed; nothing is written.',
  options: {
    machine: { type: 'string', says: 'the machine record (YAML) with the contacts and the rescue plan' },
    jobs: SHARED.jobs,
    ascii: SHARED.ascii,
  },
  positionals: { least: 0, most: 1 },
  run: async (values, [job]) => {
    const say = (lines: readonly string[]) => {
      for (const line of lines) print(shown(line, values))
    }
    say(SAFE_ALWAYS)
    const machine = text(values, 'machine')
    if (job !== undefined) say(linesOfJob(findJob(jobsFolder(values), job)))
    else say(siteLines(machine === undefined ? {} : siteWordsIn(readTextFile(machine))))
    if (job === undefined && machine === undefined)
      say([asCalled('barover safe --machine FILE shows the contacts of a machine record.')])
    return EXIT.done
  },
}

function shown(line: string, values: Values): string {
  return wantsAscii(values) ? asciiTwin(clean(line)) : clean(line)
}
