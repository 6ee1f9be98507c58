// The short answers after a STOP: which of the list, why, and who called it; and a lead who closes the job under it.
import { neverReleased } from '../job/admit-stop.ts'
import { type Definitions, personById } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { isReleasable, openStops, STOP_CAUSES, type StopCause } from '../job/stop-causes.ts'
import { causeByNumber, stricterTold } from './cause-told.ts'
import { dangerNotes } from './danger-notes.ts'
import { ask, barredHere, type Heard, input, say, signing } from './heard.ts'
import { backDoes } from './one-back.ts'

export type StopAsk =
  | { readonly kind: 'stop-which'; readonly seqs: readonly number[] }
  | { readonly kind: 'stop-cause'; readonly of: number }
  | { readonly kind: 'stop-why'; readonly of: number; readonly cause: StopCause }
  | {
      /** `-too`: somebody was named, or given as not known, before. */
      /** `-nobody`: nobody was signed on who could have raised it. */
      readonly kind: 'stop-caller' | 'stop-caller-nobody' | 'stop-caller-too'
      readonly of: number
      readonly cause: StopCause
      readonly why: string
    }
  | { readonly kind: 'close-who' }
  | { readonly kind: 'close-first'; readonly person: string }

export const STOP_QUESTIONS: Readonly<Record<StopAsk['kind'], string>> = {
  'stop-which': 'Which STOP? Its number',
  'stop-cause': 'The right cause: its number in the list',
  'stop-why': 'What happened, in a few words',
  'stop-caller':
    'Initials of who called it; ? or Enter: not known. Then no lead who was on the job may release it',
  'stop-caller-nobody':
    'Nobody was signed on. Initials of who called it, who signs with a PIN; ? or Enter: not known. Then no lead may release it',
  'stop-caller-too': 'Initials of anybody else who called it; Enter: nobody else',
  'close-who': 'Initials of the lead who closes the job under STOP',
  'close-first': 'What has to be done before a new job is opened?',
}

const KINDS = Object.keys(STOP_QUESTIONS)

export function isStopAsk(question: { readonly kind: string }): question is StopAsk {
  return KINDS.includes(question.kind)
}

/** At the prompts of a STOP itself. */
export function hearAtStop(
  state: State,
  prompt: Extract<Prompt, { kind: 'stop-cause' | 'stopped' }>,
  text: string,
): Heard {
  const word = text.toLowerCase()
  if (prompt.kind === 'stop-cause') return hearCause(state, prompt.stop.seq, word)
  const way = wayAt(state, word)
  if (way === 'release') {
    const never = neverReleased(state)
    return never === null
      ? ask({ kind: 'release-who' }, ...toldBefore(state), ...stricterThanPicked(state))
      : say(never)
  }
  if (way === 'close') return ask({ kind: 'close-who' })
  if (way !== 'cause') return say(`The job is under STOP: key ${waysWanted(state)}.`)
  const open = openStops(state)
  const [only] = open
  if (only !== undefined && open.length === 1) return askCause(only.seq)
  return ask(
    { kind: 'stop-which', seqs: open.map((s) => s.seq) },
    ...open.map((s, i) => `${i + 1} ${s.why ?? ''}`),
  )
}

/** What can be done under a STOP that is explained, in the order it is numbered. */
const WAYS = ['release', 'close', 'cause'] as const

/** By its number or its word; one that is never released can only be closed. */
function wayAt(state: State, word: string): (typeof WAYS)[number] | undefined {
  const numbered = neverReleased(state) === null ? WAYS : (['close'] as const)
  return WAYS.find((way) => way === word) ?? (/^\d$/.test(word) ? numbered[Number(word) - 1] : undefined)
}

/** `1, 2 or 3`, as the ways are numbered on the sheet. */
export function waysWanted(state: State): string {
  return neverReleased(state) === null ? '1, 2 or 3: release, close or cause' : '1: close'
}

function askCause(of: number): Heard {
  return ask({ kind: 'stop-cause', of }, ...STOP_CAUSES.map(({ says }, i) => `${i + 1} ${says}`))
}

function hearCause(state: State, of: number, word: string): Heard {
  const before = openStops(state).filter((s) => s.seq < of && s.cause !== null)
  const last = before[before.length - 1]
  if (word === 'same' && last?.cause != null)
    return ask({ kind: callerKind(state, of), of, cause: last.cause, why: last.why ?? '' })
  const cause = causeAt(word)
  return cause === null
    ? say(`Key the number of the cause, 1 to ${STOP_CAUSES.length}; why is asked next.`)
    : ask({ kind: 'stop-why', of, cause }, ...againstCause(state, cause))
}

/** Newest first; more would push the question off a small screen. */
const TOLD = 2

/** Whoever explains or releases a STOP need not have been there: what was told of danger stands beside it. */
function toldBefore(state: State): string[] {
  return dangerNotes(state).slice(0, TOLD)
}

/** Of a cause that can be released: what is told may have been worse. */
function againstCause(state: State, cause: StopCause): string[] {
  const told = isReleasable(cause) ? toldBefore(state) : []
  return told.length === 0 ? [] : [...told, `${WORST}: back picks another.`]
}

/** Said at once, while the list is near. */
function stricterThanWords(cause: StopCause, words: string): string[] {
  const told = stricterTold(cause, words)
  return told === null
    ? []
    : [`These words tell of ${causeByNumber(told)}. ${WORST}: back, twice, picks another.`]
}

const WORST = 'The cause is the worst of what it was'

/** Of a STOP that a lead is about to lift: its own words, where they tell of what nobody may. */
function stricterThanPicked(state: State): string[] {
  return openStops(state).flatMap(({ cause, why }) => {
    const told = cause === null || why === null ? null : stricterTold(cause, why)
    return told === null
      ? []
      : [`Its words tell of ${causeByNumber(told)}. ${WORST}: back, then 3, says it again.`]
  })
}

function causeAt(word: string): StopCause | null {
  return /^\d{1,2}$/.test(word) ? (STOP_CAUSES[Number(word) - 1]?.id ?? null) : null
}

export function hearStopAnswer(defs: Definitions, state: State, question: StopAsk, line: string): Heard {
  const text = line.trim()
  if (text === '' && !question.kind.startsWith('stop-caller'))
    return ask(question, `Nothing was keyed; ${backDoes(question)}.`)
  switch (question.kind) {
    case 'stop-which': {
      const of = /^\d{1,3}$/.test(text) ? question.seqs[Number(text) - 1] : undefined
      return of === undefined
        ? ask(question, `Key a number, 1 to ${question.seqs.length}, or back.`)
        : askCause(of)
    }
    case 'stop-cause': {
      const cause = causeAt(text)
      return cause === null
        ? ask(question, `Key the number of the cause, 1 to ${STOP_CAUSES.length}, or back.`)
        : ask({ kind: 'stop-why', of: question.of, cause }, ...againstCause(state, cause))
    }
    case 'stop-why':
      return /\p{L}/u.test(text)
        ? ask(
            { kind: callerKind(state, question.of), of: question.of, cause: question.cause, why: line },
            ...stricterThanWords(question.cause, text),
          )
        : ask(question, 'The cause of a STOP needs words: type a short sentence.')
    case 'stop-caller':
    case 'stop-caller-nobody':
    case 'stop-caller-too':
      return hearCaller(defs, state, question, text)
    case 'close-who':
      return (
        barredHere(defs, state, { do: 'close-stopped', person: line, first: '' }, question) ??
        ask({ kind: 'close-first', person: line })
      )
    case 'close-first': {
      const { person } = question
      return signing(defs, state, person, { do: 'close-stopped', person, first: line }, question)
    }
  }
}

type CallerAsk = Extract<StopAsk, { kind: 'stop-caller' | 'stop-caller-nobody' | 'stop-caller-too' }>

function callerKind(state: State, of: number): CallerAsk['kind'] {
  const stop = openStops(state).find((s) => s.seq === of)
  if (stop !== undefined && stop.cause !== null) return 'stop-caller-too'
  return stop?.by === null ? 'stop-caller-nobody' : 'stop-caller'
}

function hearCaller(defs: Definitions, state: State, question: CallerAsk, text: string): Heard {
  const { of, cause, why } = question
  if (text === '' || text === '?') return input({ do: 'explain-stop', of, cause, why, calledBy: null })
  const person = personById(defs, text.toUpperCase())
  if (person === undefined)
    return ask(
      question,
      `Key initials, one of ${defs.crew.crew.map((p) => p.id).join(', ')}, or ? if it is not known.`,
    )
  const named = { do: 'explain-stop', of, cause, why, calledBy: person.id } as const
  const isNobodys = openStops(state).some((s) => s.seq === of && s.by === null)
  return isNobodys ? signing(defs, state, person.id, named, question) : input(named)
}
