// From a line that somebody keyed to an input for the job: what does this line mean at this prompt? Pure; a question that
// takes several lines (a correction, a disposition) is held in Talk, which is never on disk because nothing in it counts.
import { findReading, lastReopenable } from '../job/admit-change.ts'
import { gateBeingAsked } from '../job/admit-gate.ts'
import { dispositionsFor } from '../job/admit-step.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import { next, type Prompt, readingCutShort } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { hearAnswer, isHidden, secrecyOf, standingAsk } from './ask.ts'
import { handOver, peopleWord } from './crew-words.ts'
import { ask, type Heard, input, QUIET, say, signing, type Talk, voidWarning } from './heard.ts'
import { countersignWho, countersignWord } from './radio-words.ts'
import { correctable, helpLines, readingLines, whyLines } from './tell-about.ts'
import { whyNumber } from './why-number.ts'
import { isStop, type Word, wordIn } from './words.ts'

export const PIN_DROPPED =
  'Figures keyed where a PIN was asked or could have been are dropped and kept nowhere: key the answer anew.'

export function hear(defs: Definitions, state: State, talk: Talk, line: string): Heard {
  if (isStop(line)) return { talk: QUIET, input: { do: 'stop' }, say: [] }
  const prompt = next(defs, state)
  const question = standingAsk(prompt, talk.ask)
  if (question !== null) return hearAnswer(defs, state, question, line)
  // A PIN that was still being keyed when its question fell answers nothing else.
  if (line.trim() !== '' && isHidden(secrecyOf(prompt, talk.ask), line)) return say(PIN_DROPPED)
  const word = wordIn(line)
  if (word !== null) return hearWord(defs, state, prompt, word)
  const note = /^note\s+(.+)$/i.exec(line.trim())
  if (note?.[1] !== undefined) return input({ do: 'note', text: note[1] })
  const about = /^why\s+(.+)$/i.exec(line.trim())
  if (about?.[1] !== undefined) return say(...whyNumber(defs, state, about[1]))
  return hearAtPrompt(defs, state, prompt, line)
}

function hearWord(defs: Definitions, state: State, prompt: Prompt, word: Word): Heard {
  switch (word) {
    case 'help':
      return say(...helpLines(defs, state))
    case 'why':
      return say(...whyLines(defs, state, prompt))
    case 'readings':
      return say(...readingLines(defs, state))
    case 'note':
      return ask({ kind: 'note' })
    case 'sign on':
      return peopleWord(state, prompt, 'come-on')
    case 'sign off':
      return peopleWord(state, prompt, 'sign-off')
    case 'countersign':
      return countersignWord(state, prompt)
    case 'hand over':
      return handOver(defs, state, prompt)
    case 'leave':
      return input({ do: 'leave' })
    case 'correct':
      return correct(defs, state)
    case 'back':
      return back(defs, state, prompt)
    case 'n/a':
      return notApplicable(prompt)
    case 'stop':
      return input({ do: 'stop' })
  }
}

function notApplicable(prompt: Prompt): Heard {
  if (prompt.kind === 'read') return ask({ kind: 'not-applicable-why', place: prompt.place.key })
  if (prompt.kind === 'evidence' || prompt.kind === 'clear')
    return say('A hold point has no n/a: without this evidence it stays shut.')
  return say('Only a reading can be n/a.')
}

function correct(defs: Definitions, state: State): Heard {
  const list = correctable(defs, state)
  if (list.length === 0) return say('There is no reading to correct yet.')
  return ask(
    { kind: 'correct-which', seqs: list.map((r) => r.seq) },
    ...list.map((r, i) => `${String(i + 1).padStart(2)} ${r.text}`),
  )
}

/** Back to the last thing answered; what would become void is said before anything happens. */
function back(defs: Definitions, state: State, prompt: Prompt): Heard {
  const gate = gateBeingAsked(defs, state)
  if (gate !== null) return input({ do: 'ask-again', step: gate.id })
  if (prompt.kind === 'clear') return say('Come out and stand clear first: there is no way back from here.')
  const step = lastReopenable(defs, state)
  const readings = correctable(defs, state)
  const lastReading = readings[readings.length - 1]
  const reading = lastReading === undefined ? null : findReading(state, lastReading.seq)
  const answered = step === null ? 0 : step.number
  const read = reading === null ? 0 : (defs.steps.find((s) => s.id === reading.step)?.number ?? 0)
  if (answered === 0 && read === 0) return say('There is nothing to go back to yet.')
  if (read >= answered && lastReading !== undefined && reading !== null) {
    return ask(
      { kind: 'correct-value', of: lastReading.seq },
      `The last reading was ${lastReading.text}.`,
      ...voidWarning(defs, state, reading.step),
    )
  }
  if (step === null) return say('There is nothing to go back to yet.')
  return ask(
    { kind: 'reopen-why', step: step.id },
    `Back to step ${step.number}, ${step.step.title}.`,
    ...voidWarning(defs, state, step.id),
  )
}

function hearAtPrompt(defs: Definitions, state: State, prompt: Prompt, line: string): Heard {
  const text = line.trim()
  const number = /^\d{1,2}$/.test(text) ? Number(text) : 0
  switch (prompt.kind) {
    case 'closed':
      return say('This job is closed.')
    case 'stop-cause':
      return input({ do: 'explain-stop', why: line })
    case 'stopped':
      return text.toLowerCase() === 'release'
        ? ask({ kind: 'release-who' })
        : say('The job is under STOP. A lead who can answer its cause types release.')
    case 'sign-on':
      return signing(defs, text, { do: 'sign-on', person: text })
    case 'tag':
      return input({ do: 'name-machine', typed: text })
    case 'pick': {
      const picked = prompt.options[number - 1]
      return picked === undefined
        ? say(`Key the number of an instrument, 1 to ${prompt.options.length}.`)
        : input({ do: 'pick', seat: prompt.seat.id, instrument: picked.id })
    }
    case 'clear': {
      // Half keyed when the gate fell: it is kept as late, and counts for nothing until confirmed.
      const cutShort = /^[+\-\u2212]?\.?\d/.test(text) ? readingCutShort(defs, state) : null
      return cutShort === null
        ? input({ do: 'clear', step: prompt.gate.id, typed: text })
        : input({ do: 'read', place: cutShort.place.key, typed: line })
    }
    case 'evidence': {
      const given = { do: 'evidence', step: prompt.gate.id, item: prompt.item.key, typed: line } as const
      return prompt.item.evidence.kind === 'witness' ? signing(defs, line, given) : input(given)
    }
    case 'doubt':
      if (number === 1) return input({ do: 'settle-doubt', choice: 'again' })
      if (number === 2) return input({ do: 'settle-doubt', choice: 'mistyped' })
      return number === 3 ? ask({ kind: 'keep-why' }) : say('Key 1, 2 or 3.')
    case 'late':
      return number === 1 || number === 2
        ? input({ do: 'settle-late', kept: number === 1 })
        : say('Key 1 or 2.')
    case 'tell':
      return text === '' || text.toLowerCase() === 'done'
        ? input({ do: 'done', step: prompt.step.id })
        : say('Press Enter when it is done.')
    case 'confirm':
      if (number === 1) return input({ do: 'confirm', step: prompt.step.id })
      return number === 2 ? ask({ kind: 'object', step: prompt.step.id }) : say('Key 1 or 2.')
    case 'observe': {
      const { conditions } = asKind(prompt.step, 'observe').step
      const condition = conditions[number - 1]
      if (condition === undefined) return say(`Key a number, 1 to ${conditions.length}.`)
      if (condition.note === true)
        return ask({ kind: 'finding-note', step: prompt.step.id, condition: condition.id })
      return input({ do: 'observe', step: prompt.step.id, condition: condition.id })
    }
    case 'decide': {
      const { step, scope } = asKind(prompt.step, 'decide')
      const verdict = state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
      const choices = dispositionsFor(verdict, step.choices)
      const choice = choices[number - 1]
      return choice === undefined
        ? say(`Key a number, 1 to ${choices.length}.`)
        : ask({ kind: 'dispose-who', step: prompt.step.id, choice })
    }
    case 'read':
      return input({ do: 'read', place: prompt.place.key, typed: line })
    case 'held':
      return say(`HOLD: ${prompt.why}.`)
    case 'countersign':
      return countersignWho(defs, state, line)
    case 'judge':
    case 'finish':
      return say('Nothing is asked now.')
  }
}
