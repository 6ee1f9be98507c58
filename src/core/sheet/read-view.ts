// A place being measured on the sheet: what to do there, its drawing with the key to it, and which reading is asked.
import { asKind, type Definitions, instrumentById } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { type Reading, type State, standing } from '../job/state.ts'
import { bareReading, instrumentName, nth, placeName, placeNumber } from '../talk/names.ts'
import { row, type SheetStyle } from './block.ts'
import { acrossHere, keyRows, LEGEND, placeDrawings, profileForms } from './drawing-rows.ts'
import type { PromptView } from './prompt-view.ts'
import { standardRows } from './standard-rows.ts'
import { whichGaugeRows } from './which-gauge.ts'

/** A place to be measured: what to do there, its drawing, and which reading of it is asked. */
export function readView(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'read' }>,
  style: SheetStyle,
): Partial<PromptView> {
  const { step } = asKind(prompt.step, 'read')
  const taken = standing(state, prompt.place.key)
  const instrument = instrumentById(defs, prompt.instrument)
  const how = instrument === undefined ? undefined : step.how[instrument.kind]
  const unit = instrument === undefined || instrument.kind === 'gas_meter' ? '' : instrument.unit
  const { drawings, strips } = placeDrawings(defs, state, prompt, style)
  return {
    margin: placeNumber(defs, prompt.step.id, prompt.place.key),
    title: placeName(defs, prompt.step.id, prompt.place.key),
    rows: [
      ...(step.text === undefined ? [] : [row(step.text)]),
      ...(how === undefined ? [] : [row(how)]),
      ...whichGaugeRows(defs, state, prompt.step),
      ...standardRows(defs, prompt.step, prompt.instrument),
    ],
    wordsKnown: prompt.place.number > 1 || taken.length > 0,
    drawings,
    strips,
    profiles: profileForms(defs, state, prompt.step.id, style),
    legend: style.linear === true || (drawings[0] ?? []).length < 2 ? [] : [row(LEGEND, 'faint')],
    key: style.linear === true ? [] : keyRows(drawings[0] ?? [], prompt.place.axis !== null),
    ask: [
      ...(style.linear === true ? [] : acrossHere(defs, state, prompt).map((text) => row(text))),
      row(readQuestion(defs, state, prompt, unit), 'strong'),
    ],
    unit,
    scan: true,
  }
}

/**
 * Which reading of its place is asked. Of those before only that they were taken, as they stand on the sheet above: what is
 * read next is read afresh. The instrument was named in full with the first.
 */
function readQuestion(
  defs: Definitions,
  state: State,
  { step, place, instrument }: Extract<Prompt, { kind: 'read' }>,
  unit: string,
): string {
  const taken = standing(state, place.key)
  if (taken.length === 0) return `Reading (${unit}) with ${instrumentName(defs, instrument)}`
  const { at_least: least, at_most: most } = asKind(step, 'read').step.repeats
  const isApart = taken.length >= least
  const of = isApart ? `at most ${most}` : String(least)
  const asked = `${nth(taken.length + 1)} of ${of}, afresh (${unit}) with ${instrument}`
  return `${takenText(defs, taken)}${isApart ? ', too far apart' : ''}; ${asked}`
}

/** `1st taken: 9.5041 in`, `Taken: 9.5068, 9.5021 in`. */
function takenText(defs: Definitions, taken: readonly Reading[]): string {
  const units = new Set(taken.map((r) => r.unit))
  const figures = taken.map((r, i) => {
    const hasUnit = units.size > 1 || i === taken.length - 1
    return hasUnit && r.unit !== '1' ? `${bareReading(defs, r)} ${r.unit}` : bareReading(defs, r)
  })
  return taken.length === 1 ? `1st taken: ${figures[0]}` : `Taken: ${figures.join(', ')}`
}
