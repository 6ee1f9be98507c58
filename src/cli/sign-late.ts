// A lead signs something that is added to a closed job: initials, and the PIN until it fits or its person has to wait. A wrong
// one is on record in that job, as everywhere.
import { admit } from '../core/job/admit.ts'
import { personById } from '../core/job/definitions.ts'
import { NO_OTHERS } from '../core/job/elsewhere.ts'
import { MISSES_ALLOWED } from '../core/job/signature.ts'
import type { Refusal } from '../core/lib/result.ts'
import { list } from '../core/lib/wording.ts'
import type { SignedInput } from '../core/talk/heard.ts'
import { isStop } from '../core/talk/words.ts'
import { isPin } from '../node/pins.ts'
import type { Asker } from './asker.ts'
import type { OpenedJob } from './open.ts'
import { besides } from './to-copy.ts'

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
function barredLate({ session }: OpenedJob, what: Late): Refusal | null {
  const { state, now } = session.snapshot()
  return admit(session.engine, state, { ...what, proved: true }, now, NO_OTHERS).refusal
}

/** Refusals of a person, and of nothing that was said: other initials may do. */
const OF_WHOM: readonly string[] = ['unknown-person', 'not-lead', 'trainee', 'own-work', 'no-pin']

export function isOfWhom({ code }: Refusal): boolean {
  return OF_WHOM.includes(code)
}

/** Who signs instead of whom may not; null for nobody. STOP comes back as it was keyed. What was said before is kept. */
export async function otherInitials(
  asker: Asker,
  refused: Refusal,
  who: readonly string[],
): Promise<string | null> {
  tell(refused.say)
  const named = who.length === 0 ? '' : `: ${list(who, 'or')}`
  const by = await asker.ask(`Initials of who signs${named}. What was said is kept. Enter alone: nobody.`)
  return by === null || /^(?:|back|leave|0)$/i.test(by.trim()) ? null : by.trim()
}

/** Null once it is on record; else why it is not. Wrong initials are asked again, and the words stay. */
export async function signLate(opened: OpenedJob, late: Late, asker: Asker): Promise<string | null> {
  const { session, defs } = opened
  let what = late
  for (let barred = barredLate(opened, what); barred !== null; barred = barredLate(opened, what)) {
    if (!isOfWhom(barred)) return barred.say
    const leads = defs.crew.crew.flatMap(({ id, role }) => (role === 'lead' ? [id] : []))
    const by = await otherInitials(asker, barred, leads)
    if (by === null) return `${barred.say} Nobody signed for it.`
    if (isStop(by)) return CLOSED_STOP
    what = { ...what, person: by.toUpperCase() }
  }
  const { person } = what
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
  process.stderr.write(`${besides(line)}\n`)
}
