// From a line that somebody keyed to an input for the job: what does this line mean at this prompt? Pure; a question that
// takes several lines (a correction, a disposition) is held in Talk, which is never on disk because nothing in it counts.

import { wouldRefuse } from '../job/admit.ts'
import { findReading, lastReopenable } from '../job/admit-change.ts'
import { gateBeingAsked, lastGiven } from '../job/admit-gate.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import type { GateStep } from '../job/gate.ts'
import { mispick } from '../job/mispick.ts'
import { next, type Prompt, readingCutShort } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { pickTold } from './another-instrument.ts'
import { answerLines, quotedLines } from './answer-asked.ts'
import {
  type Ask,
  hearAnswer,
  isHidden,
  questionText,
  secrecyOf,
  standingAsk,
  type WordMeant,
} from './ask.ts'
import { attachWord } from './ask-file.ts'
import { askWhich, stepDone } from './ask-register.ts'
import { hearAtStop } from './ask-stop.ts'
import { answers, askedAt, askedWithin, couldAnswer, mayBeAsked, questionIn, takesOf } from './asked.ts'
import { changeLines } from './changes.ts'
import { correct, standingReadings, whyNoChange, whySettleFirst } from './correct.ts'
import { handOver, peopleWord } from './crew-words.ts'
import { decideFinding, deviation } from './decide.ts'
import { doubt } from './doubt.ts'
import { sureOfFigure, sureOfTemperature } from './figure-sure.ts'
import { showLines } from './gate-list.ts'
import { ask, type Heard, input, momentOf, QUIET, say, signing, type Talk, told, untaken } from './heard.ts'
import { leaveWord } from './leave-sure.ts'
import { limitLines } from './limits-asked.ts'
import { makeSafeLines } from './make-safe.ts'
import { meantLine } from './meant.ts'
import { nextLines } from './next-steps.ts'
import { noneFits } from './none-fits.ts'
import { sureOfNumber } from './number-sure.ts'
import { offersAt, pickedOffer } from './offered.ts'
import { openLines } from './open-items.ts'
import { pickedFrom, pickedOf } from './picked.ts'
import { sureOfPlaces } from './places-sure.ts'
import { hearAtPoint, notice } from './points.ts'
import { hearPractice, hearPracticeWithin, noWords } from './practice-words.ts'
import { countersignWho, countersignWord } from './radio-words.ts'
import { isYes, reflexLines, reflexWithin, whyNoNotApplicable } from './reflex.ts'
import { isTold } from './safety-asked.ts'
import { hearAtSheet, sheetWord } from './sheet-words.ts'
import { standingAsked } from './standing-asked.ts'
import { dangerLines, statedLines } from './stated.ts'
import { sureOfTag } from './tag-sure.ts'
import { helpLines, readingLines, whyLines } from './tell-about.ts'
import { answerTo, toldLines } from './told.ts'
import { upTo, wantedLine } from './wanted.ts'
import { whereLines } from './where.ts'
import { nearFigure, whyKnown, whyNumber } from './why-number.ts'
import { ASK_HOW, isMakeSafe, isStop, NOT_NOTED, PIN_DROPPED, type Word, wordIn } from './words.ts'

/** `now` is told where ages are asked for; left out, it is the moment of the last entry. */
export function hear(
  defs: Definitions,
  state: State,
  talk: Talk,
  line: string,
  now: Instant = momentOf(state),
): Heard {
  if (isStop(line)) return { talk: QUIET, input: { do: 'stop' }, say: [] }
  // It answers nothing: what is asked, and the question within it, stand as they were.
  if (isMakeSafe(line)) return { talk, input: null, say: makeSafeLines(defs, state) }
  const prompt = next(defs, state)
  const question = standingAsk(prompt, talk.ask)
  if (question !== null)
    return (
      hearPracticeWithin(defs, state, question, line, now) ?? hearWithin(defs, state, question, line, now)
    )
  // A question for a PIN that fell: whatever could be one answers nothing.
  const secrecy = talk.ask === null ? 'open' : secrecyOf(prompt, talk.ask)
  // A PIN that was still being keyed when its question fell answers nothing else.
  if (line.trim() !== '' && isHidden(secrecy, line)) return untaken(say(PIN_DROPPED))
  const practised = secrecy === 'open' ? hearPractice(defs, state, prompt, line, now) : null
  if (practised !== null) return practised
  // The very thing that is asked for is that, whatever word it begins with.
  if (answers(defs, state, prompt, line)) return hearAtPrompt(defs, state, prompt, line)
  const word = wordIn(line)
  if (word === 'note' && talk.told !== undefined) return input({ do: 'note', text: talk.told })
  if (word !== null) return hearWord(defs, state, prompt, word, now)
  const note = /^note\s+(.+)$/i.exec(line.trim())
  if (note?.[1] !== undefined)
    return {
      ...input({ do: 'note', text: note[1] }),
      say: dangerLines(defs, state, { kind: 'note' }, note[1], now) ?? [],
    }
  const file = /^attach\s+(.+)$/i.exec(line.trim())
  if (file?.[1] !== undefined) return attachWord(prompt, file[1])
  const about = /^why\s+(.+)$/i.exec(line.trim())
  if (about?.[1] !== undefined && secrecy === 'open')
    return say(...whyAbout(defs, state, line, about[1], now))
  const reflex = reflexLines(defs, state, prompt, line)
  if (reflex !== null) {
    // A yes at a hold point is refused by the engine in its own words. Of a figure they do not say which; elsewhere once is enough.
    const given = prompt.kind === 'evidence' && isYes(line) ? hearAtPrompt(defs, state, prompt, line) : null
    if (prompt.kind !== 'evidence' || given === null || !isOfGate(given)) return untaken(say(...reflex))
    const isFigure = /^(?:gas|measured)$/.test(prompt.item.evidence.kind)
    return { ...given, say: isFigure ? [wantedLine(defs, state, prompt)] : [] }
  }
  const asked = secrecy === 'open' ? askedAt(defs, state, prompt, line) : null
  if (asked !== null)
    return isTold(line)
      ? told(line, ...answerTo(defs, state, asked, now), NOT_NOTED)
      : say(...answerTo(defs, state, asked, now))
  const meant = couldAnswer(defs, state, prompt, line) ? null : meantLine(prompt, line)
  const heard = untaken(hearAtPrompt(defs, state, prompt, line))
  const stated = secrecy === 'open' ? statedLines(defs, state, prompt, line, now) : null
  if (stated !== null) return isOfGate(heard) ? { ...heard, say: stated } : told(line, ...stated)
  if (meant === null) return heard
  // What a hold point wants is said as well: the line may be a slip in that.
  return isOfGate(heard) ? { ...heard, say: [meant] } : untaken(say(meant))
}

/** Something for a hold point, or why it is none. */
function isOfGate({ input: given, refusal }: Heard): boolean {
  return given?.do === 'evidence' || refusal !== undefined
}

/** A line while a question of several lines stands: a question in plain words leaves it standing. */
function hearWithin(defs: Definitions, state: State, question: Ask, line: string, now: Instant): Heard {
  const stays = (lines: readonly string[]): Heard => ({ talk: { ask: question }, input: null, say: lines })
  const asked = askedWithin(defs, question, line)
  if (asked !== null)
    return stays([
      ...answerTo(defs, state, asked, now),
      // The words that put a slip right are heard at a prompt only.
      ...(standingAsked(asked) === 'mend' ? ['A question stands here: back leaves it first.'] : []),
    ])
  const takes = takesOf(question)
  const dropped = takes === 'words' ? noWords(defs, state, line) : null
  if (dropped !== null) return untaken(stays([dropped]), question)
  const reflex = takes === 'secret' ? null : reflexWithin(question, takes, line)
  if (reflex !== null) return untaken(stays(reflex), question)
  if (question.kind === 'word-meant') return hearMeant(defs, state, question, line, now)
  const danger = takes === 'words' ? dangerLines(defs, state, question, line, now) : null
  // Nobody who tells of danger is asked first whether it is meant: it is put down, and answered.
  if (danger !== null) {
    const heard = hearAnswer(defs, state, question, line)
    return { ...heard, say: [...danger, ...heard.say] }
  }
  return takes === 'words' && !isBack(line) && (wordIn(line) !== null || mayBeAsked(question, line))
    ? ask({ kind: 'word-meant', line, of: question })
    : untaken(hearAnswer(defs, state, question, line), question)
}

/** A word keyed where words are asked for: they themselves, or the word. What the word only tells leaves the question standing. */
function hearMeant(defs: Definitions, state: State, question: WordMeant, line: string, now: Instant): Heard {
  const { of, line: keyed } = question
  if (isBack(line)) return ask(of)
  const chosen = line.trim()
  if (chosen === '1') return hearAnswer(defs, state, of, keyed)
  if (chosen !== '2') return ask(question, `Key 1 or 2; back asks anew: ${questionText(of)}`)
  const word = wordIn(keyed)
  if (word === null) return ask(of, ...answerTo(defs, state, questionIn(keyed) ?? keyed, now))
  if (word === 'back') return hearAnswer(defs, state, of, 'back')
  const heard = hearWord(defs, state, next(defs, state), word, now)
  const isTold = heard.input === null && heard.talk.ask === null && heard.file === undefined
  return isTold ? { ...heard, talk: { ask: of } } : heard
}

const isBack = (line: string) => line.trim().toLowerCase() === 'back'

/** The sums of a figure where it is one or near to one; else a question like any other. */
function whyAbout(defs: Definitions, state: State, line: string, about: string, now: Instant): string[] {
  const word = about.replace(/[\s?]+$/, '')
  const known = whyKnown(defs, state, word)
  if (known !== null) return known
  const told = toldLines(defs, state, line, now)
  if (told !== null) return told
  if (nearFigure(word) !== undefined) return whyNumber(defs, state, word)
  const quoted = quotedLines(defs, state, line)
  if (quoted !== null) return quoted
  return /\s/.test(word) ? answerLines(defs, state, line) : whyNumber(defs, state, word)
}

function hearWord(defs: Definitions, state: State, prompt: Prompt, word: Word, now: Instant): Heard {
  const ofSheet = sheetWord(defs, state, word)
  if (ofSheet !== null) return ofSheet
  switch (word) {
    case 'help':
      return say(...helpLines(defs, state))
    case 'why':
      return say(...whyLines(defs, state, prompt))
    case 'ask':
      return say(ASK_HOW)
    case 'where':
      return say(...whereLines(defs, state, now))
    case 'next':
      return say(...nextLines(defs, state))
    case 'show':
      return say(...showLines(defs, state))
    case 'readings':
      return say(...readingLines(defs, state))
    case 'limits':
      return say(...(limitLines(defs, state) ?? answerLines(defs, state, 'what is the limit')))
    case 'changes': {
      const lines = changeLines(defs, state)
      return say(...(lines.length > 0 ? lines : ['Nothing was read as found or as left yet.']))
    }
    case 'note':
      return ask({ kind: 'note' })
    case 'attach':
      return attachWord(prompt, null)
    case 'sign on':
      return peopleWord(state, prompt, 'come-on')
    case 'sign off':
      return peopleWord(state, prompt, 'sign-off')
    case 'countersign':
      return countersignWord(state, prompt)
    case 'hand over':
      return handOver(defs, state, prompt)
    case 'aloud':
      return { ...say(), aloud: 'on' }
    case 'aloud off':
      return { ...say(), aloud: 'off' }
    case 'placed':
      return ask({ kind: 'place-what' })
    case 'taken':
      return askWhich(state)
    case 'safe':
      return say(...makeSafeLines(defs, state))
    case 'leave':
      return leaveWord(defs, state)
    case 'correct':
      return correct(defs, state)
    case 'back':
      return back(defs, state, prompt)
    case 'n/a':
      return notApplicable(prompt)
    case 'open':
      return say(...openLines(defs, state))
    case 'notice':
      return notice(defs, state)
    case 'deviation':
      return deviation(defs, state)
    case 'instrument':
      return doubt(defs, state)
    case 'stop':
      return input({ do: 'stop' })
  }
}

function notApplicable(prompt: Prompt): Heard {
  const no = whyNoNotApplicable(prompt)
  return no === null && prompt.kind === 'read'
    ? ask({ kind: 'not-applicable-why', place: prompt.place.key })
    : say(no ?? 'Only a reading can be n/a.')
}

/** Back to the last thing answered, a pick among them; what would become void stands in the question. */
function back(defs: Definitions, state: State, prompt: Prompt): Heard {
  const no = whyNoChange(state)
  if (no !== null) return say(no)
  const wrong = mispick(defs, state)
  if (wrong !== null) return input({ do: 'put-back', seat: wrong.seat })
  const gate = gateBeingAsked(defs, state)
  if (gate !== null) return backAtGate(defs, state, gate)
  if (prompt.kind === 'clear') return say('Come out and stand clear first: there is no way back from here.')
  const settle = whySettleFirst(state)
  if (settle !== null) return say(settle)
  const step = lastReopenable(defs, state)
  const readings = standingReadings(defs, state)
  const lastReading = readings[readings.length - 1]
  const reading = lastReading === undefined ? null : findReading(state, lastReading.seq)
  const answered = step === null ? 0 : step.number
  const read = reading === null ? 0 : (defs.steps.find((s) => s.id === reading.step)?.number ?? 0)
  if (answered === 0 && read === 0) return say('There is nothing to go back to yet.')
  const picked = pickTold(defs, state)
  if (read >= answered && lastReading !== undefined && reading !== null) {
    return ask(
      { kind: 'correct-why', of: lastReading.seq },
      ...picked,
      `The last reading was ${lastReading.text}.`,
    )
  }
  if (step === null) return say('There is nothing to go back to yet.')
  return ask(
    { kind: 'reopen-why', step: step.id },
    ...picked,
    `Back to step ${step.number}, ${step.step.title}.`,
  )
}

/** Nothing given yet: the engine says so. */
function backAtGate(defs: Definitions, state: State, gate: GateStep): Heard {
  const falls = lastGiven(defs, state, gate)
  if (falls.length === 0) return input({ do: 'ask-again', step: gate.id })
  return ask({ kind: 'ask-again-sure', step: gate.id })
}

function hearAtPrompt(defs: Definitions, state: State, prompt: Prompt, line: string): Heard {
  const text = line.trim()
  const number = /^\d{1,2}$/.test(text) ? Number(text) : 0
  switch (prompt.kind) {
    case 'closed':
      return say('This job is closed.')
    case 'stop-cause':
    case 'stopped':
      return hearAtStop(state, prompt, text)
    case 'sign-on':
      return signing(defs, state, text, { do: 'sign-on', person: text })
    case 'tag':
      return sureOfTag(defs, text) ?? input({ do: 'name-machine', typed: text })
    case 'pick': {
      const picked = pickedFrom(prompt.options, text)
      return picked === undefined
        ? say(
            noneFits(defs, state, prompt) ??
              `Key ${upTo(prompt.options.length)}, or the number on the tag of the instrument.`,
          )
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
      if (prompt.item.evidence.kind !== 'witness')
        return (
          sureOfFigure(defs, state, prompt, line) ?? sureOfNumber(defs, state, prompt, line) ?? input(given)
        )
      return signing(defs, state, line, given)
    }
    case 'doubt':
      if (number === 1) return input({ do: 'settle-doubt', choice: 'again' })
      if (number === 2) return input({ do: 'settle-doubt', choice: 'mistyped' })
      return number === 3
        ? ask({ kind: 'keep-why' })
        : say('Key 1, 2 or 3 first: nothing was taken. 2 is for keying the figure again in full.')
    case 'late':
      return number === 1 || number === 2
        ? input({ do: 'settle-late', kept: number === 1 })
        : say('Key 1 or 2.')
    case 'tell':
      return text === '' || text.toLowerCase() === 'done'
        ? stepDone(defs, state, prompt.step.id, 'done')
        : say('Key done when it is done.')
    case 'confirm':
      if (number === 1) return stepDone(defs, state, prompt.step.id, 'confirm')
      return number === 2 ? ask({ kind: 'object', step: prompt.step.id }) : say('Key 1 or 2.')
    case 'observe': {
      const { conditions, several } = asKind(prompt.step, 'observe').step
      const step = prompt.step.id
      const picked = pickedOf(conditions, line)
      const together = several === true ? `, or several as 2 ${conditions.length}` : ''
      if (picked === null) return say(`Key a number, 1 to ${conditions.length}${together}.`)
      const found = { do: 'observe', step, ...picked.found } as const
      // What cannot go together is told before its note is asked.
      const no = picked.note ? wouldRefuse(defs, state, { ...found, note: 'what is seen' }) : null
      if (no !== null) return { ...say(), refusal: no }
      return picked.note ? ask({ kind: 'finding-note', step, ...picked.found }) : input(found)
    }
    case 'decide': {
      const picked = pickedOffer(offersAt(state, prompt.step), line)
      return 'no' in picked ? say(picked.no) : ask({ kind: 'dispose-who', step: prompt.step.id, ...picked })
    }
    case 'read':
      return (
        sureOfTemperature(defs, state, prompt, line) ??
        sureOfPlaces(defs, state, prompt, line) ??
        input({ do: 'read', place: prompt.place.key, typed: line })
      )
    case 'open-things':
      return text.toLowerCase() === 'hand on'
        ? ask({ kind: 'hand-who' })
        : say(
            'Key the word taken once for each that was accounted for; a lead who hands on the rest keys the words hand on.',
          )
    case 'point':
    case 'review':
      return hearAtPoint(defs, state, prompt.step, line)
    case 'held':
      return say(`HOLD: ${prompt.why}.`)
    case 'findings':
      return decideFinding(defs, state, prompt.open, number)
    case 'countersign':
      return countersignWho(defs, state, line)
    case 'sheet':
    case 'sheet-doubt':
    case 'sheet-sign':
      return hearAtSheet(defs, state, prompt, line)
    case 'judge':
    case 'finish':
      return say(wantedLine(defs, state, prompt))
  }
}
