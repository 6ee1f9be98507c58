// A lead acts on a job from its review: the job is opened for one word, under its lock, and shut again. What is refused there is
// refused in the words of the job; a log that another program writes to is left alone.
import { openDesk, TOLD_FIRST } from '../app/desk.ts'
import { list } from '../core/lib/wording.ts'
import { DESK_WORDS, type DeskWord } from '../core/talk/desk-words.ts'
import { isStop } from '../core/talk/words.ts'
import type { JobFile } from '../node/job-folder.ts'
import { UserError } from '../node/user-error.ts'
import type { Values } from './args.ts'
import { type Asker, askLines, askPerson } from './asker.ts'
import { asCalled } from './called.ts'
import { clockFor, refuseScripted } from './commands/resume.ts'
import { keyedBy } from './drive.ts'
import { lateClock } from './late-clock.ts'
import { type OpenedJob, takeUpJob } from './open.ts'
import { CLOSED_STOP, signLate } from './sign-late.ts'

export interface Acted {
  /** What is to be told above the review, beside what changed in it. */
  readonly told: readonly string[]
  readonly interrupted: boolean
}

export function isDeskWord(text: string): text is DeskWord {
  return text === 'stop' || DESK_WORDS.some((word) => word === text)
}

const NOTHING = 'Nothing was written.'
/** Of a STOP that could not go on record somebody has to know at once. */
const NO_STOP = 'The STOP is NOT on record: call out, and key it where the job is open.'

/** `piped`: lines of a pipe, where no person is at a terminal. */
export async function actAtDesk(
  file: JobFile,
  values: Values,
  word: DeskWord,
  piped?: AsyncIterable<string>,
): Promise<Acted> {
  let opened: OpenedJob
  try {
    opened = takeUpJob(file.path, (entries) =>
      entries.some(({ type }) => type === 'job.closed')
        ? lateClock(entries, file.changedMs)
        : clockFor(entries, null),
    )
    refuseScripted(opened, piped !== undefined)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    const { message, hint } = error
    return told(message, ...(hint === undefined ? [] : [asCalled(hint)]), word === 'stop' ? NO_STOP : NOTHING)
  }
  try {
    return await act(opened, values, word, piped)
  } finally {
    opened.journal.close()
  }
}

async function act(
  opened: OpenedJob,
  values: Values,
  word: DeskWord,
  piped: AsyncIterable<string> | undefined,
): Promise<Acted> {
  const { session, mark } = opened
  const isClosed = session.snapshot().state.closed !== null
  if (word === 'remark' || isClosed) {
    if (word === 'stop') return told(CLOSED_STOP)
    if (!isClosed) return told('This job is open: the word is note.', NOTHING)
    if (word !== 'remark') return told('This job is closed meanwhile.', NOTHING)
    return remark(opened, piped)
  }
  const before = session.snapshot().state.seq
  const desk = await openDesk(session, word)
  const interrupted = (await keyedBy({ session: desk, mark }, values, piped)) === true
  const { state } = session.snapshot()
  // No line came any more: nobody is at it.
  if (state.closed === null && !state.left) await session.bring({ do: 'leave' })
  const last = desk.snapshot().shown.findLast((one) => one.kind === 'said' && one.key !== TOLD_FIRST)
  const isDone = session
    .snapshot()
    .shown.some((one) => one.kind === 'entry' && one.entry.seq > before && !COMING.includes(one.entry.type))
  return {
    told: isDone ? [] : last?.kind === 'said' ? [...last.lines] : ['Nothing was done.'],
    interrupted,
  }
}

/** What is on record of whoever only came and went. */
const COMING: readonly string[] = [
  'job.taken-up',
  'job.left',
  'person.signed-on',
  'elsewhere.seen',
  'elsewhere.gone',
]

async function remark(opened: OpenedJob, piped: AsyncIterable<string> | undefined): Promise<Acted> {
  const asker: Asker = piped === undefined ? askPerson() : askLines(piped)
  try {
    const text = await asker.ask('The remark, on one line. Enter alone: none.')
    if (text === null || text === '') return told(NOTHING)
    if (isStop(text)) return told(CLOSED_STOP)
    const leads = opened.defs.crew.crew.flatMap(({ id, role }) => (role === 'lead' ? [id] : []))
    const by = await asker.ask(`Initials of the lead who says it: ${list(leads, 'or')}. Enter alone: nobody.`)
    if (by === null || /^(?:|back|leave)$/i.test(by)) return told('Nobody signed for it.', NOTHING)
    if (isStop(by)) return told(CLOSED_STOP)
    // Of wrong initials the words are kept: it is asked again who says them.
    const refused = await signLate(opened, { do: 'remark', text, person: by.toUpperCase() }, asker)
    return told(...(refused === null ? [] : [refused]))
  } finally {
    asker.close()
  }
}

const told = (...lines: string[]): Acted => ({ told: lines, interrupted: false })
