// Reads the sheet aloud as it is filled in: what went on record, what fell, what is asked. It only listens: it sees what the screen
// sees, and whatever becomes of it holds up nothing.
import { entryAloud, interrupts, saidAloud, spoken } from '../core/aloud/of-entry.ts'
import { type PromptAloud, promptAloud } from '../core/aloud/of-prompt.ts'
import type { Definitions } from '../core/job/definitions.ts'
import { foot } from '../core/sheet/foot.ts'
import { createOnce } from './once.ts'
import type { VoicePort } from './ports.ts'
import type { Shown, Snapshot } from './session.ts'
import { createSpeech, type Utterance } from './speech.ts'

export interface Reader {
  /** On, or said once more; or off. Returns what the sheet says of it. */
  readonly turn: (how: 'on' | 'off') => readonly string[]
  /** Something may have changed on the sheet. */
  readonly follow: (at: Snapshot) => void
}

const OFF = 'Nothing is read aloud any more; the word aloud begins again.'
const NONE = 'Nothing can be read aloud: this computer has no speech program that Barover knows'
const BROKE = 'Nothing is read aloud any more: the speech program did not work. The sheet goes on without it.'

interface Start {
  readonly defs: Definitions
  readonly voice: VoicePort
  /** Entries that stand on the sheet already: they are not read. */
  readonly shown: number
  /** Puts a line on the sheet that nobody asked for. */
  readonly tell: (line: string) => void
}

export function createReader({ defs, voice, shown: before, tell }: Start): Reader {
  let isOn = false
  let isWhole = false
  let printed = before
  let lapse: string | null = null
  let asked = ''
  /** Pieces of the prompt that were said at this step, and a hazard that was begun and not said to its end. */
  const heard = createOnce()
  let begun = new Set<string>()
  const giveUp = (): void => {
    isOn = false
    speech.hush()
    tell(BROKE)
  }
  const speech = createSpeech(voice, giveUp)

  /** What of the prompt is to be said now; a hazard that was cut off before comes behind what is asked. */
  const piecesOf = (prompt: PromptAloud): Utterance[] => {
    if (heard.at(prompt.step, isWhole)) begun = new Set()
    const due = prompt.pieces.filter(({ text, once }) => !once || !heard.has(text))
    const hazards = due.filter(({ hazard }) => hazard)
    const rest = due.filter(({ hazard }) => !hazard)
    for (const { text } of rest) heard.add(text)
    const said = (text: string): Utterance => ({
      text,
      begins: () => void begun.add(text),
      done: () => void heard.add(text),
    })
    const first = hazards.filter(({ text }) => !begun.has(text)).map(({ text }) => said(text))
    const last = hazards.filter(({ text }) => begun.has(text)).map(({ text }) => said(text))
    const words = rest.map(({ text }) => text).join(' ')
    return [...first, ...(words === '' ? [] : [{ text: words }]), ...last]
  }

  const wordsOf = (one: Shown) =>
    one.kind === 'said' ? saidAloud(defs, one.lines) : entryAloud(defs, one.state, one.entry)

  const read = ({ state, talk, now, shown }: Snapshot): void => {
    const fresh = shown.slice(printed)
    const news = fresh.flatMap((one) => wordsOf(one) ?? [])
    if (fresh.some((one) => one.kind === 'entry' && interrupts(one.entry))) isWhole = true
    printed = shown.length
    const { warning } = foot(defs, state, now)
    // The minutes that are left change; that it lapses, and when, is said once.
    const soon = warning?.replace(/, in \d+ min/, '') ?? null
    const lapses = soon !== null && soon !== lapse ? [spoken(defs, [warning ?? ''])] : []
    lapse = soon
    const warnings = [...news.filter((n) => n.warning).map((n) => n.text), ...lapses]
    const answers = news.filter((n) => !n.warning).map((n) => n.text)
    const prompt = promptAloud(defs, state, talk)
    const key = JSON.stringify(prompt)
    const isAsked = state.closed === null && (key !== asked || news.length > 0 || isWhole)
    asked = key
    const pieces = isAsked ? piecesOf(prompt) : []
    isWhole = false
    // First, so that what is asked now waits behind it and is not cut off by it.
    if (warnings.length > 0) speech.warn(warnings.join(' '))
    if (answers.length > 0 || isAsked) speech.replace([...answers.map((text) => ({ text })), ...pieces])
  }

  return {
    turn: (how) => {
      if (how === 'off') {
        isOn = false
        speech.hush()
        return [OFF]
      }
      const found = voice.program()
      if (!found.ok) return [`${NONE} (${found.tried.join(', ')}).`]
      const first = !isOn
      isOn = true
      isWhole = true
      return first ? [`Read aloud by ${found.name}. aloud says it once more, aloud off ends it.`] : []
    },
    follow: (at) => {
      if (!isOn) {
        printed = at.shown.length
        return
      }
      try {
        read(at)
      } catch {
        // Whatever it was, the job goes on; only the reading aloud ends.
        giveUp()
      }
    },
  }
}
