// A lead signs something that is added to a closed job: initials, and the PIN until it fits or its person has to wait. A wrong
// one is on record in that job, as everywhere.
import { admit } from '../core/job/admit.ts'
import { personById } from '../core/job/definitions.ts'
import { NO_OTHERS } from '../core/job/elsewhere.ts'
import { MISSES_ALLOWED } from '../core/job/signature.ts'
import type { SignedInput } from '../core/talk/heard.ts'
import { isStop } from '../core/talk/words.ts'
import { isPin } from '../node/pins.ts'
import type { Asker } from './asker.ts'
import type { OpenedJob } from './open.ts'

type Late = Extract<SignedInput, { do: 'adopt' | 'remark' }>

/** STOP is heard at every question of a closed job, the PIN included; it has nothing left to block, and that is said at once. */
export const CLOSED_STOP =
  'The job is closed: a STOP blocks nothing in it. Call out; barover safe has what to do.'

/** What was keyed where a PIN is asked could be none. */
export const NO_PIN =
  'A PIN is 4 to 12 figures: this was none, and counts as no try. back leaves the question.'

/** A way out of the question for a PIN: nothing is signed. */
export function leavesPin(line: string): boolean {
  return /^(?:|back|leave|0)$/i.test(line.trim())
}

/** Why it would be refused also with the right PIN, or null: told before the PIN is asked. */
export function barredLate({ session }: OpenedJob, what: Late): string | null {
  const { state, now } = session.snapshot()
  return admit(session.engine, state, { ...what, proved: true }, now, NO_OTHERS).refusal?.say ?? null
}

/** Null once it is on record; else why it is not. */
export async function signLate(opened: OpenedJob, what: Late, asker: Asker): Promise<string | null> {
  const { session, defs } = opened
  const { person } = what
  const barred = barredLate(opened, what)
  if (barred !== null) return barred
  const before = session.snapshot().state.seq
  if (personById(defs, person)?.pin === undefined) {
    await session.bring({ ...what, proved: false })
    return session.snapshot().state.seq > before ? null : 'Nothing was added.'
  }
  for (;;) {
    const pin = await asker.ask(`PIN of ${person}. It is not shown while it is keyed; back leaves it.`, true)
    if (pin !== null && isStop(pin)) return CLOSED_STOP
    if (pin === null || leavesPin(pin)) return 'No PIN was keyed, so nothing was signed.'
    if (!isPin(pin)) {
      tell(NO_PIN)
      continue
    }
    if (await session.sign({ person, pin, what })) return null
    const count = session.snapshot().state.pinMisses[person]?.count ?? 0
    if (count >= MISSES_ALLOWED)
      return `${MISSES_ALLOWED} wrong PINs for ${person} in a row: no other is looked at for 5 min.`
    tell(`That is not the PIN of ${person}. It is on record.`)
  }
}

/** Questions and what is wrong with an answer stand beside what is printed, which may be read by a program. */
export function tell(line: string): void {
  process.stderr.write(`${line}\n`)
}
