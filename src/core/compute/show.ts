// A computation as plain lines: the list of all, what one takes, and one worked out step by step.
import { asciiTwin, clean, widthOf, wrap } from '../lib/text.ts'
import { aKind, valueIn } from '../units/index.ts'
import type { Computation, Computed, Parameter, Value } from './computation.ts'
import { asTaken, figured, inBoth, trimmed } from './figures.ts'
import type { Group } from './registry.ts'
import { type Inputs, rangeWords } from './take.ts'

export interface ShowStyle {
  readonly width: number
  readonly ascii: boolean
}

/** Widest a line of these pages gets: longer ones are hard to follow back. */
const WIDEST = 100

/** What stands in front, and words beside it whose further lines keep clear of it. */
interface Row {
  readonly head: string
  readonly text: string
}

function plain(text: string): Row {
  return { head: '', text }
}

/** Names in one column, what belongs to each in the next. */
function column(pairs: readonly (readonly [string, string])[]): Row[] {
  const width = Math.max(0, ...pairs.map(([name]) => widthOf(name))) + 2
  return pairs.map(([name, text]) => ({ head: `  ${name.padEnd(width)}`, text }))
}

/** Groups with one line for each computation. */
export function showList(groups: readonly Group[], style: ShowStyle): string[] {
  const rows = column(groups.flatMap((g) => g.computations.map(({ name, title }) => [name, title] as const)))
  let done = 0
  const lines = groups.flatMap(({ title, computations }) => {
    const own = rows.slice(done, done + computations.length)
    done += computations.length
    return [plain(title), ...own, plain('')]
  })
  return set(
    [
      ...lines,
      plain('barover compute NAME               what it takes, with an example'),
      plain('barover compute NAME key=value ... works it out'),
    ],
    style,
  )
}

/** What one computation takes and gives, and an example to key. */
export function showUse(computation: Computation, example: readonly string[], style: ShowStyle): string[] {
  const { name, title, inputs, outputs } = computation
  const call = example.map((word) => (/[\s"]/.test(word) ? `"${word}"` : word)).join(' ')
  const named = (parameters: readonly Parameter[], isInput: boolean) =>
    column(parameters.map((p) => [p.name, `${p.says}${takes(p, isInput)}`] as const))
  return set(
    [
      ...[plain(`${title}  (${name})`), plain('')],
      ...[plain('Takes'), ...named(inputs, true), plain('')],
      ...[plain('Gives'), ...named(outputs, false), plain('')],
      ...(example.length === 0 ? [] : ['Example', `  barover compute ${name} ${call}`, ''].map(plain)),
      ...closing(computation),
    ],
    style,
  )
}

/** Title, inputs as understood, arithmetic step by step, result, warnings, validity, sources. */
export function showComputed(
  computation: Computation,
  inputs: Inputs,
  computed: Computed,
  style: ShowStyle,
  assumed: Readonly<Record<string, string>> = {},
): string[] {
  const { trace, warnings } = computed
  const steps = trace.flatMap(({ says, formula, worked }, i) => [
    plain(`${String(i + 1).padStart(4)}  ${says}`),
    plain(`        ${formula}`),
    plain(`        ${worked}`),
  ])
  return set(
    [
      ...[plain(`${computation.title}  (${computation.name})`), plain('')],
      ...[plain('Taken'), ...takenRows(computation, inputs, assumed), plain('')],
      ...[plain('Worked out'), ...steps, plain('')],
      ...[plain('Result'), ...resultRows(computation, computed), plain('')],
      ...(warnings.length === 0
        ? []
        : ['Beside it', ...warnings.map((said) => `  - ${said}`), ''].map(plain)),
      ...closing(computation),
    ],
    style,
  )
}

function takenRows(
  { inputs: declared }: Computation,
  inputs: Inputs,
  assumed: Readonly<Record<string, string>>,
): Row[] {
  const given = declared.filter(({ name }) => inputs[name] !== undefined)
  return column(
    given.map((p) => {
      const unit = assumed[p.name]
      const note = unit === undefined ? '' : `   (no unit keyed: taken as ${unit})`
      return [p.name, `${valueText(p, inputs[p.name], true)}${note}`] as const
    }),
  )
}

function resultRows({ outputs: declared }: Computation, { outputs }: Computed): Row[] {
  const given = declared.filter(({ name }) => outputs[name] !== undefined)
  const texts = given.map((p) => valueText(p, outputs[p.name], false))
  const width = Math.min(32, Math.max(0, ...texts.map(widthOf)))
  const names = Math.max(0, ...given.map(({ name }) => widthOf(name)))
  return given.map((p, i) => ({
    head: `  ${p.name.padEnd(names)}  ${(texts[i] ?? '').padEnd(width)}   `,
    text: p.says,
  }))
}

function closing({ validity, sources }: Computation): Row[] {
  return ['Holds for', `  ${validity}`, '', 'Sources', ...sources.map((source) => `  ${source}`)].map(plain)
}

/** What a parameter takes or gives, in brackets behind what it says. */
function takes({ type, optional }: Parameter, isInput: boolean): string {
  const may = optional !== true ? '' : isInput ? '; may be left out' : '; not always'
  if (type.is === 'word') return type.words.length === 0 ? '' : ` (${type.words.join(', ')}${may})`
  if (type.is === 'number') {
    const kind = type.whole === true ? 'whole number' : 'number'
    const range =
      !isInput || (type.least === undefined && type.most === undefined) ? '' : ` ${rangeWords(type)}`
    return ` (${kind}${range}${may})`
  }
  const unit = type.unit === '1' ? '' : `, ${type.unit} unless said`
  if (!isInput) return type.unit === '1' ? '' : ` (${type.unit}${may})`
  if (type.is === 'quantities') return ` (list of ${type.least} or more${unit}${may})`
  return ` (${aKind(type.kind)}${unit}${may})`
}

function valueText({ type }: Parameter, value: Value | undefined, isInput: boolean): string {
  if (value === undefined) return ''
  if (value.is === 'word') return value.word
  if (value.is === 'number') return isInput ? trimmed(value.number) : figured(value.number)
  const unit = type.is === 'quantity' || type.is === 'quantities' ? type.unit : undefined
  if (unit === undefined) throw new Error('a value does not fit what was declared for it')
  if (value.is === 'quantity') return isInput ? asTaken(value.quantity, unit) : inBoth(value.quantity, unit)
  const figures = value.quantities.map((q) => trimmed(valueIn(q, unit), isInput ? 8 : 5))
  return unit === '1' ? figures.join('  ') : `${figures.join('  ')} ${unit}`
}

/** Signs of the trade as letters, for a screen that shows nothing else. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/\u00b7/g, '.'],
  [/\u00d7/g, 'x'],
  [/\u00b0/g, 'deg '],
  [/\u00b1/g, '+-'],
  [/\u00b2/g, '^2'],
  [/\u00b3/g, '^3'],
  [/[\u00b5\u03bc]/g, 'u'],
  [/\u03c0/g, 'pi'],
  [/\u0394/g, 'd'],
  [/\u221a/g, 'sqrt'],
  [/\u2264/g, '<='],
  [/\u2265/g, '>='],
  [/\u2212/g, '-'],
]

function plainSigns(text: string): string {
  return SIGNS.reduce((so, [sign, letters]) => so.replace(sign, letters), asciiTwin(text))
}

/** Lines made fit for the screen: nothing unseen, nothing too wide, ASCII where asked. */
function set(rows: readonly Row[], style: ShowStyle): string[] {
  const width = Math.max(30, Math.min(style.width, WIDEST))
  return rows.flatMap((row) => {
    const [head, text] = [row.head, row.text].map((part) => clean(style.ascii ? plainSigns(part) : part))
    return setOne(head ?? '', text ?? '', width).map((line) => line.trimEnd())
  })
}

/** Where the head leaves the words too little room they go on below it. */
function setOne(head: string, text: string, width: number): string[] {
  const room = width - widthOf(head)
  if (head === '' || room < width / 4) return wrap(head + text, width, head === '' ? 2 : 4)
  const [first = '', ...further] = wrap(text, room)
  return [head + first, ...further.map((line) => ' '.repeat(widthOf(head)) + line)]
}
