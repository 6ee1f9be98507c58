// One thing said at a time. What is said newly takes the place of what was; a warning cuts off everything and is never dropped
// itself: one that is cut off by another is said again, whole, behind it.
import type { VoicePort } from './ports.ts'

export interface Utterance {
  readonly text: string
  readonly begins?: () => void
  /** It was said to its end. */
  readonly done?: () => void
}

export interface Speech {
  /** At once; what waits comes after it. */
  readonly warn: (text: string) => void
  /** In place of all that is no warning. */
  readonly replace: (utterances: readonly Utterance[]) => void
  /** Nothing any more, warnings neither. */
  readonly hush: () => void
}

/** A speech program may fail on one line, as where the sound is taken for a moment; twice in a row it is of no use. */
const MOST_FAILURES = 2

/** `failed`: the program does not work; nothing is left to be said then. */
export function createSpeech(voice: VoicePort, failed: () => void): Speech {
  let now: { readonly utterance: Utterance; readonly warning: boolean } | null = null
  let warnings: readonly Utterance[] = []
  let others: readonly Utterance[] = []
  let failures = 0

  const hush = (): void => {
    now = null
    warnings = []
    others = []
    voice.hush()
  }
  const cutOff = (): void => {
    if (now === null) return
    now = null
    voice.hush()
  }
  const ended = (how: 'said' | 'failed'): void => {
    const was = now
    now = null
    if (was === null) return
    if (how === 'said') {
      failures = 0
      was.utterance.done?.()
      start()
      return
    }
    failures++
    if (failures >= MOST_FAILURES) {
      failures = 0
      hush()
      failed()
      return
    }
    if (was.warning) warnings = [was.utterance, ...warnings]
    else others = [was.utterance, ...others]
    start()
  }
  const start = (): void => {
    if (now !== null) return
    const [warning, ...moreWarnings] = warnings
    const [other, ...moreOthers] = others
    const utterance = warning ?? other
    if (utterance === undefined) return
    if (warning === undefined) others = moreOthers
    else warnings = moreWarnings
    const mine = { utterance, warning: warning !== undefined }
    now = mine
    utterance.begins?.()
    // A voice may report of what was cut off long since.
    voice.say(utterance.text, (how) => {
      if (now === mine) ended(how)
    })
  }
  return {
    hush,
    warn: (text) => {
      if (now?.utterance.text === text || warnings.some((w) => w.text === text)) return
      const again = now?.warning === true ? [now.utterance] : []
      cutOff()
      warnings = [{ text }, ...again, ...warnings]
      start()
    },
    replace: (utterances) => {
      others = utterances
      if (now?.warning === false) cutOff()
      start()
    },
  }
}
