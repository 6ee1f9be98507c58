// What a lead can do from a review, each by a word, and which questions of the job a word goes on through. Everything is heard by
// the job itself: nothing here takes, signs or decides anything.

import { neverReleased } from '../job/admit-stop.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { fold } from '../job/fold.ts'
import { next, type Prompt } from '../job/next.ts'
import { openWords } from '../job/open-words.ts'
import { openThings } from '../job/register.ts'
import { openStop, type State } from '../job/state.ts'
import { openStops } from '../job/stop-causes.ts'
import { radioOpen } from './standing.ts'
import { toClose as linesToClose } from './to-close.ts'

export const DESK_WORDS = [
  ...(['release', 'close', 'cause'] as const),
  ...(['dispose', 'countersign', 'sign', 'taken', 'note', 'remark'] as const),
] as const
/** `stop` is a STOP, as everywhere. */
export type DeskWord = (typeof DESK_WORDS)[number] | 'stop'

export interface DeskAct {
  readonly word: (typeof DESK_WORDS)[number]
  /** What it does here, in one line. */
  readonly says: string
}

export interface Desk {
  readonly acts: readonly DeskAct[]
  /** What a lead cannot do from here, with the way to it, each in a line. */
  readonly elsewhere: readonly string[]
  /** What stands between the job and its close, each by name. */
  readonly toClose: readonly string[]
}

/** As the job stands once it is taken up: what was proved has fallen by then. */
export function takenUp(state: State): State {
  const entry = { type: 'job.taken-up', seq: state.seq + 1, at: state.lastAt, desk: true } satisfies Entry
  return fold(state, entry)
}

/** What is asked once the job is taken up, somebody signed on, and whoever works at the machine read its plate. */
function askedThen(defs: Definitions, state: State): Prompt {
  const [somebody] = defs.crew.crew
  return next(defs, { ...takenUp(state), doer: somebody?.id ?? null, plateAgain: false })
}

export function deskOf(defs: Definitions, state: State): Desk {
  if (state.closed !== null) return closedDesk(state)
  const resume = `barover resume ${state.job}`
  const gates =
    state.paper === null
      ? `Hold points, readings and what is seen are answered at the machine: ${resume}`
      : `What stands on the sheet is keyed in with the sheet in hand: ${resume}`
  const toClose = linesToClose(defs, takenUp(state))
  if (openStop(state) !== null) return { acts: stopActs(state), elsewhere: [gates], toClose }
  const prompt = askedThen(defs, state)
  const words = openWords(state).length
  const things = openThings(state).length
  return {
    acts: [
      ...askedActs(state, prompt),
      ...(words === 0 || prompt.kind === 'clear' || prompt.kind === 'tag'
        ? []
        : [
            {
              word: 'countersign' as const,
              says: `sign or deny ${radioOpen(words).replace(' to countersign', '')}`,
            },
          ]),
      ...(things === 0
        ? []
        : [{ word: 'taken' as const, says: `two people saw what was placed: ${things} not accounted for` }]),
      { word: 'note', says: 'words into the log of this job' },
    ],
    elsewhere: [...laterLine(prompt), gates],
    toClose,
  }
}

/** Why a word of a lead does nothing as the job stands, and what does; null for a word that is open, or is none of theirs. */
export function whyNotNow(defs: Definitions, state: State, keyed: string): string[] | null {
  const word = DESK_WORDS.find((one) => one === keyed)
  const { acts, toClose } = deskOf(defs, state)
  if (word === undefined || acts.some((one) => one.word === word)) return null
  if (state.closed !== null) return ['This job is closed: beside remark it takes no word of a lead.']
  if (openStop(state) !== null)
    return word === 'remark'
      ? ['A remark is for a closed job.']
      : [`Under a STOP ${word} waits until it is released.`, ...toClose]
  switch (word) {
    case 'close':
      return [
        'A job that is not under STOP closes by itself, and by no word, once nothing stands in the way.',
        ...(toClose.length === 0 ? ['Nothing does: it closes when somebody takes it up.'] : ['In the way:']),
        ...toClose,
      ]
    case 'release':
    case 'cause':
      return ['No STOP is open in this job.']
    case 'remark':
      return ['A remark is for a closed job; here the word is note.']
    case 'taken':
      return ['Nothing that was placed is open.']
    case 'countersign':
      return openWords(state).length === 0
        ? ['Nothing that was said by radio is open.']
        : [`Not yet: ${firstAsked(defs, state)}`, ...toClose]
    default:
      return [`Nothing of that is asked of a lead now: ${firstAsked(defs, state)}`, ...toClose]
  }
}

/** What the job asks first, as a clause and a stop. */
function firstAsked(defs: Definitions, state: State): string {
  const prompt = askedThen(defs, state)
  if (prompt.kind === 'clear')
    return `people may be behind ${prompt.gate.number} ${prompt.gate.step.title}, and that they are out comes first.`
  if (prompt.kind === 'tag') return 'nobody has keyed the plate on the cylinder.'
  const placed = 'before' in prompt ? prompt.before : 'step' in prompt ? prompt.step : null
  return placed === null ? 'see below.' : `asked next is ${placed.number} ${placed.step.title}.`
}

function closedDesk({ job, closed, adopted }: State): Desk {
  const mayAdopt = closed !== 'STOP' && (adopted === null || adopted.void)
  return {
    acts: [{ word: 'remark', says: 'words of a lead on this closed job' }],
    elsewhere: [
      ...(mayAdopt ? [`What was left as the next baseline: barover adopt ${job}`] : []),
      `An instrument found out of calibration since: barover doubt ${job}`,
      'A closed job takes no reading, no decision and no STOP any more.',
    ],
    toClose: [],
  }
}

function stopActs(state: State): DeskAct[] {
  const [stop] = openStops(state)
  const what = stop?.why ?? null
  const never = neverReleased(state)
  const about = what === null ? 'its cause is asked first' : what
  return [
    ...(never === null
      ? [{ word: 'release' as const, says: `a lead who did not call it lets the job go on: ${about}` }]
      : []),
    { word: 'close', says: `the job ends in its STOP${never === null ? '' : `: ${about}`}` },
    { word: 'cause', says: 'the cause of the STOP, told or put right' },
  ]
}

function askedActs(state: State, prompt: Prompt): DeskAct[] {
  switch (prompt.kind) {
    case 'decide': {
      const { step, scope } = asKind(prompt.step, 'decide')
      const verdict = state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
      const says = `${prompt.step.number} ${step.title}, ${verdict}, by a lead who did not measure`
      return [{ word: 'dispose', says }]
    }
    case 'findings': {
      const { length } = prompt.open
      return [{ word: 'dispose', says: `decide on ${length === 1 ? 'a finding' : `${length} findings`}` }]
    }
    case 'review':
      return [{ word: 'sign', says: `the records of ${prompt.step.number} ${prompt.step.step.title}` }]
    case 'open-things':
      return [{ word: 'dispose', says: 'hand on what was placed and stays: the words are hand on' }]
    case 'sheet-sign':
      return [
        {
          word: 'sign',
          says:
            prompt.as === 'keyed'
              ? 'whoever keyed the sheet, that it stands so'
              : 'the sheet compared with the paper',
        },
      ]
    default:
      return []
  }
}

/** Where a decision waits for work to be done first. */
function laterLine(prompt: Prompt): string[] {
  if (ON_THROUGH.dispose.includes(prompt.kind)) return []
  const placed = 'before' in prompt ? prompt.before : 'step' in prompt ? prompt.step : null
  if (placed === null) return []
  return [`Asked next is ${placed.number} ${placed.step.title}; a lead decides where the job asks for it.`]
}

const STOPPED: readonly Prompt['kind'][] = ['stop-cause', 'stopped']
const SIGNED: readonly Prompt['kind'][] = [...STOPPED, 'sign-on']
const DECIDED: readonly Prompt['kind'][] = [
  ...SIGNED,
  ...(['decide', 'findings', 'countersign', 'review', 'open-things', 'sheet-sign'] as const),
]

/** Questions of the job that stand while a lead is at it by this word; at any other the job is left again. */
const ON_THROUGH: Readonly<Record<Exclude<DeskWord, 'remark'>, readonly Prompt['kind'][]>> = {
  stop: STOPPED,
  release: STOPPED,
  close: STOPPED,
  cause: STOPPED,
  dispose: DECIDED,
  countersign: DECIDED,
  sign: DECIDED,
  taken: SIGNED,
  note: SIGNED,
}

export function goesOn(word: Exclude<DeskWord, 'remark'>, prompt: Prompt): boolean {
  return ON_THROUGH[word].includes(prompt.kind)
}

/** What is keyed for them at this question, once; null: nothing, or not yet. */
export function keyedFirst(word: Exclude<DeskWord, 'remark'>, prompt: Prompt): string | null {
  switch (word) {
    case 'release':
    case 'close':
    case 'cause':
      return prompt.kind === 'stopped' ? word : null
    case 'countersign':
      return SIGNED.includes(prompt.kind) || prompt.kind === 'countersign' ? null : word
    case 'taken':
    case 'note':
      return SIGNED.includes(prompt.kind) ? null : word
    default:
      return null
  }
}
