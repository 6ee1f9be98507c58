// What is improbable of readings that are each believable: questions, with the test that asks them and its threshold. Nobody is
// accused by any of it, no figure is changed, and there may be a good reason.
import { asKind, type PlacedStep } from '../../job/definitions.ts'
import { gasPace, SETTLES_S } from '../../job/gas-pace.ts'
import { gatesOf } from '../../job/gate.ts'
import { againstLast } from '../../job/last-left.ts'
import { applicability, isComplete } from '../../job/next.ts'
import { placesOf } from '../../job/places.ts'
import { type QuestionAbout, questionsOf, TEST_OF } from '../../job/questions.ts'
import { standing } from '../../job/state.ts'
import { list } from '../../lib/wording.ts'
import { instrumentName, placeNumber } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { ASKED_BELOW, type LastDigits, LEAST_READINGS, LEAST_SPREAD, leaningDigits } from '../last-digits.ts'
import { count, entriesOf, type Look, named, namedById, sentence } from '../look.ts'

/** Ends each of them. */
export const A_QUESTION = 'A question and no finding: ask those who measured, before anything is made of it.'
export const NO_SOURCE = 'Common practice, no source.'

export function improbable(look: Look): Found[] {
  return [...asked(look), ...sameAsLast(look), ...lastDigits(look), ...gasKeyedFast(look)]
}

const base = { kind: 'improbable', open: false } as const

/** Questions that were asked on the sheet, and those that stand by the readings though nobody asked them then. */
function asked(look: Look): Found[] {
  const onRecord = entriesOf(look, 'readings.questioned')
  const standingNow = look.defs.steps.flatMap((placed) => questionsNow(look, placed))
  const fromLog = onRecord.map((e) => {
    const still = standingNow.some((q) => q.step === e.step && q.about === e.about)
    return {
      ...base,
      what: `${namedById(look, e.step)}: ${e.text}`,
      sentences: [
        ...(still ? [] : ['It stands no more: readings were put right since, or fell.']),
        `The test: ${TEST_OF[e.about]}. ${NO_SOURCE}`,
        A_QUESTION,
      ],
      entries: [e.seq, ...seqsAt(look, e.step)],
      grave: still ? 0 : 1,
    }
  })
  const never = standingNow
    .filter((q) => !onRecord.some((e) => e.step === q.step && e.about === q.about))
    .map((q) => ({
      ...base,
      what: `${namedById(look, q.step)}: ${q.text}`,
      sentences: [
        'It was not asked on the sheet.',
        `The test: ${TEST_OF[q.about]}. ${NO_SOURCE}`,
        A_QUESTION,
      ],
      entries: seqsAt(look, q.step),
    }))
  return [...fromLog, ...never]
}

function questionsNow(
  { defs, state }: Look,
  placed: PlacedStep,
): { step: string; about: QuestionAbout; text: string }[] {
  if (placed.step.kind !== 'read' || !isComplete(state, placed)) return []
  if (applicability(defs, state, placed) !== 'do') return []
  return questionsOf(defs, state, asKind(placed, 'read')).map((one) => ({ step: placed.id, ...one }))
}

/** Entries of the readings of a step that stand. */
function seqsAt({ defs, state }: Look, step: string): number[] {
  const placed = defs.steps.find((one) => one.id === step)
  if (placed?.step.kind !== 'read') return []
  return placesOf(asKind(placed, 'read')).flatMap(({ key }) => standing(state, key).map((r) => r.seq))
}

/** Told by what stood shown when a hold point was opened, each time it was. */
function gasKeyedFast(look: Look): Found[] {
  return look.moves.flatMap(({ entry, before }): Found[] => {
    if (entry.type !== 'gate.opened') return []
    const gate = gatesOf(look.defsAt(entry)).find(({ id }) => id === entry.step)
    const pace = gate === undefined ? null : gasPace(look.defsAt(entry), before, gate)
    if (gate === undefined || pace === null) return []
    return [
      {
        ...base,
        what: `${named(gate)}: gas figures of two places keyed ${pace.seconds} s apart`,
        sentences: [
          'Had the meter settled at the second place, or were the figures read before and keyed together?',
          `The test: under ${SETTLES_S} s from the first figure of one place to the first of the next. ${NO_SOURCE}`,
          A_QUESTION,
        ],
        entries: [...pace.seqs, entry.seq],
      },
    ]
  })
}

function sameAsLast(look: Look): Found[] {
  const { defs, state } = look
  return defs.steps.flatMap((placed): Found[] => {
    if (placed.step.kind !== 'read' || placed.step.quantity !== 'length') return []
    if (applicability(defs, state, placed) !== 'do') return []
    const read = asKind(placed, 'read')
    const places = placesOf(read).filter(({ key }) => standing(state, key).length > 0)
    const same = places.flatMap(({ key }) => {
      const [first] = standing(state, key)
      const last = first === undefined ? null : againstLast(defs, read, first)
      return first !== undefined && last?.is === 'same' ? [{ first, on: last.on }] : []
    })
    if (same.length === 0) return []
    const where = same.map(({ first }) => placeNumber(defs, placed.id, first.place))
    return [
      {
        ...base,
        what: `${named(placed)}: ${same.length} of ${places.length} as left at the last overhaul, to the last figure`,
        sentences: [
          `At ${list(where)}, as left on ${list([...new Set(same.map(({ on }) => on))])}. Was each measured anew?`,
          `The test: the first reading of a place equals what is on record of it; gauges set on a standard, from one place on. ${NO_SOURCE}`,
          A_QUESTION,
        ],
        entries: same.map(({ first }) => first.seq),
      },
    ]
  })
}

function lastDigits(look: Look): Found[] {
  return leaningDigits(look.defs, look.state).map((one) => ({
    ...base,
    what: `${one.instrument}: ${one.ending} of ${count(one.readings.length, 'first reading')} end in 0 or 5`,
    sentences: [
      `Read with ${instrumentName(look.defs, one.instrument)}. Was every figure read to its last digit, or rounded off?`,
      sentence(`By chance alone so many or more come ${rarely(one)}`),
      `The test: exact binomial test of last digits, 2 in 10 each, asked below ${ASKED_BELOW}; first readings of a place only, from ${LEAST_READINGS} on and spread over ${LEAST_SPREAD} steps of the gauge; with fewer it says nothing.`,
      `Even last digits: D. A. Preece, The Statistician 30 (1981) 31-60 (read second-hand). The thresholds: common practice, no source.`,
      A_QUESTION,
    ],
    entries: one.readings.map((r) => r.seq),
  }))
}

/** `1 time in 3125`. */
function rarely({ chance }: LastDigits): string {
  const once = 1 / chance
  return once < 1e6 ? `1 time in ${Math.floor(once)}` : 'less than 1 time in a million'
}
