// Records that do not agree with each other, as far as a program can ask it: hours that cannot be, one reason for two findings,
// figures as left that are those as found. Questions, as those of improbable readings are.
import { changesOf } from '../../job/changes.ts'
import { asKind, instrumentById } from '../../job/definitions.ts'
import { evidenceByKey, gatesOf, hangs } from '../../job/gate.ts'
import { nonconformances } from '../../job/nonconformance.ts'
import { placeResult } from '../../job/places.ts'
import { readStamp } from '../../lib/instant.ts'
import { list } from '../../lib/wording.ts'
import { placeName, placeNumber } from '../../talk/names.ts'
import { shownNumber } from '../../units/index.ts'
import type { Found } from '../exception.ts'
import { byWhom, count, entriesOf, type Look, named, namedById, when } from '../look.ts'
import { runsIt } from '../starts.ts'
import { A_QUESTION, NO_SOURCE } from './improbable.ts'

const base = { kind: 'improbable', open: false } as const

/** From so many figures on that did not change it is asked. Common practice, no source. */
const LEAST_SAME = 4

export function disagreements(look: Look): Found[] {
  return [...impossibleHours(look), ...oneReason(look), ...sameAsFound(look)]
}

/**
 * A counter that went on by more hours than the machine can have run between its two readings: the clock less what lay between
 * the first lock of the job and the start. A step of the counter is allowed for; across a jump of the clock nothing is asked.
 */
function impossibleHours(look: Look): Found[] {
  const { defs, state } = look
  return changesOf(defs, state).flatMap(({ found, left }): Found[] => {
    if (found === null || left === null || found.step.step.quantity !== 'time') return []
    const [first] = placeResult(found.step, found.place, state).readings
    const last = placeResult(left.step, left.place, state).readings.at(-1)
    if (first === undefined || last === undefined) return []
    if (entriesOf(look, 'clock.moved').some((e) => e.seq > first.seq && e.seq < last.seq)) return []
    const could = couldRun(look, first, last)
    if (could === null) return []
    const instrument = instrumentById(defs, last.instrument)
    const step = instrument === undefined || instrument.kind === 'gas_meter' ? 0 : instrument.resolution.si
    const went = left.si - found.si
    if (went >= 0 && went <= could.seconds + step) return []
    const hours = (seconds: number) => `${shownNumber(seconds / 3600, 1)} h`
    return [
      {
        ...base,
        what:
          went < 0
            ? `${named(left.step)}: the counter went BACK by ${hours(-went)}`
            : `${named(left.step)}: the counter went on by ${hours(went)}, and it can have run ${hours(could.seconds)}`,
        sentences: [
          `${first.typed.trim()} ${when(look, first)}, ${last.typed.trim()} ${when(look, last)}. ${could.how}`,
          `The test: more hours than the clock went on between the two, less the time under lock, one step of the counter allowed. ${NO_SOURCE}`,
          A_QUESTION,
        ],
        entries: [first.seq, ...could.entries, last.seq],
      },
    ]
  })
}

interface CouldRun {
  readonly seconds: number
  readonly how: string
  readonly entries: readonly number[]
}

function couldRun(
  look: Look,
  first: { seq: number; at: string },
  last: { seq: number; at: string },
): CouldRun | null {
  const ms = (one: { at: string }) => readStamp(one.at)?.ms ?? Number.NaN
  const gone = (ms(last) - ms(first)) / 1000
  if (!Number.isFinite(gone)) return null
  const between = look.entries.filter((e) => e.seq > first.seq && e.seq < last.seq)
  const lock = between.find(
    (e) =>
      e.type === 'evidence.given' &&
      gatesOf(look.defs).some((gate) => gate.id === e.step && hangs(evidenceByKey(gate, e.item))),
  )
  const start = between.find((e) => {
    if (lock === undefined || e.seq < lock.seq || (e.type !== 'step.confirmed' && e.type !== 'step.done'))
      return false
    const placed = look.defs.steps.find(({ id }) => id === e.step)
    return placed !== undefined && runsIt(look.defs, placed)
  })
  if (lock === undefined || start === undefined)
    return { seconds: gone, how: 'No lock and start stand between them.', entries: [] }
  const seconds = gone - (ms(start) - ms(lock)) / 1000
  const how = `Locked ${when(look, lock)}, started ${when(look, start)}.`
  return Number.isFinite(seconds) ? { seconds, how, entries: [lock.seq, start.seq] } : null
}

/** The same words under two decisions about what did not conform: it may be so, or one was copied. */
function oneReason(look: Look): Found[] {
  const { defs, state } = look
  const decided = nonconformances(defs, state).flatMap((nc) =>
    nc.stands && nc.decided !== null ? [{ nc, decided: nc.decided }] : [],
  )
  const byWords = new Map<string, typeof decided>()
  for (const one of decided) {
    const key = one.decided.why.trim().toLowerCase().replace(/\s+/g, ' ')
    byWords.set(key, [...(byWords.get(key) ?? []), one])
  }
  return [...byWords.values()]
    .filter((same) => same.length > 1)
    .map((same) => ({
      ...base,
      what: `${list(same.map(({ nc }) => nc.name))} were decided with one reason, word for word: ${same[0]?.decided.why ?? ''}`,
      sentences: [
        ...same.map(({ nc, decided: one }) => {
          const noted = state.findings[nc.step]
          return `${nc.name} ${namedById(look, nc.step)}: ${one.choice} by ${one.person}${noted === undefined ? '' : `. Noted with it: ${noted.replace(/[.]+$/, '')}`}.`
        }),
        `The test: two decisions about what did not conform with the same words, capitals and spaces apart. ${NO_SOURCE}`,
        A_QUESTION,
      ],
      entries: same.flatMap(({ nc, decided: one }) => [nc.seq, one.seq]),
    }))
}

/** Running figures and sizes apart: a size that nothing was done to stays as it was, and gauges of pressure move in coarse steps. */
function sameAsFound(look: Look): Found[] {
  const { defs, state } = look
  const both = changesOf(defs, state).flatMap(({ found, left }) =>
    found === null || left === null || found.step.step.quantity === 'time' ? [] : [{ found, left }],
  )
  return [true, false].flatMap((isLength): Found[] => {
    const group = both.filter(({ found }) => (found.step.step.quantity === 'length') === isLength)
    const same = group.filter(({ found, left }) => found.si === left.si)
    if (same.length < LEAST_SAME || same.length * 2 < group.length) return []
    const read = same.flatMap(({ found, left }) =>
      [found, left].flatMap((one) => placeResult(asKind(one.step, 'read'), one.place, state).readings),
    )
    const lefts = same.map(({ left }) => left)
    return [
      {
        ...base,
        what: `${same.length} of ${count(group.length, isLength ? 'size' : 'running figure')} as left are those as found, to the last digit`,
        sentences: [
          ...lefts.map(({ step, place }) => {
            const [last] = placeResult(step, place, state).readings
            return `${placeNumber(defs, step.id, place.key)} ${placeName(defs, step.id, place.key)}: ${last?.typed.trim() ?? '?'}${last === undefined ? '' : `, ${byWhom(look, { at: last.at, ...(last.by === null ? {} : { by: last.by }) })}`}.`
          }),
          `Was each read anew? The test: figures as left equal those as found to the last digit, from ${LEAST_SAME} on and half of them or more. ${NO_SOURCE}`,
          A_QUESTION,
        ],
        entries: read.map((r) => r.seq),
      },
    ]
  })
}
