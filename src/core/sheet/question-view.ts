// How a question of several lines stands on the sheet: what it is about, what it asks, what can be keyed.
import { findReading } from '../job/admit-change.ts'
import { asKind, type Definitions, instrumentById, stepById } from '../job/definitions.ts'
import { keyLabel } from '../job/item-label.ts'
import type { State } from '../job/state.ts'
import { cutMiddle } from '../lib/text.ts'
import { type Ask, questionText } from '../talk/ask.ts'
import { choiceHint, choiceLines, listsPart } from '../talk/correct.ts'
import { isDecideAsk } from '../talk/decide.ts'
import { decidingLines, disposingLines, mayBeByRadio } from '../talk/deciding-lines.ts'
import type { SignedInput } from '../talk/heard.ts'
import { leaveSureLines } from '../talk/leave-sure.ts'
import { bareReading, placeName, placeNumber, repeatName } from '../talk/names.ts'
import { numberChoices } from '../talk/number-sure.ts'
import { backDoes } from '../talk/one-back.ts'
import { tagSureLines } from '../talk/tag-sure.ts'
import { wordIn } from '../talk/words.ts'
import { wouldVoidLines } from '../talk/would-void.ts'
import { isSmall, type Row, row, type SheetStyle, textWidth } from './block.ts'
import { titleOf } from './entry-words.ts'
import { mayDecideRow } from './may-decide-rows.ts'
import { numbered } from './numbered.ts'
import type { PromptView } from './prompt-view.ts'

/** `ask`, and where it is about another step than the one the job stands at, its number, title and unit. */
const ANEW = 'What was shown for it; or measure shows a new one.'

export function questionView(
  defs: Definitions,
  state: State,
  question: Ask,
  style: SheetStyle,
): Partial<PromptView> {
  const asked = row(questionText(question), 'strong')
  const back = row(backDoes(question), 'faint')
  const voids = wouldVoidLines(defs, state, question).map((line) => row(line, 'caution'))
  switch (question.kind) {
    case 'correct-which':
      return {
        margin: '',
        title: isSmall(style) ? 'To be corrected, by sheet' : 'To be corrected',
        choices: chosenFrom(question, style),
        more: hinted(choiceHint(question, isSmall(style))),
        listsPart: listsPart(question),
        ask: [asked, back],
      }
    case 'correct-why':
    case 'correct-value':
    case 'correct-kept':
      return correctionView(defs, state, question, voids, back)
    case 'take-back-why':
      return { ...aboutPlace(defs, question.place), ask: [...voids, asked, back] }
    case 'finding-which': {
      const { conditions } = asKind(stepById(defs, question.step), 'observe').step
      return {
        ...aboutStep(defs, question.step),
        ask: [...numbered(conditions.map(({ label }) => label)), asked, back],
      }
    }
    case 'finding-changed-note':
    case 'finding-why':
    case 'reopen-why':
      return { ...aboutStep(defs, question.step), ask: [...voids, asked, back] }
    case 'evidence-why':
      return {
        ...aboutStep(defs, question.step),
        title: keyLabel(defs, asKind(stepById(defs, question.step), 'gate'), question.item),
        ask: [row(`Stands: ${question.shown}`), ...voids, asked, back],
      }
    case 'number-sure':
      return {
        ask: [
          row(`${question.typed} is doubted: ${question.doubt}.`, 'caution'),
          ...numberChoices(question).map((line) => row(line)),
          asked,
          back,
        ],
      }
    case 'number-why':
    case 'number-again':
      return {
        ask: [
          row(
            question.was === null
              ? `${question.typed}: ${question.doubt}`
              : `${question.was} before, ${question.typed} now`,
          ),
          asked,
          back,
        ],
      }
    case 'tag-sure': {
      const [first = '', ...rest] = tagSureLines(defs, question)
      return { ask: [row(first, 'caution'), ...rest.map((line) => row(line)), asked, back] }
    }
    case 'ask-again-sure':
      return { ask: [...voids, asked, row('1  yes: it is asked again'), row('2  no: it stays as it is')] }
    case 'leave-sure':
      return {
        ask: [
          ...leaveSureLines(defs, state).map((line) => row(line)),
          asked,
          row('1  leave'),
          row('2  stay'),
        ],
      }
    case 'sheet-sure':
      return {
        ask: [
          row(oddText(question), 'caution'),
          row('1  keyed wrong: key it again'),
          row('2  it stands so on the paper'),
          back,
        ],
      }
    case 'sheet-rest':
      return { ask: [row(`${question.typed.trim()}, and behind it?`, 'caution'), asked, back] }
    case 'sheet-again':
    case 'sheet-why':
      return { ask: [row(`Stands: ${question.item.text}`), ...voids, asked, back] }
    case 'word-meant':
      return {
        ...headOf(questionView(defs, state, question.of, style)),
        ask: [
          ...(wordIn(question.line) === null ? [row(question.line.trim(), 'faint')] : []),
          asked,
          row('1  yes: put it down'),
          row(wordIn(question.line) === null ? '2  no: answer it' : '2  no: do what that word does'),
          back,
        ],
      }
    case 'dispose-who': {
      const radio = mayBeByRadio(defs, state, question)
      return {
        ask: [
          ...contextRows(defs, state, question),
          ...mayDecideRow(defs, state, question),
          radio ? asked : row(BY_HAND, 'strong'),
          back,
        ],
      }
    }
    case 'pin':
      return { ask: [...contextRows(defs, state, question), ...playedRow(defs, state), asked, back] }
    default:
      return { ask: [...contextRows(defs, state, question), asked, back] }
  }
}

const BY_HAND = 'Initials of the lead who decides'

/** What was asked heads the doubt about its answer as well. */
function headOf({ margin, title }: Partial<PromptView>): Partial<PromptView> {
  return { ...(margin === undefined ? {} : { margin }), ...(title === undefined ? {} : { title }) }
}

/** Where a trainee plays the others as well, and has their PINs from: it stood above the first screen, long ago. */
function playedRow({ machine }: Definitions, { practice }: State): Row[] {
  return practice === null
    ? []
    : [row(`Practice PINs: at the head of ${machine.uses.crew}, beside the machine record.`)]
}

function hinted(hint: string | null): Row[] {
  return hint === null ? [] : [row(hint)]
}

/** What a signature is about stays in sight until it is given. */
function contextRows(defs: Definitions, state: State, question: Ask): Row[] {
  const lines =
    question.kind === 'pin'
      ? signedLines(defs, state, question.what)
      : isDecideAsk(question)
        ? decidingLines(defs, state, question)
        : []
  return lines.map((line) => row(line))
}

/** Of a PIN only where the choice it signs for is not on the sheet above. */
function signedLines(defs: Definitions, state: State, what: SignedInput): string[] {
  return what.do === 'dispose' || what.do === 'radio' ? disposingLines(defs, state, what) : []
}

/** Cut on a screen, which shows as many as it has room for; whoever hears them hears them whole. */
/** On a small screen the title says that a line begins with its sheet; of two lines of a hold point it is often the end that differs. */
function chosenFrom(question: Parameters<typeof choiceLines>[0], style: SheetStyle): Row[] {
  if (style.linear === true) return choiceLines(question).map((text) => row(text))
  return choiceLines(question).map((line, i) => {
    const text = isSmall(style) ? line.replace('  sheet ', '  ') : line
    const isOfGate = question.items[question.from + i]?.kind === 'evidence'
    return { ...row(isOfGate ? cutMiddle(text, textWidth(style)) : text), keep: 'words' }
  })
}

function aboutStep(defs: Definitions, step: string): Pick<PromptView, 'margin' | 'title'> {
  const number = defs.steps.find(({ id }) => id === step)?.number
  return { margin: number === undefined ? '' : String(number), title: titleOf(defs, step) }
}

function aboutPlace(defs: Definitions, place: string): Pick<PromptView, 'margin' | 'title'> {
  const step = place.split('.')[0] ?? ''
  return { margin: placeNumber(defs, step, place), title: placeName(defs, step, place) }
}

/** The figure that stands; a doubted one that is to stand in its place beside it. */
function correctionView(
  defs: Definitions,
  state: State,
  question: Extract<Ask, { kind: 'correct-why' | 'correct-value' | 'correct-kept' }>,
  voids: readonly Row[],
  back: Row,
): Partial<PromptView> {
  const reading = findReading(state, question.of)
  const asked = questionText(question)
  if (reading === null) return { ask: [row(asked, 'strong'), back] }
  const instrument = instrumentById(defs, reading.instrument)
  const unit = instrument === undefined || instrument.kind === 'gas_meter' ? reading.unit : instrument.unit
  const which = repeatName(state, reading)
  const was = `${bareReading(defs, reading)} ${reading.unit}${which === null ? '' : `, ${which}`}`
  const about = aboutPlace(defs, reading.place)
  if (question.kind === 'correct-value') {
    const anew = state.practice === null ? [] : [row(ANEW)]
    return {
      ...about,
      unit,
      ask: [row(`Stands: ${was}`), ...anew, row(`${asked} (${unit})`, 'strong'), back],
    }
  }
  const kept = question.kind === 'correct-kept' ? `. To stand in its place: ${question.typed.trim()}` : ''
  return { ...about, ask: [row(`Stands: ${was}${kept}`), ...voids, row(asked, 'strong'), back] }
}

/** What was keyed, unless the reason begins with it. */
function oddText({ typed, why }: { readonly typed: string; readonly why: string }): string {
  const keyed = typed.trim()
  const [first = keyed] = keyed.split(/\s+/)
  return why.startsWith(first) ? why : `${keyed}: ${why}`
}
