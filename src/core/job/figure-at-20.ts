// What a micrometer measured for a judge by figures: brought to 20 degC, and bracketed by checks on its setting standard.
import type { Reader } from '../definition/instruments.ts'
import type { FiguresJudge, StepOf } from '../definition/procedure.ts'
import { at20Of, type At20 as Bracket } from '../definition/step-judge.ts'
import { ok, type Result } from '../lib/result.ts'
import { reduceTo20 } from '../metrology/reduce-to-20.ts'
import type { ReadingUncertaintyInput } from '../metrology/uncertainty.ts'
import { expansionDoubt, instrumentsOf } from './bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { gaugeById } from './seats.ts'
import { setCheckOf } from './set-check.ts'
import type { State } from './state.ts'
import { type Temperature, temperatureOver } from './temperature.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export interface At20 {
  /** Whether a read step is among those that are bracketed and brought to 20 degC. */
  covers(read: PlacedStep): boolean
  /** A size as read, brought to 20 degC, metres. */
  reduce(readingM: number): Result<number>
  /** The part of the measuring error that comes from temperatures. */
  error(
    one: Reader,
  ): Pick<
    ReadingUncertaintyInput,
    'partAlpha' | 'instrumentAlpha' | 'partTempU' | 'instrumentTempU' | 'expansion'
  >
  /** What was measured, as the machine record names it. */
  readonly of: Bracket['of']
  readonly part: Temperature | null
  readonly body: Temperature | null
  /** Why nothing that it covers can be trusted, each in a sentence. */
  readonly holds: readonly string[]
}

/**
 * One for each instrument. Temperatures or checks that are missing are holds: sizes are never taken as they were read in
 * their place.
 */
export function at20Facts(
  defs: Definitions,
  state: State,
  judge: PlacedStep & { readonly step: FiguresJudge },
): At20[] {
  return at20Of(judge.step).map((at) => factsOf(defs, state, judge, at))
}

function factsOf(defs: Definitions, state: State, judge: PlacedStep, at: Bracket): At20 {
  const read = (id: string): ReadStep => asKind(stepById(defs, judge.scope + id), 'read')
  const covered = at.readings.map(read)
  const used = instrumentsOf(defs, state, covered)
  const gauge = used.length === 1 ? gaugeById(defs, used[0] ?? '') : null
  const part = temperatureOver(defs, state, at.part.map(read))
  const body = temperatureOver(defs, state, at.instrument.map(read))
  const own = defs.machine[at.of]?.expansion
  const holds: string[] = []
  if (used.length > 1) holds.push(`read with more than one instrument: ${used.join(', ')}`)
  if (part === null || body === null)
    holds.push('the temperature of part or instrument is not on record, before and after')
  if (own === undefined) holds.push(`the expansion of the ${at.of} is not in the machine record`)
  if (gauge !== null && gauge.expansion === undefined)
    holds.push(`the expansion of ${gauge.id} is not in the register`)
  if (used.length === 1 && gauge === null) holds.push(`${used[0]} is not set on a standard`)
  for (const [when, id] of [
    ['before', at.set_before],
    ['after', at.set_after],
  ] as const) {
    const check = setCheckOf(state, read(id), gauge)
    if (check === null) holds.push(`no set-check ${when} the readings with the instrument that took them`)
    else if (!(Math.abs(check.deviationM) <= check.allowedM + 1e-9))
      holds.push(`the set-check ${when} the readings is off by more than is allowed`)
  }
  const alpha = own?.per_kelvin ?? Number.NaN
  const body20 = gauge?.expansion?.per_kelvin ?? Number.NaN
  return {
    covers: (one) => covered.some((placed) => placed.id === one.id),
    reduce: (readingM) =>
      holds.length > 0
        ? ok(readingM)
        : reduceTo20({
            readingM,
            instrumentAlpha: body20,
            instrumentC: body?.celsius,
            partAlpha: alpha,
            partC: part?.celsius,
          }),
    error: () => ({
      partAlpha: alpha,
      instrumentAlpha: body20,
      partTempU: part?.standardU ?? Number.NaN,
      instrumentTempU: body?.standardU ?? Number.NaN,
      ...(part === null || body === null ? {} : expansionDoubt(own, gauge?.expansion, part, body)),
    }),
    of: at.of,
    part,
    body,
    holds,
  }
}
