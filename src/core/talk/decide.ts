// The questions of a lead's disposition and of a deviation permit.
import { wouldRefuse } from '../job/admit.ts'
import { deviable } from '../job/admit-deviation.ts'
import { authorityHere, type FINDING_CHOICES, findingOffers, type Offer } from '../job/admit-disposition.ts'
import { CHANGES_IT } from '../job/as-left.ts'
import { authorityFrom } from '../job/authority.ts'
import { hoursRead } from '../job/changes.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Nonconformance } from '../job/nonconformance.ts'
import type { State } from '../job/state.ts'
import { validityFrom } from '../job/validity.ts'
import { numberIn } from './correct.ts'
import { foundLines, isOnWatch } from './deciding-lines.ts'
import { ask, barredHere, type Heard, refused, say, signing } from './heard.ts'
import { offerLines, pickedOffer } from './offered.ts'
import { radioWord } from './radio-words.ts'
import { counterUnread, isReason, takenAs, whyNoReadAgain, withDays, withReadAgain } from './read-again.ts'

export interface Disposing {
  readonly step: string
  readonly choice: string
  readonly person: string
  readonly why: string
  /** Of a finding, what it was chosen from. */
  readonly among?: readonly Offer<(typeof FINDING_CHOICES)[number]>[]
}

interface Permitting {
  readonly step: string
  readonly what: string
  readonly why: string
  readonly authority: string
  readonly until: string
}

export type DecideAsk =
  /** What is done about a finding; `step` is where it was found. */
  | ({
      readonly kind: 'finding-choice'
      readonly offers: readonly Offer<(typeof FINDING_CHOICES)[number]>[]
    } & Pick<Disposing, 'step'>)
  | ({ readonly kind: 'dispose-who' } & Pick<Disposing, 'step' | 'choice' | 'among'>)
  /** `why`: the reason, where it did not say by when the part is read again and that is asked further. */
  | ({ readonly kind: 'dispose-why'; readonly why?: string } & Pick<
      Disposing,
      'step' | 'choice' | 'person' | 'among'
    >)
  | ({ readonly kind: 'concession-authority' } & Disposing)
  | ({ readonly kind: 'concession-until'; readonly authority: string } & Disposing)
  | ({ readonly kind: 'concession-from'; readonly authority: string; readonly until: string } & Disposing)
  /** The end that was keyed is further off than a year. */
  | ({
      readonly kind: 'concession-far'
      readonly authority: string
      readonly until: string
      readonly from?: string
    } & Disposing)
  | { readonly kind: 'deviation-which'; readonly steps: readonly string[] }
  | ({ readonly kind: 'deviation-what' } & Pick<Permitting, 'step'>)
  | ({ readonly kind: 'deviation-why' } & Pick<Permitting, 'step' | 'what'>)
  | ({ readonly kind: 'deviation-authority' } & Pick<Permitting, 'step' | 'what' | 'why'>)
  | ({ readonly kind: 'deviation-until' } & Omit<Permitting, 'until'>)
  | ({ readonly kind: 'deviation-who' } & Permitting)

const WHOSE =
  'Somebody else than who keys, decides or did the work: initials or a name. Or a paper with its number'

export const DECIDE_QUESTIONS: Readonly<Record<DecideAsk['kind'], string>> = {
  'finding-choice': 'What is done about it? Its number or its word',
  'dispose-who': 'Initials of the lead who decides; radio, if a lead only says it by radio',
  'dispose-why': 'The reason',
  'concession-authority': `On whose authority? ${WHOSE}`,
  'concession-until':
    'Until when? A day, as YYYY-MM-DD or in words with day, month and year; or running hours such as 4000 h',
  'concession-from': 'Hours on the counter of the machine now',
  'concession-far':
    'That is further off than a year. 1: key another end. To keep it, say why it stands so long',
  'deviation-which': 'For which step? Its number',
  'deviation-what': 'What may differ?',
  'deviation-why': 'Why?',
  'deviation-authority': `On whose authority? ${WHOSE}`,
  'deviation-until':
    'Until when? A day, as YYYY-MM-DD or in words with day, month and year; or running hours from now such as 4000 h',
  'deviation-who': 'Initials of the lead who permits it',
}

export function isDecideAsk(question: { readonly kind: string }): question is DecideAsk {
  return Object.hasOwn(DECIDE_QUESTIONS, question.kind)
}

/** Nothing comes after the end of a job that could measure it again, so that each word says what it means of the part. */
const FINDING_WORDS: Readonly<Record<(typeof FINDING_CHOICES)[number], string>> = {
  accept: 'fit as it is',
  rework: 'put right in this job, as it was made',
  repair: 'made fit in this job, not as it was made',
  replace: 'a new part went in, in this job',
  concession: 'runs on as it is: by whom, until when',
  hold: 'not fit: nothing goes on, or the job ends with HOLD',
}

/** The finding picked by its number, at the end of a job or where a gate asks for it, and what a lead may say of it. */
export function decideFinding(
  defs: Definitions,
  state: State,
  open: readonly Nonconformance[],
  number: number,
): Heard {
  const one = open[number - 1]
  if (one === undefined)
    return say(open.length === 1 ? 'Key 1.' : `Key the number of a finding, 1 to ${open.length}.`)
  const offers = findingOffers(stepById(defs, one.step).step.kind === 'judge' ? one.word : null)
  return ask(
    { kind: 'finding-choice', step: one.step, offers },
    ...foundLines(
      defs,
      state,
      open.filter(({ step }) => step === one.step),
    ),
    ...offerLines(offers, (choice) => FINDING_WORDS[choice]),
  )
}

/** That a finding was put right stands on record by one person's word. */
function unseenLines(defs: Definitions, step: string, choice: string): string[] {
  return CHANGES_IT.includes(choice) && stepById(defs, step).step.kind === 'observe'
    ? [
        'Only if it was done: nothing on record shows it as it is now, so it stands by the word of whoever decides. The reason says what was done, and who looked.',
      ]
    : []
}

export function deviation(defs: Definitions, state: State): Heard {
  if (state.doer === null) return say('Sign on first.')
  const steps = deviable(defs, state)
  if (steps.length === 0)
    return say('There is nothing left that a deviation could be permitted for beforehand.')
  return ask(
    { kind: 'deviation-which', steps: steps.map((s) => s.id) },
    'A deviation permit changes no limit, no verdict and no hold point. For:',
    ...steps.map((s, i) => `${String(i + 1).padStart(2)}  ${s.number} ${s.step.title}`),
  )
}

export function hearDecision(defs: Definitions, state: State, question: DecideAsk, line: string): Heard {
  switch (question.kind) {
    case 'finding-choice': {
      const picked = pickedOffer(question.offers, line)
      return 'no' in picked
        ? ask(question, picked.no)
        : ask(
            { kind: 'dispose-who', step: question.step, among: question.offers, ...picked },
            ...unseenLines(defs, question.step, picked.choice),
          )
    }
    case 'dispose-who':
      if (/^(by )?radio$/i.test(line.trim())) return radioWord(defs, state, question, question)
      return (
        barredHere(defs, state, { do: 'dispose', ...asking(question), person: line, why: '' }, question) ??
        ask({ ...question, kind: 'dispose-why', person: line })
      )
    case 'dispose-why':
      return disposeWhy(defs, state, question, line)
    case 'concession-authority': {
      const authority = authorityHere(defs, state, { ...question, authority: line })
      return authority.ok
        ? ask({ ...question, kind: 'concession-until', authority: line })
        : refused(authority.error, question)
    }
    case 'concession-until': {
      const until = validityFrom(line, state.lastAt)
      if (!until.ok) return refused(until.error, question)
      if ('hours' in until.value && hoursRead(defs, state) === null)
        return ask({ ...question, kind: 'concession-from', until: line })
      const heard = dispose(defs, state, question, question, { authority: question.authority, until: line })
      return { ...heard, say: [...heard.say, ...takenAs(line)] }
    }
    case 'concession-from': {
      const { authority, until } = question
      return dispose(defs, state, question, question, { authority, until, from: line })
    }
    case 'concession-far': {
      const { authority, until, from, ...rest } = question
      if (/^1\.?$/.test(line.trim())) return ask({ ...rest, kind: 'concession-until', authority })
      return isReason(line)
        ? dispose(defs, state, question, question, {
            authority,
            until,
            ...(from === undefined ? {} : { from }),
            far: line,
          })
        : ask(question, 'It needs words: why does it stand so long? Or 1, for another end.')
    }
    case 'deviation-which': {
      const step = question.steps[numberIn(line) - 1]
      return step === undefined
        ? ask(question, `Key a number, 1 to ${question.steps.length}, or back.`)
        : ask({ kind: 'deviation-what', step }, `For ${stepById(defs, step).step.title}.`)
    }
    case 'deviation-what':
      return ask({ ...question, kind: 'deviation-why', what: line })
    case 'deviation-why':
      return ask({ ...question, kind: 'deviation-authority', why: line })
    case 'deviation-authority': {
      const authority = authorityFrom(defs, line, new Set([state.doer]), 'a deviation')
      return authority.ok
        ? ask({ ...question, kind: 'deviation-until', authority: line })
        : refused(authority.error, question)
    }
    case 'deviation-until':
      return ask({ ...question, kind: 'deviation-who', until: line }, ...takenAs(line))
    case 'deviation-who': {
      const { step, what, why, authority, until } = question
      const permit = { do: 'permit-deviation', step, what, why, authority, until, person: line } as const
      return signing(defs, state, line, permit, question)
    }
  }
}

/** The reason; of what is on watch and runs on, with the day or the hours by which it is read again, or that none is given. */
function disposeWhy(
  defs: Definitions,
  state: State,
  question: Extract<DecideAsk, { kind: 'dispose-why' }>,
  line: string,
): Heard {
  const { why: before, ...rest } = question
  if (before === undefined && !isReason(line))
    return ask(question, 'The reason needs words, two at least beside none given: why is it so decided?')
  const why = before === undefined ? line : withReadAgain(before, line)
  if (question.choice === 'concession') return ask({ ...rest, kind: 'concession-authority', why })
  // What a sheet of paper says stands on it, and nobody adds to it while it is keyed in.
  const isAsked = state.paper === null && isOnWatch(defs, state, question)
  const missing = isAsked ? whyNoReadAgain(why, state.lastAt) : null
  if (missing !== null) return ask({ ...rest, why: before ?? line }, missing)
  if (!isAsked) return dispose(defs, state, rest, { ...rest, why })
  const heard = dispose(defs, state, rest, { ...rest, why: withDays(why) })
  if (heard.refusal !== undefined) return heard
  const pin = heard.talk.ask?.kind === 'pin' ? { talk: { ask: { ...heard.talk.ask, of: question } } } : {}
  const unread = counterUnread(defs, state, why)
  return { ...heard, ...pin, say: [...heard.say, ...takenAs(why), ...(unread === null ? [] : [unread])] }
}

const asking = ({ step, choice }: Pick<Disposing, 'step' | 'choice'>) => ({ step, choice })

function dispose(
  defs: Definitions,
  state: State,
  question: DecideAsk,
  { step, choice, person, why }: Disposing,
  terms: {
    readonly authority?: string
    readonly until?: string
    readonly from?: string
    readonly far?: string
  } = {},
): Heard {
  const { authority, until } = terms
  const input = { do: 'dispose', step, choice, person, why, ...terms } as const
  if (
    authority !== undefined &&
    until !== undefined &&
    wouldRefuse(defs, state, { ...input, proved: true })?.code === 'far-end'
  )
    return ask({ ...terms, kind: 'concession-far', step, choice, person, why, authority, until })
  return signing(defs, state, person, { do: 'dispose', step, choice, person, why, ...terms }, question)
}
