// The word `instrument`: one picked on this job is found out of calibration. What the word does is said before anything is asked, what
// would fall before it does; one that was only picked by mistake goes back from here too, and nothing is doubted.
import { readBy } from '../job/admit-instrument.ts'
import { temperaturesFor } from '../job/body-temperatures.ts'
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { mispick } from '../job/mispick.ts'
import type { State } from '../job/state.ts'
import { numberIn } from './correct.ts'
import { ask, type Heard, input, say, voidWarning } from './heard.ts'
import { instrumentName, placeName, placeNumber, readingText } from './names.ts'

export type DoubtAsk =
  /** `mispicked`: the seat of one that was picked last, and has read nothing. */
  | { readonly kind: 'doubt-which'; readonly instruments: readonly string[]; readonly mispicked?: string }
  | { readonly kind: 'doubt-why'; readonly instrument: string }
  | { readonly kind: 'doubt-says'; readonly instrument: string; readonly why: string }

export function doubt(defs: Definitions, state: State): Heard {
  if (state.doer === null) return say('Sign on first: it goes on record by whom.')
  const instruments = state.picked.filter((id) => state.doubted[id] === undefined)
  if (instruments.length === 0)
    return say('No instrument is picked on this job that could be out of calibration.')
  const wrong = mispick(defs, state)
  return ask(
    { kind: 'doubt-which', instruments, ...(wrong === null ? {} : { mispicked: wrong.seat }) },
    'This word puts on record that an instrument is out of calibration: all that it read on this job falls, and it is not offered again. Nothing is done before you have said which, why, and who says so; back leaves it.',
    ...instruments.map((id, i) => `${i + 1}  ${instrumentName(defs, id)}`),
    ...(wrong === null
      ? []
      : [
          `${instruments.length + 1}  ${wrong.instrument} was only picked by mistake: it goes back, nothing is doubted`,
        ]),
  )
}

export function hearDoubt(defs: Definitions, state: State, question: DoubtAsk, line: string): Heard {
  switch (question.kind) {
    case 'doubt-which': {
      const { instruments, mispicked } = question
      const number = numberIn(line)
      if (mispicked !== undefined && number === instruments.length + 1)
        return input({ do: 'put-back', seat: mispicked })
      const instrument = instruments[number - 1]
      const last = instruments.length + (mispicked === undefined ? 0 : 1)
      return instrument === undefined
        ? ask(question, `Key a number, 1 to ${last}, or back.`)
        : ask({ kind: 'doubt-why', instrument }, ...wouldFall(defs, state, instrument))
    }
    case 'doubt-why':
      return ask({ kind: 'doubt-says', instrument: question.instrument, why: line })
    case 'doubt-says':
      return input({ do: 'doubt-instrument', instrument: question.instrument, why: question.why, says: line })
  }
}

function wouldFall(defs: Definitions, state: State, instrument: string): string[] {
  const { seqs, steps } = readBy(state, instrument)
  const read = readLines(defs, state, seqs)
  const temperatures = temperaturesFor(defs, state, instrument)
  const warm = readLines(defs, state, temperatures.seqs)
  return [
    read.length === 0 ? `${instrument} has read nothing that stands.` : `These would no longer stand:`,
    ...read,
    ...(warm.length === 0 ? [] : [TAKEN_FOR_IT, ...warm]),
    ...voidWarning(defs, state, ...new Set([...steps, ...temperatures.steps])),
  ]
}

/** Over temperatures that fall with an instrument which did not read them. */
export const TAKEN_FOR_IT = 'And the temperatures that were taken for what it read:'

/** What the entries of these numbers read, one a line. */
export function readLines(defs: Definitions, state: State, seqs: readonly number[]): string[] {
  const settled = Object.values(state.readings).flat()
  const waiting = [state.doubt, state.late].filter((p) => p !== null)
  const readings = [...settled, ...waiting]
    .filter((r) => seqs.includes(r.seq))
    .sort((a, b) => a.seq - b.seq)
    .map(
      (r) =>
        `  ${placeNumber(defs, r.step, r.place)} ${placeName(defs, r.step, r.place)}: ${readingText(defs, r)}`,
    )
  const tests = gatesOf(defs).flatMap((gate) =>
    Object.entries(gateState(state, gate.id).given)
      .filter(([, given]) => seqs.includes(given.seq))
      .map(([item, given]) => `  ${gate.number} ${keyLabel(defs, gate, item)}: ${given.shown}`),
  )
  return [...readings, ...tests]
}
