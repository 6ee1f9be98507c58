// What rests on an instrument in a job: told before anybody signs that it was out of calibration, and changed by none of it.
import { readBy } from '../job/admit-instrument.ts'
import { temperaturesFor } from '../job/body-temperatures.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type State, standingVerdict } from '../job/state.ts'
import { wouldVoid } from '../job/voids.ts'
import { list } from '../lib/wording.ts'
import { voidName } from './heard.ts'
import { placeNumber } from './names.ts'

export interface WouldFall {
  /** Entries that it read, gas tests of hold points among them. */
  readonly readings: number
  /** Of these, how many still stand. */
  readonly stand: number
  /** Where those stand that do, a clause each: `7 Bore: 12 readings, 7.1 to 7.6`. */
  readonly where: readonly string[]
  /** What would be void with them, a clause each, with its word: `18 Bore judged, MONITOR`. */
  readonly voids: readonly string[]
}

/** Entries that the instrument read: readings of steps and gas tests of hold points. */
export function entriesRead(entries: readonly Entry[], instrument: string): readonly Entry[] {
  return entries
    .filter((e) => 'typed' in e || 'reading' in e)
    .filter((e) => 'instrument' in e && e.instrument === instrument)
}

export function wouldFall(
  defs: Definitions,
  state: State,
  entries: readonly Entry[],
  instrument: string,
): WouldFall {
  const read = entriesRead(entries, instrument)
  const { seqs, steps } = readBy(state, instrument)
  const standing = read.filter(({ seq }) => seqs.includes(seq))
  const at = (id: string) => standing.filter((e) => 'step' in e && e.step === id)
  return {
    readings: read.length,
    stand: standing.length,
    where: defs.steps.flatMap(({ id, number, step }) => {
      const here = at(id)
      return here.length === 0
        ? []
        : [`${number} ${step.title}: ${counted(here.length)}${placesOf(defs, here)}`]
    }),
    voids: [
      ...wouldVoid(
        defs,
        state,
        ...new Set([...steps, ...temperaturesFor(defs, state, instrument).steps]),
      ).map((id) => voidText(defs, state, id)),
      ...(standing.length > 0 && state.adopted !== null && !state.adopted.void
        ? [`the baseline that ${state.adopted.person} adopted on ${state.adopted.at.slice(0, 10)}`]
        : []),
    ],
  }
}

const counted = (n: number) => `${n} ${n === 1 ? 'reading' : 'readings'}`

/** `, at 7.1, 7.2 and 7.3`; nothing at a hold point, whose tests have no such number. */
function placesOf(defs: Definitions, read: readonly Entry[]): string {
  const numbers = read.flatMap((e) =>
    'place' in e && 'step' in e && typeof e.place === 'string' && typeof e.step === 'string'
      ? [placeNumber(defs, e.step, e.place)]
      : [],
  )
  const places = [...new Set(numbers)]
  return places.length < 2 ? '' : `, at ${list(places)}`
}

function voidText(defs: Definitions, state: State, id: string): string {
  const number = defs.steps.find((one) => one.id === id)?.number
  const word = standingVerdict(state, id)?.verdict.result.verdict
  const decided = state.dispositions[id]
  const how =
    word ?? (decided === undefined || decided.void ? null : `${decided.choice} by ${decided.person}`)
  return `${number ?? ''} ${voidName(defs, id)}${how === null ? '' : `, ${how}`}`.trim()
}

/** The same in sentences, for a list of jobs. */
export function wouldFallLines(found: WouldFall, instrument: string): string[] {
  const { readings, stand, where, voids } = found
  const rest = readings - stand
  const how =
    rest === 0
      ? 'all stand'
      : stand === 0
        ? 'none stands: void, corrected or not used before'
        : `${stand} stand; ${rest} void, corrected or not used before`
  return [
    `${counted(readings)} by ${instrument}: ${how}`,
    ...where.map((one) => `  ${one}`),
    ...(stand === 0
      ? []
      : [voids.length === 0 ? 'No verdict would fall with them.' : 'Would fall with them:']),
    ...(stand === 0 ? [] : voids.map((one) => `  ${one}`)),
  ]
}
