// A lead's disposition of a verdict, or of what was found where the job would end with it open. A gate has no disposition of
// any kind.
import type { Person } from '../definition/crew.ts'
import type { Step } from '../definition/procedure.ts'
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import { authorityFrom } from './authority.ts'
import { hoursRead, lastOverhaul } from './changes.ts'
import { asKind, type Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { next } from './next.ts'
import type { Nonconformance } from './nonconformance.ts'
import { notAsked, reason } from './refusals.ts'
import { signer } from './signature.ts'
import { type State, standingVerdict } from './state.ts'
import { countedFrom, isFar, type Validity, validityFrom } from './validity.ts'

/** The one kind of step that a decide step can be about. */
export type Disposable = Extract<Step['kind'], 'judge'>

type Of<K extends Input['do']> = Extract<Input, { do: K }>

/** One of the choices, and why it is not open; null where it is. */
export interface Offer<C extends string = string> {
  readonly choice: C
  readonly barred: string | null
}

/** All choices in their order, so that the same word has the same number whatever the verdict is. */
export function offersFor<C extends string>(verdict: string, choices: readonly C[]): Offer<C>[] {
  return choices.map((choice) => ({ choice, barred: barredChoice(verdict, choice) }))
}

/** Nothing that could not be judged is accepted by a plain word, nor what is past its limit. */
function barredChoice(verdict: string, choice: string): string | null {
  if (choice === 'accept') {
    if (verdict === 'HOLD') return 'it could not be judged'
    return verdict === 'REWORK' || verdict === 'REPLACE' ? `it is past its limit, ${verdict}` : null
  }
  return choice === 'hold' && verdict !== 'HOLD' ? `it was judged, ${verdict}` : null
}

/** What a lead may choose for a verdict. */
export function dispositionsFor(verdict: string, choices: readonly string[]): string[] {
  return openIn(offersFor(verdict, choices))
}

function openIn<C extends string>(offers: readonly Offer<C>[]): C[] {
  return offers.flatMap(({ choice, barred }) => (barred === null ? [choice] : []))
}

/** What a lead may choose for a finding, in the order it is asked. */
export const FINDING_CHOICES = ['accept', 'rework', 'repair', 'replace', 'concession', 'hold'] as const

/** The same for a verdict that a gate asks about; null: of a finding. On hold it may be put whatever it came to. */
export function findingOffers(verdict: string | null): readonly Offer<(typeof FINDING_CHOICES)[number]>[] {
  return FINDING_CHOICES.map((choice) => ({
    choice,
    barred: verdict === null || choice === 'hold' ? null : barredChoice(verdict, choice),
  }))
}

/** Who took the readings behind a verdict: also those who have handed the keyboard on since. */
export function readers(state: State, seqs: readonly number[]): Set<string | null> {
  const all = Object.values(state.readings).flat()
  const behind = all.filter((r) => seqs.includes(r.seq))
  // Who wrote them on the sheet took them; who keyed them is not to decide on them either.
  return new Set(behind.flatMap((r) => [r.by, ...(r.paper === undefined ? [] : [r.paper.who])]))
}

const AT_KEYS = 'was at the keyboard when the verdict was given'

/** Whoever keyed a sheet in did none of the work that stands on it. */
function workOf(state: State, seqs: readonly number[]): Pick<Asked, 'worked' | 'keyed'> {
  if (state.paper === null) return { worked: readers(state, seqs), keyed: AT_KEYS }
  const behind = Object.values(state.readings)
    .flat()
    .filter((r) => seqs.includes(r.seq))
  return {
    worked: new Set(behind.flatMap((r) => (r.paper === undefined ? [r.by] : [r.paper.who]))),
    keyed: 'keyed that in from the paper',
  }
}

export interface Asked {
  /** Id of the judge or observe step whose outcome is disposed of. */
  readonly about: string
  /** Who did what is decided on: none of them decides. */
  readonly doers: ReadonlySet<string | null>
  /** Those of them who took a reading or looked; the others were only at the keyboard. */
  readonly worked: ReadonlySet<string | null>
  /** What the others did, as a clause behind their initials. */
  readonly keyed: string
}

/** The verdict or finding that is to be disposed of now, if this choice is open for it. */
export function disposable(
  defs: Definitions,
  state: State,
  input: { readonly step: string; readonly choice: string },
): Result<Asked> {
  const prompt = next(defs, state)
  if (prompt.kind === 'findings') return disposableFinding(state, prompt.open, input)
  if (prompt.kind !== 'decide' || prompt.step.id !== input.step) return notAsked()
  const { step, scope } = asKind(prompt.step, 'decide')
  const about = scope + step.about
  // The checks of the files say so too; here nothing but a judgement can be decided on, whatever they let through.
  if (defs.steps.find((s) => s.id === about)?.step.kind !== ('judge' satisfies Disposable))
    return refuse('not-judged', 'Only a verdict is decided on: a hold point has no disposition.')
  const verdict = state.verdicts[about]
  if (verdict === undefined || verdict.void)
    return refuse('no-verdict', 'There is no standing verdict to dispose of.')
  if (!dispositionsFor(verdict.verdict.result.verdict, step.choices).includes(input.choice)) {
    return refuse(
      'choice',
      `That is not open for a verdict of ${verdict.verdict.result.verdict}: key one of the numbers.`,
    )
  }
  // Whoever keys counts as one who measured, but for who came on only after it was judged.
  const keys = state.doer !== null && verdict.on.includes(state.doer) ? [state.doer] : []
  const worked = readers(state, verdict.verdict.readings)
  return ok({ about, doers: new Set([...keys, ...worked]), ...workOf(state, verdict.verdict.readings) })
}

/** A lead at the keyboard decides on what others found: else a lead alone with a crew could never end a job. */
function disposableFinding(
  state: State,
  open: readonly Nonconformance[],
  input: { readonly step: string; readonly choice: string },
): Result<Asked> {
  if (!open.some(({ step }) => step === input.step)) return notAsked()
  const verdict = standingVerdict(state, input.step)?.verdict
  const allowed: readonly string[] = openIn(findingOffers(verdict?.result.verdict ?? null))
  if (!allowed.includes(input.choice))
    return refuse('choice', 'That is not open for a finding: key one of the numbers.')
  const doers = verdict === undefined ? (state.doneBy[input.step] ?? []) : readers(state, verdict.readings)
  return ok({
    about: input.step,
    doers: new Set(doers),
    ...(verdict === undefined ? { worked: new Set(doers), keyed: AT_KEYS } : workOf(state, verdict.readings)),
  })
}

/** Why this person may not decide on what these people did, or null. */
export function barsDeciding(
  person: Person,
  { doers, worked, keyed }: Pick<Asked, 'doers' | 'worked' | 'keyed'>,
): Refusal | null {
  if (person.role !== 'lead')
    return { code: 'not-lead', say: `${person.id} is a ${person.role}, and a disposition is a lead's.` }
  if (!doers.has(person.id)) return null
  const did = worked.has(person.id) ? 'did that work' : keyed
  return { code: 'own-work', say: `${person.id} ${did}, so another lead decides on it.` }
}

export function admitDisposition(
  defs: Definitions,
  state: State,
  input: Of<'dispose'>,
): Result<readonly Body[]> {
  const asked = disposable(defs, state, input)
  if (!asked.ok) return asked
  const { about } = asked.value
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  const barred = barsDeciding(person, asked.value)
  if (barred !== null) return { ok: false, error: barred }
  const why = reason(input.why, 'The reason')
  if (!why.ok) return why
  const own = new Set([...asked.value.doers, state.doer, person.id])
  const terms: Result<{ readonly authority?: string; readonly valid?: Validity }> =
    input.choice === 'concession' ? concessionTerms(defs, state, input, own) : ok({})
  if (!terms.ok) return terms
  const far = whyFar(state, terms.value.valid, input.far)
  if (!far.ok) return far
  return ok([
    {
      type: 'disposition.set',
      step: input.step,
      about,
      choice: input.choice,
      why: `${why.value}${far.value}`,
      person: person.id,
      signed,
      ...terms.value,
    },
  ])
}

/** Repair, rework and replace end in a new measurement; a concession lets a part run as it is, so it says by whom and how long. */
function concessionTerms(
  defs: Definitions,
  state: State,
  input: Of<'dispose'>,
  own: ReadonlySet<string | null>,
): Result<{ readonly authority: string; readonly valid: Validity }> {
  const authority = authorityFrom(defs, input.authority ?? '', own, 'a concession')
  if (!authority.ok) return authority
  const keyed = validityFrom(input.until ?? '', state.lastAt)
  if (!keyed.ok) return keyed
  const valid = countedFrom(
    keyed.value,
    hoursRead(defs, state),
    input.from,
    lastOverhaul(defs)?.hours ?? null,
  )
  return valid.ok ? ok({ authority: authority.value, valid: valid.value }) : valid
}

/**
 * A part that does not conform and runs for longer than a year has a reason for that too: most were looked at again by then. What a sheet of
 * paper says stands on it, and nobody adds to it while it is keyed in. Refuses `far-end`.
 */
function whyFar(state: State, valid: Validity | undefined, far: string | undefined): Result<string> {
  if (valid === undefined || state.paper !== null || !isFar(valid, state.lastAt)) return ok('')
  const why = reason(far ?? '', 'Why it stands longer than a year')
  return why.ok
    ? ok(`; longer than a year, because: ${why.value}`)
    : refuse('far-end', 'That is further off than a year: say why it stands so long, or key an earlier end.')
}

/** Whether a concession may stand on this authority, as the disposition itself asks it, before how long is asked. */
export function authorityHere(
  defs: Definitions,
  state: State,
  input: Pick<Of<'dispose'>, 'step' | 'choice' | 'person' | 'authority'>,
): Result<string> {
  const asked = disposable(defs, state, input)
  if (!asked.ok) return asked
  const own = new Set([...asked.value.doers, state.doer, input.person.trim().toUpperCase()])
  return authorityFrom(defs, input.authority ?? '', own, 'a concession')
}
