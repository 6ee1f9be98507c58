// What can be checked of a log and what lies beside it: chain, copies, sums, attached files. For verify, which says it, and for
// review, which heads its list with it.
import { createHash } from 'node:crypto'
import { changedVerdicts, misfit, openedOf, replay } from '../app/replay.ts'
import { editionsFrom } from '../authoring/editions.ts'
import { defsNow } from '../core/job/editions.ts'
import { readEntries } from '../core/job/entry-schema.ts'
import { type AttachedCheck, checkAttached } from '../node/check-files.ts'
import { journalBytes } from '../node/job-store.ts'
import { isHashText } from '../node/journal/chain.ts'
import { examine } from '../node/journal/examine.ts'
import { type Verification, verify } from '../node/journal/verify.ts'
import { UserError } from '../node/user-error.ts'
import { text, type Values } from './args.ts'
import { EXIT } from './exit.ts'

export interface LogCheck {
  readonly bytes: Buffer
  readonly found: Verification
  /** What a sound chain can still hold that is wrong, in sentences. */
  readonly inside: readonly string[]
  readonly isSound: boolean
  readonly attached: AttachedCheck
  /** Every attached file is there as it was attached. */
  readonly isWhole: boolean
}

/** A head noted elsewhere. One that cannot be one would check nothing, and an exit code of 0 would say that it had. */
export function headFrom(values: Values): string | undefined {
  const head = text(values, 'head')
  if (head !== undefined && !isHashText(head.replace(/\s+/g, '').toLowerCase()))
    throw new UserError(
      `--head takes the 64 figures and letters a to f of a noted check number, not "${head.slice(0, 20)}".`,
      EXIT.wrongUse,
    )
  return head
}

export function checkLog(path: string, head: string | undefined): LogCheck {
  const bytes = journalBytes(path)
  const found = verify(bytes, head)
  const inside = found.content.state === 'sound' ? insideFaults(bytes) : []
  const attached = filesIn(path, bytes)
  return {
    bytes,
    found,
    inside,
    isSound:
      found.content.state === 'sound' &&
      found.tail.state !== 'fault' &&
      found.whole.state !== 'fault' &&
      inside.length === 0,
    attached,
    isWhole: attached.files.every((f) => f.state === 'as-attached'),
  }
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
  const taken = read.value.flatMap((entry) => (entry.type === 'record.taken-in' ? [entry.file] : []))
  const wrong = [...openedOf(read.value).files, ...taken].filter(
    (f) => createHash('sha256').update(f.text, 'utf8').digest('hex') !== f.sha256,
  )
  const faults = wrong.map((f) => `The copy of ${f.name} does not match the hash beside it.`)
  const found = editionsFrom(read.value, 'new')
  if (!found.ok)
    return [
      ...faults,
      found.from === 0
        ? "The files the job was opened with no longer pass this version's checks."
        : `The machine record taken in with entry ${found.from} no longer passes this version's checks.`,
    ]
  const apart = misfit(found.editions, read.value)
  if (apart !== null) faults.push(`The entries do not fit the job that the log opens (${apart}).`)
  return [...faults, ...changedVerdicts(defsNow(found.editions), read.value)]
}
