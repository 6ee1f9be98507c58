// barover verify: is a job's log as it was written? Says what could be checked, and never more.

import { createHash } from 'node:crypto'
import { changedVerdicts, openedOf } from '../../app/replay.ts'
import { definitionsFrom } from '../../authoring/definitions.ts'
import { readEntries } from '../../core/job/entry-schema.ts'
import { findJob } from '../../node/job-folder.ts'
import { journalBytes } from '../../node/job-store.ts'
import { examine } from '../../node/journal/examine.ts'
import { verify } from '../../node/journal/verify.ts'
import { type Command, SHARED, text } from '../args.ts'
import { EXIT } from '../exit.ts'
import { print } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const verifyCommand: Command = {
  name: 'verify',
  usage: 'barover verify JOB [--head HASH] [--jobs DIR]',
  summary: 'Check a job’s log against itself and, with --head, against a hash that was noted elsewhere.',
  options: {
    head: { type: 'string', says: 'head hash from a hand-over, a report or a countersignature' },
    jobs: SHARED.jobs,
    json: SHARED.json,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const file = findJob(jobsFolder(values), job ?? '')
    const bytes = journalBytes(file.path)
    const found = verify(bytes, text(values, 'head'))
    const inside = found.content.state === 'sound' ? insideFaults(bytes) : []
    const sound =
      found.content.state === 'sound' &&
      found.tail.state !== 'fault' &&
      found.whole.state !== 'fault' &&
      inside.length === 0
    if (values.json === true)
      print(JSON.stringify({ job: file.id, record: file.record, sound, ...found, inside }))
    else {
      print(`${file.record}  ${file.id}  ${found.lines} lines`)
      print(`  content   ${found.content.what}`)
      print(`  tail      ${found.tail.what}`)
      print(`  whole     ${found.whole.what}`)
      for (const fault of inside) print(`  inside    ${fault}`)
      print(`  head      ${found.head}`)
    }
    return sound ? EXIT.done : EXIT.checkFailed
  },
}

/** What a sound chain can still hold: entries of another shape, copied files that do not match their hash, changed sums. */
function insideFaults(bytes: Buffer): string[] {
  const read = readEntries(examine(bytes).lines)
  if (!read.ok) return [read.error.say]
  const { files } = openedOf(read.value)
  const wrong = files.filter((f) => createHash('sha256').update(f.text, 'utf8').digest('hex') !== f.sha256)
  const faults = wrong.map((f) => `The copy of ${f.name} does not match the hash beside it.`)
  const defs = definitionsFrom(files)
  if (!defs.ok) return [...faults, 'The files the job was opened with no longer pass this version’s checks.']
  return [...faults, ...changedVerdicts(defs.defs, read.value)]
}
