// barover verify: is a job's log as it was written? Says what could be checked, and never more.

import { createHash } from 'node:crypto'
import { changedVerdicts, misfit, openedOf, replay } from '../../app/replay.ts'
import { definitionsFrom } from '../../authoring/definitions.ts'
import { readEntries } from '../../core/job/entry-schema.ts'
import { clean } from '../../core/lib/text.ts'
import { type AttachedCheck, checkAttached } from '../../node/check-files.ts'
import { findJob } from '../../node/job-folder.ts'
import { journalBytes } from '../../node/job-store.ts'
import { isHashText } from '../../node/journal/chain.ts'
import { examine } from '../../node/journal/examine.ts'
import { verify } from '../../node/journal/verify.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text } from '../args.ts'
import { EXIT } from '../exit.ts'
import { print } from '../terminal.ts'
import { standingOf } from './jobs.ts'
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
    const head = text(values, 'head')
    // A head that cannot be one would check nothing, and an exit code of 0 would say that it had.
    if (head !== undefined && !isHashText(head.replace(/\s+/g, '').toLowerCase()))
      throw new UserError(
        `--head takes the 64 figures and letters a to f of a noted head, not "${head.slice(0, 20)}".`,
        EXIT.wrongUse,
      )
    const bytes = journalBytes(file.path)
    const found = verify(bytes, head)
    const inside = found.content.state === 'sound' ? insideFaults(bytes) : []
    const sound =
      found.content.state === 'sound' &&
      found.tail.state !== 'fault' &&
      found.whole.state !== 'fault' &&
      inside.length === 0
    const standing = found.content.state === 'sound' ? standingIn(bytes) : null
    const { files, strays } = filesIn(file.path, bytes)
    const isWhole = files.every((f) => f.state === 'as-attached')
    if (values.json === true)
      print(
        JSON.stringify({
          job: file.id,
          record: file.record,
          sound,
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
    return sound && isWhole ? EXIT.done : EXIT.checkFailed
  },
}

/** How the job stands by its entries, in words; null when they cannot be read. */
function standingIn(bytes: Buffer): string | null {
  const read = readEntries(examine(bytes).lines)
  return read.ok ? standingOf(replay(read.value).state) : null
}

/** The attached files, by what can be read of the log: its sound lines, also where a later one is not. */
function filesIn(path: string, bytes: Buffer): AttachedCheck {
  const read = readEntries(examine(bytes).lines)
  return checkAttached(path, read.ok ? replay(read.value).state.files : [])
}

/** What a sound chain can still hold: entries of another shape, copied files that do not match their hash, changed sums. */
function insideFaults(bytes: Buffer): string[] {
  const read = readEntries(examine(bytes).lines)
  if (!read.ok) return [read.error.say]
  const { files } = openedOf(read.value)
  const wrong = files.filter((f) => createHash('sha256').update(f.text, 'utf8').digest('hex') !== f.sha256)
  const faults = wrong.map((f) => `The copy of ${f.name} does not match the hash beside it.`)
  const defs = definitionsFrom(files)
  if (!defs.ok) return [...faults, "The files the job was opened with no longer pass this version's checks."]
  const apart = misfit(defs.defs, read.value)
  if (apart !== null) faults.push(`The entries do not fit the job that the log opens (${apart}).`)
  return [...faults, ...changedVerdicts(defs.defs, read.value)]
}
