// What is asked now, as parts a shell can lay out: what must always show, what may give way on a small screen.

import { barsTrainee } from '../job/admit-crew.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import { beyondItsScale } from '../job/plausible.ts'
import { pointOf } from '../job/point.ts'
import { thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'
import { type Secrecy, secrecyOf, standingAsk } from '../talk/ask.ts'
import { whyNoChange } from '../talk/correct.ts'
import { shortOf } from '../talk/decision-words.ts'
import type { Talk } from '../talk/heard.ts'
import { maySignPoint, peopleText } from '../talk/may-sign.ts'
import { findingText, placeName, placeNumber, readingText } from '../talk/names.ts'
import { offerLines, offersAt } from '../talk/offered.ts'
import { noticeText, POINT_NAMES } from '../talk/points.ts'
import { wordLine } from '../talk/radio-words.ts'
import { besidesRows } from './besides-rows.ts'
import { isSmall, type Row, row, type SheetStyle } from './block.ts'
import { permitRows, waitingRows } from './decision-rows.ts'
import { deskHead } from './desk-head.ts'
import { elsewherePrompt } from './elsewhere-block.ts'
import { titleOf } from './entry-words.ts'
import { errorRows } from './error-rows.ts'
import { evidenceView } from './evidence-view.ts'
import { decidedOnSheet, sheetView, wouldHaveHeld } from './from-paper-view.ts'
import { keptRows } from './kept-rows.ts'
import { airRows } from './little-oxygen.ts'
import { mayDecideRows } from './may-decide-rows.ts'
import { neededRows } from './needed-rows.ts'
import { numbered, observeRows } from './numbered.ts'
import { pickView } from './pick-view.ts'
import { pictureOf } from './picture-of.ts'
import { practiceView } from './practice-block.ts'
import { questionView } from './question-view.ts'
import { readView } from './read-view.ts'
import { lastSheetRows } from './stays-on.ts'
import { stopView } from './stop-block.ts'
import { takenUpAsk } from './taken-up-ask.ts'
import { becauseRows } from './verdict-block.ts'

export interface PromptView {
  /** Step number for the margin. */
  readonly margin: string
  readonly title: string
  /** The title only names the step; where it is the question or the place to measure it is never shortened. */
  readonly titleMayShorten: boolean
  /** Hazard and what to do in trouble: never dropped. */
  readonly must: readonly Row[]
  readonly rows: readonly Row[]
  /** The rows stood there at an earlier reading of the same step, or only repeat what stands elsewhere. */
  readonly wordsKnown: boolean
  /** The drawing of the place, the fullest form first; the lower ones are for small screens, which may drop it. */
  readonly drawings: readonly (readonly Row[])[]
  /** For where none of them has room: the place in three lines and fewer. */
  readonly strips: readonly (readonly Row[])[]
  /** What was measured so far, plotted along the bore: its forms in the same order, dropped before the drawing is. */
  readonly profiles: readonly (readonly Row[])[]
  /** What the marks of the drawing mean, where there is room for it beside the drawing. */
  readonly legend: readonly Row[]
  /** What the letters of the drawing mean: where the words of the step are not known yet it comes with the drawing, else where there is room. */
  readonly key: readonly Row[]
  /** What is chosen from, a line each: as many of them as there is room for, from the first, and never none. */
  readonly choices: readonly Row[]
  /** How to come to those that are not listed: never dropped where less than all of them are. */
  readonly more: readonly Row[]
  /** The choices are a part of all, however many of them stand there. */
  readonly listsPart: boolean
  /** Numbered answers or the question itself: never dropped, but for what is faint. */
  readonly ask: readonly Row[]
  /** Enter alone answers it, by the last row of what is asked; where Enter turns over it does not (live.ts). */
  readonly byEnter: boolean
  /** Unit or word beside the line being keyed. */
  readonly unit: string
  /** A gauge that types for itself may end the line with its own carriage return. */
  readonly scan: boolean
  /** A question within the work, that only an answer, back, safe and stop get out of. */
  readonly inQuestion: boolean
  /** A practice session: words that ask its machine are named in the foot. */
  readonly isPractice: boolean
  /** An instrument is read here: of those words it is measure that asks it. */
  readonly isMeasured: boolean
  /** Anything said before may be changed now: the words for it are named in the foot. */
  readonly mayChange: boolean
  /** A path is keyed: Tab completes it. */
  readonly path: boolean
  /** Whether what is keyed may be shown: not where it is a PIN. */
  readonly secrecy: Secrecy
}

const EMPTY: PromptView = {
  margin: '',
  title: '',
  titleMayShorten: false,
  must: [],
  rows: [],
  wordsKnown: false,
  drawings: [],
  strips: [],
  profiles: [],
  legend: [],
  key: [],
  choices: [],
  more: [],
  listsPart: false,
  ask: [],
  byEnter: false,
  unit: '',
  scan: false,
  inQuestion: false,
  isPractice: false,
  isMeasured: false,
  mayChange: true,
  path: false,
  secrecy: 'open',
}

const isMeasuredAt = (prompt: Prompt): boolean =>
  prompt.kind === 'read' ||
  (prompt.kind === 'evidence' && ['gas', 'measured'].includes(prompt.item.evidence.kind))

export function promptView(defs: Definitions, state: State, talk: Talk, style: SheetStyle): PromptView {
  const prompt = next(defs, state)
  const view = {
    ...EMPTY,
    isPractice: state.practice !== null,
    isMeasured: isMeasuredAt(prompt),
    mayChange: whyNoChange(state) === null,
    ...viewOf(defs, state, prompt, style),
  }
  // A question gives way when its gate falls: coming out is asked before anything else.
  const question = standingAsk(prompt, talk.ask)
  const secrecy = secrecyOf(prompt, talk.ask)
  const others = elsewherePrompt(state, prompt)
  if (question === null) {
    const must = [...view.must, ...mustRows(defs, state, prompt), ...others.must]
    return {
      ...view,
      must,
      rows: [...view.rows, ...neededRows(defs, state, prompt), ...others.rows],
      secrecy,
    }
  }
  const out = prompt.kind === 'clear' ? [row('COME OUT AND STAND CLEAR.', 'caution')] : []
  return {
    ...view,
    must: [...out, ...mustRows(defs, state, prompt), ...others.must],
    rows: [],
    drawings: [],
    strips: [],
    profiles: [],
    legend: [],
    key: [],
    byEnter: false,
    // Here it only says where the job stands.
    titleMayShorten: true,
    unit: '',
    ...deskHead(defs, state, prompt, question),
    ...questionView(defs, state, question, style),
    scan: false,
    inQuestion: true,
    path: question.kind === 'attach-path',
    secrecy,
  }
}

/** Said at the first thing that is keyed: who does not know the word yet would fail by it. */
const LOOK_FIRST =
  'Here the word look reads it, as it reads everything else. What is keyed without a look fails the session.'

/** The choice under it says the same. */
const HOW_TO_TAKE = / If that is what you read: .*$/

function mustRows(defs: Definitions, state: State, prompt: Prompt): Row[] {
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : null
  if (placed === null) return []
  const { hazard, trouble } = placed.step
  return [
    // What must not be done stands before a hazard that speaks of doing it: face at the opening.
    ...airRows(defs, state, placed),
    ...(hazard === undefined ? [] : [row(`Hazard: ${hazard}`, 'caution')]),
    ...(trouble === undefined ? [] : [row(`In trouble: ${trouble}`, 'caution')]),
  ]
}

function viewOf(defs: Definitions, state: State, prompt: Prompt, style: SheetStyle): Partial<PromptView> {
  switch (prompt.kind) {
    case 'closed':
      return { title: 'This job is closed.' }
    case 'open-things':
      return {
        title: 'All done, but things that were placed are not accounted for',
        rows: prompt.things.map((thing) => row(thingText(thing), 'caution')),
        ask: [
          row('taken  one was looked at by two people, and is out or where it belongs', 'strong'),
          row('hand on  a lead signs for what stays open'),
        ],
      }
    case 'finish':
    case 'judge':
      // A job asks nothing there: it judges and closes by itself.
      return practiceView(defs, state, prompt) ?? {}
    case 'stop-cause':
    case 'stopped':
      return stopView(defs, state, prompt)
    case 'findings':
      return {
        title:
          prompt.gate === undefined
            ? 'All done, but no lead has decided on what was found'
            : `${prompt.gate.step.title}: not before a lead has decided on what was found`,
        ask: [
          ...prompt.open.map((one, i) =>
            row(
              `${i + 1}  ${findingText(defs, state, one)}${one.decided?.choice === 'hold' ? `, on hold by ${one.decided.person}` : ''}`,
              'caution',
            ),
          ),
          row('The number of a finding, then what a lead decides about it', 'strong'),
          row(
            prompt.gate === undefined
              ? 'The job closes once each is decided; leave keeps it as it is.'
              : 'The hold point goes on once each is decided and none is on hold.',
            'faint',
          ),
        ],
      }
    case 'countersign':
      return {
        title: 'Said by radio and not signed for yet',
        ask: [
          ...prompt.open.map((word) => row(wordLine(defs, state, word), 'caution')),
          row(
            `${prompt.gate === undefined ? 'The job closes' : 'The hold point goes on'} once the lead who said it signs for it: initials of that lead`,
            'strong',
          ),
        ],
      }
    case 'sign-on':
      return {
        title: 'Who is at the keyboard?',
        rows: defs.crew.crew.map((p) =>
          row(
            `${p.id.padEnd(5)}${p.name}, ${p.role}${barsTrainee(state, p) === null ? '' : ', PRACTICE only'}`,
          ),
        ),
        ask: [row('Your initials')],
      }
    case 'tag':
      return {
        title: state.plateAgain ? 'Which machine do you stand at now?' : 'Which machine is this?',
        ask: [
          ...(state.plateAgain ? takenUpAsk(defs, state) : []),
          row('Read the tag plate ON THE CYLINDER and key it. Do not copy it from the work order.'),
          ...(state.practice === null ? [] : [row(LOOK_FIRST, 'strong')]),
        ],
      }
    case 'held':
      return {
        margin: String(prompt.step.number || ''),
        title: titleOf(defs, prompt.step.id),
        ask: [
          ...(prompt.elsewhere === true ? [row('( HOLD )', 'stamp')] : []),
          row(`HOLD: ${prompt.why}.`, 'caution'),
          prompt.elsewhere === true
            ? row('The other job is looked at again every few seconds. leave keeps this one as it is.')
            : row('back goes to the last answer; leave keeps the job as it is.'),
        ],
      }
    case 'pick':
      return pickView(defs, state, prompt)
    case 'clear':
    case 'evidence':
      return evidenceView(defs, state, prompt)
    case 'doubt':
      return {
        margin: placeNumber(defs, prompt.doubt.step, prompt.doubt.place),
        title: placeName(defs, prompt.doubt.step, prompt.doubt.place),
        ask: [
          row(`${prompt.doubt.typed.trim()} is ${prompt.doubt.why}.`, 'caution'),
          // It stands on the sheet right above, with the doubt; here where something came between, or where a small screen has
          // no room above. why says it again.
          ...(prompt.doubt.shown === undefined || (prompt.doubt.seq === state.seq && !isSmall(style))
            ? []
            : [row(isSmall(style) ? prompt.doubt.shown.replace(HOW_TO_TAKE, '') : prompt.doubt.shown)]),
          row('1  measure again'),
          row('2  mistyped: key it again in full'),
          row('3  keep it and say why'),
          ...(beyondItsScale(defs, prompt.doubt) === prompt.doubt.why
            ? [row('The word instrument takes another, which reads that far.')]
            : []),
        ],
      }
    case 'late':
      return {
        margin: placeNumber(defs, prompt.late.step, prompt.late.place),
        title: placeName(defs, prompt.late.step, prompt.late.place),
        ask: [
          row(
            `${readingText(defs, prompt.late)} was keyed after the hold point fell. Was it read before, and is it sure?`,
            'caution',
          ),
          row('1  yes, it counts'),
          row('2  no, measure again'),
        ],
      }
    case 'sheet':
    case 'sheet-doubt':
    case 'sheet-sign':
      return sheetView(defs, state, prompt)
    default:
      return stepView(defs, state, prompt, style)
  }
}

function stepView(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'tell' | 'confirm' | 'observe' | 'decide' | 'read' | 'point' | 'review' }>,
  style: SheetStyle,
): Partial<PromptView> {
  const { step } = prompt.step
  const base = {
    margin: String(prompt.step.number),
    title: step.title,
    titleMayShorten: true,
    rows: step.text === undefined ? [] : [row(step.text)],
  }
  switch (prompt.kind) {
    case 'tell':
      return {
        ...base,
        ...pictureOf(defs, state, prompt.step, style),
        ask: [...lastSheetRows(defs, state), row('Enter when it is done')],
        byEnter: true,
      }
    case 'confirm':
      return {
        ...base,
        ask: numbered([asKind(prompt.step, 'confirm').step.seen, 'Not so: say what you see']),
      }
    case 'observe':
      return {
        ...base,
        ...pictureOf(defs, state, prompt.step, style),
        ask: observeRows(asKind(prompt.step, 'observe').step),
      }
    case 'decide': {
      const { step: decide, scope } = asKind(prompt.step, 'decide')
      const record = state.verdicts[scope + decide.about]?.verdict
      const verdict = record?.result.verdict ?? 'HOLD'
      const because =
        record === undefined
          ? []
          : [
              ...becauseRows(defs, record),
              ...besidesRows(defs, state, scope + decide.about),
              ...errorRows(defs, state, scope + decide.about, record),
              ...keptRows(defs, state, record),
            ]
      return {
        ...base,
        ask: [
          row(`( ${verdict} )`, 'stamp'),
          ...because,
          ...permitRows(defs, state, scope + decide.about, state.lastAt),
          ...waitingRows(state, prompt.step.id),
          ...wouldHaveHeld(defs, state),
          ...decidedOnSheet(state, prompt.step.id),
          ...offerLines(offersAt(state, prompt.step), shortOf(!isSmall(style))).map((line) => row(line)),
          ...mayDecideRows(defs, state, prompt.step),
          ...(verdict === 'HOLD' || verdict === 'REWORK' || verdict === 'REPLACE'
            ? [row('To measure again first: correct, or back.', 'faint')]
            : []),
        ],
      }
    }
    case 'point':
    case 'review':
      return { ...base, ask: pointRows(defs, state, prompt.step) }
    case 'read':
      return readView(defs, state, prompt, style)
  }
}

function pointRows(defs: Definitions, state: State, placed: PlacedStep): Row[] {
  const point = pointOf(placed)
  if (point === null) return []
  const who = `Initials of a ${point.roles.join(' or ')} who did none of this`
  const what = {
    hold: 'Work stops here until somebody else has looked and signed.',
    witness: 'Somebody else looks and signs, or notice was given and has run out.',
    review: 'Everything else is done: the records of this step are read and signed before the job closes.',
  }[point.kind]
  const notice = point.kind === 'witness' ? [row(noticeText(state, placed))] : []
  const people = maySignPoint(defs, state, placed)
  const fits = people.length === 0 ? [] : [row(`May sign: ${peopleText(people)}`)]
  return [row(POINT_NAMES[point.kind], 'strong'), row(what), ...notice, ...fits, row(who, 'strong')]
}
