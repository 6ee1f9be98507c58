// A lead who acts from a review: the session of the job with all its rules, taken up for one word and left again once that is
// done. Where the job asks for anything that is not a lead's, no line is heard: it is left.
import { next } from '../core/job/next.ts'
import { standingAsk } from '../core/talk/ask.ts'
import { type DeskWord, goesOn, keyedFirst } from '../core/talk/desk-words.ts'
import { isMakeSafe, isStop } from '../core/talk/words.ts'
import type { Session, Snapshot } from './session.ts'

/** Taken up, with the first question for this word; left already where there is none. A STOP is on record before all else. */
export async function openDesk(session: Session, word: Exclude<DeskWord, 'remark'>): Promise<Session> {
  const { defs } = session.engine
  const from = session.snapshot().shown.length
  let isKeyed = false

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

  /** Of the transcript only what came since, and the same object as long as nothing changed. */
  let last: { readonly whole: Snapshot; readonly own: Snapshot } | null = null
  const snapshot = (): Snapshot => {
    const whole = session.snapshot()
    if (last?.whole !== whole) last = { whole, own: { ...whole, shown: whole.shown.slice(from) } }
    return last.own
  }

  if (word === 'stop') await session.hear('stop')
  await session.bring({ do: 'take-up' })
  await goOn()
  return {
    ...session,
    snapshot,
    hear: async (line, unseen) => {
      const { prompt, isWithin } = asked()
      // What is asked may have changed under the keys: another job on the machine may have called people out.
      if (!isStop(line) && !isMakeSafe(line) && !isWithin && !goesOn(word, prompt)) return leave()
      await session.hear(line, unseen)
      await goOn()
    },
  }
}
