// What is asked of a sheet that is keyed in: the box as the paper calls it, and how it is keyed.
import { asKind, type Definitions, gasLimitById, instrumentById } from '../job/definitions.ts'
import { GAS_UNITS } from '../job/evidence-gas.ts'
import type { Prompt } from '../job/next.ts'
import { NOT_ENFORCED_BY, rowOf } from '../job/paper.ts'
import { paperGates } from '../job/paper-gate.ts'
import { sheetInstrument } from '../job/paper-instrument.ts'
import type { SheetBox } from '../job/paper-rows.ts'
import { type State, standing } from '../job/state.ts'
import { inInk } from '../lib/in-ink.ts'
import { list } from '../lib/wording.ts'
import { bareReading, nth, placeName, placeNumber } from '../talk/names.ts'
import { type Row, row } from './block.ts'
import { observeRows } from './numbered.ts'
import type { PromptView } from './prompt-view.ts'

type SheetPrompt = Extract<Prompt, { kind: 'sheet' | 'sheet-doubt' | 'sheet-sign' }>

export function sheetView(defs: Definitions, state: State, prompt: SheetPrompt): Partial<PromptView> {
  switch (prompt.kind) {
    case 'sheet':
      return boxView(defs, state, prompt.box)
    case 'sheet-doubt': {
      const { doubt, placed } = prompt
      return {
        margin: placeNumber(defs, placed.id, doubt.place),
        title: placeName(defs, placed.id, doubt.place),
        ask: [
          row(`${doubt.typed.trim()} is ${doubt.why}.`, 'caution'),
          ...(doubt.shown === undefined || doubt.seq === state.seq ? [] : [row(doubt.shown, 'faint')]),
          row('1  keyed wrong: key it again'),
          row('2  it is what the sheet says: kept as it stands'),
          row('3  it cannot be read: no value'),
        ],
      }
    }
    case 'sheet-sign':
      return prompt.as === 'keyed'
        ? {
            title: 'All of the sheet is keyed',
            rows: [row(`From paper: ${NOT_ENFORCED_BY}.`)],
            ask: [
              row(
                `It stands here as it stands on the paper: initials of who keyed it${keyersText(state)}`,
                'strong',
              ),
            ],
          }
        : {
            title: 'The sheet is compared',
            rows: [
              row('A lead who keyed none of it holds the paper against show, and signs for what is decided.'),
            ],
            ask: [row('Compared with the paper: initials of that lead', 'strong')],
          }
  }
}

/** `, RO or ML`. */
function keyersText({ paper }: State): string {
  const keyers = paper?.keyers ?? []
  return keyers.length === 0 ? '' : `, ${list(keyers, 'or')}`
}

const HOW: Readonly<Record<SheetBox['takes'], string>> = {
  words: 'As it stands; - where it is blank',
  copy: '1 there is one, filled in again; - there is none',
  day: 'As 2026-03-14; - where it is blank',
  line: 'Time, initials, then what it says, as 06:52 RO L-101; - alone where all of it is blank',
  done: 'Time and initials, as 06:52 RO; - where the box is blank',
  seen: 'Time, initials, the number ticked and the words beside it, as 06:52 RO 2 scored; - where nothing is',
  place: 'As 06:52 RO, its figures after that; - for what is blank',
  thing:
    'When it was placed and by whom, then what and where, as 07:10 RO sling on the head; - where the line is blank',
  figure: 'As it stands; - for blank, ? where it cannot be read',
}

function boxView(defs: Definitions, state: State, box: SheetBox): Partial<PromptView> {
  const { placed, takes, label } = box
  const base = {
    margin: placed === null ? '' : String(placed.number),
    title: placed === null ? 'Front and end of the sheet' : placed.step.title,
    titleMayShorten: true,
  }
  if (takes === 'figure') return { ...base, ...figureView(defs, state, box) }
  const list = takes === 'seen' && placed !== null ? observeRows(asKind(placed, 'observe').step) : []
  const untick = placed?.step.kind === 'confirm' ? [row('Signed and not ticked: 06:52 RO not ticked')] : []
  const asked = takes === 'place' ? `Time and initials of the line: ${label}` : label
  const line = lineRows(defs, box)
  if (line !== null) return { ...base, ask: [...line, row(box.how ?? HOW[takes], 'faint')] }
  return { ...base, ask: [...list, ...untick, row(asked, 'strong'), row(box.how ?? HOW[takes], 'faint')] }
}

/** A line of a hold point under the number and with the words that stand on the paper, and the unit of its figure. Null: it is none. */
function lineRows(defs: Definitions, { placed, item, label }: SheetBox): Row[] | null {
  if (placed?.step.kind !== 'gate' || item === undefined) return null
  const { evidence } = item
  const number = placed.step.evidence.findIndex(({ id }) => id === evidence.id) + 1
  const gas = evidence.kind === 'gas' ? gasLimitById(defs, evidence.limit)?.gas : undefined
  const unit = gas === undefined ? '' : `, ${GAS_UNITS[gas]}`
  return [
    ...('ask' in evidence ? [row(`${number}  ${inInk(evidence.ask)}`)] : []),
    row(`Line ${number}, ${label}${unit}`, 'strong'),
  ]
}

function figureView(defs: Definitions, state: State, { placed, place }: SheetBox): Partial<PromptView> {
  if (placed === null || place === undefined || state.paper === null) return {}
  const found = sheetInstrument(defs, state, state.paper, placed)
  const instrument = found.ok ? instrumentById(defs, found.id) : undefined
  const unit = instrument === undefined || instrument.kind === 'gas_meter' ? '' : instrument.unit
  const taken = standing(state, place.key)
  const before = taken.length === 0 ? '' : `${taken.map((one) => bareReading(defs, one)).join(', ')} keyed; `
  const what = `${before}the ${nth(taken.length + 1)} figure${unit === '' ? '' : ` (${unit})`}`
  return {
    margin: placeNumber(defs, placed.id, place.key),
    title: placeName(defs, placed.id, place.key),
    ask: [
      ...(found.ok ? [] : [row(`No value: ${found.why}. Key it as words all the same.`, 'caution')]),
      row(what, 'strong'),
      row(HOW.figure, 'faint'),
    ],
    unit,
  }
}

/** What was decided on paper, before a lead signs for it. */
export function decidedOnSheet({ paper }: State, step: string): Row[] {
  const written = paper === null ? undefined : rowOf(paper, step, 'decision')
  if (written === undefined) return []
  const says = written.text === null ? 'nothing' : `${written.who ?? 'nobody'}: ${written.text}`
  return [row(`On the sheet stands: ${says}`)]
}

/** A lead who decides from paper is told before it where the sheet would have held the job: no hold point of it was ever open here. */
export function wouldHaveHeld(defs: Definitions, state: State): Row[] {
  if (state.paper === null) return []
  return paperGates(defs, state, state.paper).flatMap(({ gate, why }) => {
    const [first, ...more] = why
    if (first === undefined) return []
    const rest = more.length === 0 ? '' : ` And ${more.length} more: barover review ${state.job}.`
    return [
      row(
        `On paper ${gate.number} ${gate.step.title} WOULD HAVE HELD: ${first.replace(/\.+$/, '')}.${rest}`,
        'caution',
      ),
    ]
  })
}
