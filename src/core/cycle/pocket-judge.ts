// The load question judged: does the machine, with its pocket as it stands, keep the driver under its rating less margin with
// every cylinder inside its limits; and if not, which smallest opening does? It proposes; a lead decides.
import { formatNumber } from '../lib/decimal.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import { completeMachine } from './machine-holds.ts'
import type { MachineModel } from './machine-model.ts'
import { checkedOpening, type PocketCase, pocketCases, worstLoad } from './pocket-cases.ts'
import { openingNow, type PocketTravel, pocketTravel } from './pocket-choice.ts'
import type { PocketJudgeInput, PocketRow, PocketVerdict } from './pocket-judge-input.ts'
import { pocketRow, tableOpenings } from './pocket-rows.ts'
import { places, smallestOpening, WHAT_IS_LEFT } from './pocket-setting.ts'

/**
 * Target = rating (1 - margin). Loads, pressures between stages and checks: pocket-cases.ts, operate.ts, setting-checks.ts.
 * ACCEPT: the load at the present setting, with the meter's error, is at or under the target and every check is clear.
 * MONITOR: the same, with something said beside it (no pin limit on record, an end that draws little, errors not allowed for).
 * REWORK: the load is over the target beyond the meter's error, and the smallest opening that brings it under is clear.
 * HOLD: anything missing or not a number; loads apart by more than the site's figure; the load too close to the target to
 * call; no opening is enough; a check out at the setting in question. The decision rule (measuring error counts against
 * acceptance) is that of JCGM 106:2012, 8.3, guarded acceptance with w = U (clause from memory).
 */
export function judgePocket(input: PocketJudgeInput): PocketVerdict {
  const complete = completeMachine(input.record)
  const missing = [...input.holds, ...(complete.ok ? [] : complete.error), ...errorHolds(input)]
  if (!complete.ok || missing.length > 0) return held(missing)
  const machine = complete.value
  const travel = pocketTravel(machine, input.choice)
  if (!travel.ok) return held([travel.error.say])
  const fault = stepFault(input, travel.value)
  if (fault !== null) return held([fault])
  const cases = pocketCases(machine, input.choice, input.errors)
  if (!cases.ok) return held([cases.error.say])
  const computedW = cases.value[0]?.present.driverW ?? Number.NaN
  const apart = agreementHold(input, machine, computedW)
  if (apart !== null) return { ...held([apart]), computedW }
  const loadAt = loadsOnce(cases.value, input.choice)
  return judged({ input, machine, travel: travel.value, cases: cases.value, computedW, loadAt })
}

/** The search and what follows it ask for the same openings: each is worked out once. */
function loadsOnce(cases: readonly PocketCase[], choice: PocketJudgeInput['choice']): Question['loadAt'] {
  const known = new Map<number, number | null>()
  return (opening) => {
    const found = known.get(opening)
    if (found !== undefined) return found
    const load = worstLoad(cases, choice, opening)
    known.set(opening, load)
    return load
  }
}

interface Question {
  readonly input: PocketJudgeInput
  readonly machine: MachineModel
  readonly travel: PocketTravel
  readonly cases: readonly PocketCase[]
  readonly computedW: number
  readonly loadAt: (opening: number) => number | null
}

function held(holds: readonly string[]): PocketVerdict {
  return {
    verdict: 'HOLD',
    holds: [...new Set(holds)],
    cautions: [],
    targetW: null,
    computedW: null,
    recommended: null,
    present: null,
    table: [],
    at: null,
    judged: [],
  }
}

/** An error that nobody stated holds, unless the owner recorded that it need not be allowed for. */
function errorHolds({ errors, simpleAcceptance, record }: PocketJudgeInput): string[] {
  const each: [string, number | null | undefined][] = [
    ['first suction pressure', errors.suctionPa],
    ['last discharge pressure', errors.dischargePa],
    ...(record.stages ?? []).map((_, i): [string, number | null | undefined] => [
      `gas temperature of stage ${i + 1}`,
      errors.suctionK[i],
    ]),
    ['driver load', errors.loadW],
    ['setting of the pocket', errors.opening],
  ]
  return each.flatMap(([what, u]) => {
    if (u === null || u === undefined)
      return simpleAcceptance === null
        ? [`Nobody has stated how far the reading of the ${what} may be off.`]
        : []
    return u >= 0 && Number.isFinite(u) ? [] : [`The measuring error of the ${what} cannot be worked out.`]
  })
}

function stepFault({ turns }: PocketJudgeInput, travel: PocketTravel): string | null {
  if (travel.is === 'open-or-shut') return null
  if (turns === null || !(turns > 0)) return 'The turns of the hand-wheel are not on record.'
  // Without a step a setting would be named that nobody can set, and be rounded to one that is not enough.
  return travel.step === null ? 'The least step that the hand-wheel is set to is not on record.' : null
}

/** Without agreement neither load can be trusted to move as the other does. */
function agreementHold(
  { errors }: PocketJudgeInput,
  machine: MachineModel,
  computedW: number,
): string | null {
  const { measuredLoadW, agreement } = machine
  const apart = Math.abs(computedW - measuredLoadW) / measuredLoadW
  const percent = (share: number) => `${formatNumber(share * 100, 1)} %`
  if (!(apart <= agreement))
    return `Computed and measured driver load are apart by ${percent(apart)} of the measured one, and the site allows ${percent(agreement)}: find out why before any pocket is moved.`
  if ((errors.loadW ?? 0) / measuredLoadW <= agreement) return null
  return 'The power meter may be off by more than the site lets computed and measured load be apart: that they agree says nothing.'
}

function judged(question: Question): PocketVerdict {
  const { input, machine, travel, cases, computedW, loadAt } = question
  const targetW = machine.driverRatingW * (1 - machine.margin)
  const present = openingNow(machine, input.choice)
  const enough = smallestOpening(travel, targetW, loadAt)
  const rowAt = (opening: number) => {
    const checked = checkedOpening(cases, input.choice, opening)
    const loadW = loadAt(opening)
    return checked.ok && loadW !== null
      ? pocketRow(input, machine, cases[0], checked.value, opening, loadW)
      : null
  }
  const now = rowAt(present)
  if (now === null)
    return held(['At the present setting no balance is found with the readings off by their errors.'])
  const found = enough === null ? null : rowAt(enough)
  const { verdict, holds, at } = answer(question, { targetW, now, found })
  const isRework = verdict === 'REWORK'
  const openings = tableOpenings(travel, [present, at.opening, ...(found === null ? [] : [found.opening])])
  const table = openings.flatMap((opening) => rowAt(opening) ?? [])
  return {
    verdict,
    holds,
    cautions: cautionsOf(question, at, {
      targetW,
      now,
      found,
      isRework,
      missing: openings.length - table.length,
    }),
    targetW,
    computedW,
    recommended: isRework ? at.opening : null,
    present,
    table,
    at: at.opening,
    judged: at.cylinders,
  }
}

interface Rows {
  readonly targetW: number
  readonly now: PocketRow
  readonly found: PocketRow | null
}

interface Answer {
  readonly verdict: VerdictWord
  readonly holds: readonly string[]
  /** The row that it speaks of. */
  readonly at: PocketRow
}

function answer(question: Question, { targetW, now, found }: Rows): Answer {
  const { machine, input } = question
  const hold = (at: PocketRow, ...holds: string[]): Answer => ({ verdict: 'HOLD', holds, at })
  if (now.loadW <= targetW) {
    const out = outWords(now)
    if (out.length > 0) return hold(now, ...out)
    const isPlain = now.faults.length === 0 && !isUnguarded(input)
    return { verdict: isPlain ? 'ACCEPT' : 'MONITOR', holds: [], at: now }
  }
  const surelyOver = machine.measuredLoadW - (input.errors.loadW ?? 0) > targetW
  if (!surelyOver)
    return hold(
      now,
      'The driver load is too close to the target to call: measured and computed load, each with its error, do not both lie under it, nor the measured one over it.',
    )
  if (found === null)
    return hold(leastLoaded(question, now), 'No opening of this pocket brings the driver under the target.')
  const out = outWords(found)
  return out.length > 0 ? hold(found, ...out) : { verdict: 'REWORK', holds: [], at: found }
}

function outWords(row: PocketRow): string[] {
  return row.faults.flatMap((fault) => (fault.grade === 'hold' ? [fault.say] : []))
}

/** Some error is not known and not allowed for. */
function isUnguarded({ errors }: PocketJudgeInput): boolean {
  const { suctionPa, dischargePa, loadW, opening, suctionK } = errors
  return [suctionPa, dischargePa, loadW, opening, ...suctionK].includes(null)
}

/** The opening with the least load, where none is enough. */
function leastLoaded({ input, machine, travel, cases, loadAt }: Question, now: PocketRow): PocketRow {
  const less = places(travel).flatMap((opening) => {
    const loadW = loadAt(opening)
    return loadW !== null && loadW < now.loadW ? [{ opening, loadW }] : []
  })
  // Every cylinder in every case is looked at where the load is least, not at each opening on the way there.
  for (const { opening, loadW } of less.sort((a, b) => a.loadW - b.loadW)) {
    const checked = checkedOpening(cases, input.choice, opening)
    if (checked.ok) return pocketRow(input, machine, cases[0], checked.value, opening, loadW)
  }
  return now
}

function cautionsOf(
  { input }: Question,
  at: PocketRow,
  { targetW, now, found, isRework, missing }: Rows & { readonly isRework: boolean; readonly missing: number },
): string[] {
  const warned = at.faults.flatMap((fault) => (fault.grade === 'warn' ? [fault.say] : []))
  if (isUnguarded(input)) warned.push('Instrument error not allowed for where nobody has stated it.')
  if (found === null && !(now.loadW <= targetW))
    warned.push(`What is left, for a lead to weigh: ${WHAT_IS_LEFT.join('; ')}.`)
  if (missing > 0)
    warned.push('At some openings the machine finds no balance: they are left out of the table.')
  if (!isRework && found !== null && found.opening < now.opening && outWords(found).length === 0)
    warned.push('A smaller opening would be enough too, and give more gas: see the table.')
  return warned
}
