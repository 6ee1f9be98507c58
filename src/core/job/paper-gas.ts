// A gas test as it stands on a sheet: the figure and the number of its meter, in whichever order they were written. What is out of its
// limit is told first and always, also where nobody wrote which meter read it.
import type { EvidenceOf } from '../definition/evidence.ts'
import type { GasMeter } from '../definition/instruments.ts'
import { unfitness } from './admit-people.ts'
import { type Definitions, instrumentById } from './definitions.ts'
import { methodFault, readGas } from './evidence-gas.ts'
import type { GateStep } from './gate.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { atNoon } from './paper-instrument.ts'
import { FRONT } from './paper-rows.ts'

interface GasLine {
  /** With its unit, where one stands there. Null: nothing there can be taken for one figure. */
  readonly figure: string | null
  /** The number of a meter of the register. */
  readonly meter: string | null
  /** What else has a digit in it: another meter, or a second figure. Nobody can tell what it says. */
  readonly odd: readonly string[]
}

const FIGURE = /^[<>+-]?\d/
const UNIT = /^(?:%|ppm|ppb|lel|vol|mg)/i

/** `20.9 G-7`, `G-7 20.9` and `20.9, G-7` are one thing. A comma inside a figure stays in it. */
export function gasOnSheet(defs: Definitions, text: string): GasLine {
  const all = text
    .trim()
    .split(/[\s;]+|,(?!\d)|(?<=[A-Za-z][\w-]*),/)
    .filter((word) => word !== '')
  const ids = defs.instruments.instruments.map(({ id }) => id.toUpperCase())
  const named = all.filter((word) => ids.includes(word.toUpperCase()))
  const meter = named.findLast((word) => /[A-Za-z]/.test(word)) ?? named.at(-1) ?? null
  const words = all.filter((_word, n) => meter === null || n !== all.lastIndexOf(meter))
  const at = words.findIndex((word) => FIGURE.test(word))
  const units = words.filter((word, n) => n !== at && UNIT.test(word))
  return {
    figure: at < 0 ? null : [words[at], ...units].join(' '),
    meter,
    odd: words.filter((word, n) => n !== at && !UNIT.test(word) && /\d/.test(word)),
  }
}

/** Why the line would have held, each a clause: its limit first. Empty where no gap can be told. */
export function gasFaults(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  evidence: EvidenceOf<'gas'>,
  { row }: SheetRow,
  text: string,
): string[] {
  const line = gasOnSheet(defs, text)
  const read = line.figure === null ? null : readGas(defs, evidence, line.figure)
  const outside =
    read === null || !read.ok
      ? [`${text} is no figure of it`]
      : read.value.outside === null
        ? []
        : [`${read.value.shown}, ${read.value.outside}`]
  const meter = meterOf(defs, paper, evidence, line)
  if (typeof meter === 'string') return [...outside, `${text}: ${meter}`]
  const day = rowOf(paper, null, FRONT.day)?.text ?? null
  const unfit = day === null ? 'no day on the sheet' : unfitness(defs, meter, atNoon(day))
  const blind =
    read?.ok === true
      ? methodFault(defs, read.value.limit, meter, oxygenOf(defs, paper, gate, evidence, row))
      : null
  return [
    ...outside,
    ...(unfit === null ? [] : [`${meter.id}: ${unfit}`]),
    ...(blind === null ? [] : [`${text}, ${blind}`]),
  ]
}

/** The meter of the line; where none stands there, the one on the front. A clause where nobody can tell. */
function meterOf(
  defs: Definitions,
  paper: PaperState,
  evidence: EvidenceOf<'gas'>,
  { meter, odd }: GasLine,
): GasMeter | string {
  if (odd.length > 0)
    return `what ${odd.join(', ')} is cannot be told, and it is no gas meter of the register`
  const id = (meter ?? rowOf(paper, null, `seat.${evidence.with}`)?.text)?.trim().toUpperCase()
  const listed = defs.instruments.instruments.find((one) => one.id.toUpperCase() === id)
  const named = listed === undefined ? undefined : instrumentById(defs, listed.id)
  return named?.kind === 'gas_meter' ? named : 'no gas meter of the register is named'
}

/** The oxygen on the same copy of the page, as a fraction; null where none can be read there. */
function oxygenOf(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  { oxygen }: EvidenceOf<'gas'>,
  row: string,
): number | null {
  if (oxygen === undefined) return null
  const copy = /#\d+$/.exec(row)?.[0] ?? ''
  const text = rowOf(paper, gate.id, `${oxygen}${copy}`)?.text ?? null
  const evidence = gate.step.evidence.find(({ id }) => id === oxygen)
  if (text === null || evidence?.kind !== 'gas') return null
  const { figure, odd } = gasOnSheet(defs, text)
  const read = figure === null || odd.length > 0 ? null : readGas(defs, evidence, figure)
  return read?.ok === true ? read.value.reading.si : null
}
