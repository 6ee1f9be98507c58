// Two temperatures keyed the wrong way round: that of the part where the instrument's is asked, and the other way about. Each is
// believable by itself; held against the pair of before they show, as then the other of the two was the warmer.
import type { StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { oncePer } from '../lib/once.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { placeResult, placesOf } from './places.ts'
import { NOISE } from './plausible.ts'
import type { Reading, State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

interface Told {
  readonly step: ReadStep
  readonly reading: Reading
  readonly si: number
}

export interface SwappedPair {
  /** The other of the pair of now. */
  readonly other: Told
  /** The pair of before: what was read of the same thing as now, and of the other. */
  readonly before: { readonly same: Told; readonly other: Told }
}

/**
 * Null where the same of the two is the warmer as before, or where the two differences together are no more than repeats of a
 * temperature may differ by: then it tells nothing which is warmer. Of the last of four that is keyed, or of one that is put right.
 */
export function swappedPair(
  defs: Definitions,
  state: State,
  placed: ReadStep,
  reading: ReadingAt,
): SwappedPair | null {
  if (placed.step.quantity !== 'temperature') return null
  const [mine, ...rest] = pairsWith(defs, placed.id)
  if (mine === undefined) return null
  const other = toldAt(defs, state, mine.other)
  // One that was kept in spite of a doubt has its reason on record.
  if (other === null || other.reading.keptBecause !== null) return null
  for (const pair of rest) {
    const was = { same: toldAt(defs, state, pair.same), other: toldAt(defs, state, pair.other) }
    if (was.same === null || was.other === null) continue
    const now = reading.si - other.si
    const then = was.same.si - was.other.si
    const most = placed.step.repeats.within.si + NOISE
    if (now * then < 0 && Math.abs(now) + Math.abs(then) > most)
      return { other, before: { same: was.same, other: was.other } }
  }
  return null
}

function toldAt(defs: Definitions, state: State, id: string): Told | null {
  const step = asKind(stepById(defs, id), 'read')
  const [place] = placesOf(step)
  if (place === undefined) return null
  const { si, readings } = placeResult(step, place, state)
  const reading = readings.at(-1)
  return si === null || reading === undefined ? null : { step, reading, si }
}

interface Pair {
  /** Step of the same thing, part or instrument, as the one that is asked for. */
  readonly same: string
  readonly other: string
}

/** The pair that the step is of, and then the others of the same measuring. */
function pairsWith(defs: Definitions, id: string): readonly Pair[] {
  for (const { part, instrument } of measuringsOf(defs)) {
    const [own, across] = part.includes(id) ? [part, instrument] : [instrument, part]
    const at = own.indexOf(id)
    if (at < 0) continue
    const pairs = own.flatMap((same, n) => {
      const other = across[n]
      return other === undefined ? [] : [{ same, other, n }]
    })
    const mine = pairs.filter(({ n }) => n === at)
    return mine.length === 0 ? [] : [...mine, ...pairs.filter(({ n }) => n !== at)]
  }
  return []
}

/** Steps of part and of instrument that one judge takes for the same sizes, before and after in the same order. */
const measuringsOf = oncePer(
  (
    defs: Definitions,
  ): readonly { readonly part: readonly string[]; readonly instrument: readonly string[] }[] =>
    defs.steps.flatMap(({ step, scope }) => {
      if (step.kind !== 'judge') return []
      const under = (ids: readonly string[]) => ids.map((id) => scope + id)
      if (step.compute === 'bore_form')
        return [
          {
            part: under(step.inputs.part_temperature),
            instrument: under(step.inputs.instrument_temperature),
          },
        ]
      return step.compute === 'figures'
        ? at20Of(step).map((at) => ({ part: under(at.part), instrument: under(at.instrument) }))
        : []
    }),
)
