// A lead who acts from a review: the session of the job with all its rules, taken up for one word and left again once that is
// done. Where the job asks for anything that is not a lead's, no line is heard: it is left.
import { next } from '../core/job/next.ts'
import { standingAsk } from '../core/talk/ask.ts'
import { deskFirst, PIN_COUNTS_MS, SIGNED_WITH_ON } from '../core/talk/desk-first.ts'
import { type DeskWord, goesOn, keyedFirst } from '../core/talk/desk-words.ts'
import { isMakeSafe, isStop } from '../core/talk/words.ts'
import type { Session, Shown, Snapshot } from './session.ts'

/** Key of what is told before anything is asked: no session gives it. */
export const TOLD_FIRST = -1

/** Whatever else goes on record ends it: somebody else may have come to the keys. */
const LEAVES_PROOF: readonly string[] = ['pin.fitted', 'elsewhere.seen', 'elsewhere.gone']

/** Taken up, with the first question for this word; left already where there is none. A STOP is on record before all else. */
export async function openDesk(session: Session, word: Exclude<DeskWord, 'remark'>): Promise<Session> {
  const { defs } = session.engine
  const from = session.snapshot().shown.length
  let isKeyed = false
  /** Who signed on here with a PIN, and when: it signs for one act of theirs more. */
  let proved: { readonly person: string; readonly atMs: number } | null = null
  let seen = from

  const asked = () => {
    const { state, talk } = session.snapshot()
    const prompt = next(defs, state)
    return { state, prompt, isWithin: standingAsk(prompt, talk.ask) !== null }
  }
  const leave = () => session.bring({ do: 'leave' })

  const goOn = async (): Promise<void> => {
    const { state, prompt, isWithin } = asked()
    if (state.closed !== null || state.left || isWithin) return
    const line = isKeyed ? null : keyedFirst(word, prompt)
    if (line !== null) {
      isKeyed = true
      await session.hear(line)
      return goOn()
    }
    if (!goesOn(word, prompt)) await leave()
  }

  /** One act is signed once: the PIN of the sign-on is the PIN of the first thing that same person decides, soon after it. */
  const signedOnce = async (): Promise<void> => {
    const { shown, talk, now } = session.snapshot()
    for (const one of shown.slice(seen)) {
      if (one.kind !== 'entry' || LEAVES_PROOF.includes(one.entry.type)) continue
      const on = one.entry.type === 'person.signed-on' ? one.entry : null
      proved = on?.signed === 'pin' ? { person: on.person, atMs: now.ms } : null
    }
    seen = shown.length
    const { ask } = talk
    if (ask?.kind !== 'pin' || proved?.person !== ask.person || !SIGNED_WITH_ON.includes(ask.what.do)) return
    const since = now.ms - proved.atMs
    proved = null
    // Written so that a time that is no number asks for the PIN.
    if (since >= 0 && since <= PIN_COUNTS_MS) await session.bring({ ...ask.what, proved: true })
  }

  /** Of the transcript only what came since, and the same object as long as nothing changed. */
  let last: { readonly whole: Snapshot; readonly own: Snapshot } | null = null
  let first: readonly Shown[] = []
  let firstAt = from
  const snapshot = (): Snapshot => {
    const whole = session.snapshot()
    if (last?.whole !== whole) {
      const { shown } = whole
      last = {
        whole,
        own: { ...whole, shown: [...shown.slice(from, firstAt), ...first, ...shown.slice(firstAt)] },
      }
    }
    return last.own
  }

  if (word === 'stop') await session.hear('stop')
  const lines = deskFirst(defs, session.snapshot().state, word)
  await session.bring({ do: 'take-up', desk: true })
  await goOn()
  const at = session.snapshot()
  if (lines.length > 0 && next(defs, at.state).kind === 'sign-on') {
    first = [{ key: TOLD_FIRST, kind: 'said', lines, refusal: false }]
    firstAt = at.shown.length
    last = null
  }
  return {
    ...session,
    snapshot,
    hear: async (line, unseen) => {
      const { prompt, isWithin } = asked()
      // What is asked may have changed under the keys: another job on the machine may have called people out.
      if (!isStop(line) && !isMakeSafe(line) && !isWithin && !goesOn(word, prompt)) return leave()
      await session.hear(line, unseen)
      await signedOnce()
      await goOn()
    },
  }
}
