// What was corrected and what it changed, said at the close: a verdict that turned must not read as if it had always been so.
import type { Definitions } from '../job/definitions.ts'
import { decidedAbout } from '../job/nonconformance.ts'
import { type Reading, type State, standingVerdict, stands } from '../job/state.ts'
import { bareReading, placeName, placeNumber, repeatName } from '../talk/names.ts'
import { type Row, row } from './block.ts'

/** A line for each verdict that was another word before, then one for each reading that was corrected. */
export function correctedAtClose(defs: Definitions, state: State): Row[] {
  return [...turnedRows(defs, state), ...readingRows(defs, state)]
}

/** `Bore judged: HOLD before, ACCEPT now; no lead has decided on it`. */
function turnedRows(defs: Definitions, state: State): Row[] {
  return defs.steps.flatMap(({ id, step }) => {
    const now = standingVerdict(state, id)?.verdict.result.verdict
    if (step.kind !== 'judge' || now === undefined) return []
    const words = state.raised.flatMap(({ step: of, word, voidBy }) =>
      of === id && voidBy !== null && word !== now ? [word] : [],
    )
    if (words.length === 0) return []
    const seen = decidedAbout(state, id) === null ? '; no lead has decided on it' : ''
    return [row(`  ${step.title}: ${[...new Set(words)].join(', ')} before, ${now} now${seen}`, 'caution')]
  })
}

function readingRows(defs: Definitions, state: State): Row[] {
  const corrected = Object.values(state.readings)
    .flat()
    .filter((r) => stands(r) && r.corrects !== null)
    .sort((a, b) => a.seq - b.seq)
  if (corrected.length === 0) return []
  const count = corrected.length === 1 ? '1 reading was' : `${corrected.length} readings were`
  return [
    row(`${count} corrected:`, 'caution'),
    ...corrected.map((r) => row(`  ${correctedText(defs, state, r)}`)),
  ]
}

/** `7.3 Bore, CENTRE of ring travel, TOP TO BOTTOM, 2nd of 3: first 9.5021 in, now 9.5069 in`. */
function correctedText(defs: Definitions, state: State, reading: Reading): string {
  const { step, place } = reading
  const which = repeatName(state, reading)
  const name = `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}${which === null ? '' : `, ${which}`}`
  const figure = (one: Reading) => `${bareReading(defs, one)} ${one.unit}`
  return `${name}: first ${figure(firstOf(state, reading))}, now ${figure(reading)}`
}

/** What was keyed to begin with, however often it was corrected since. */
function firstOf(state: State, reading: Reading): Reading {
  const before = (state.readings[reading.place] ?? []).find(({ seq }) => seq === reading.corrects)
  return before === undefined ? reading : firstOf(state, before)
}
