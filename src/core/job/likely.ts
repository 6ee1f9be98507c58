// What somebody may have meant who keyed a figure that cannot be right: slips of the fingers that would bring it where it
// fits. Shown and never taken. It stands with the engine, as what was shown goes on record with the doubt.
import type { ReadQuantity } from '../definition/instruments.ts'
import { formatNumber, quantity } from '../units/index.ts'
import type { Typed } from './entries.ts'
import { NOISE } from './plausible.ts'

/**
 * `swapped`: two figures next to each other changed round. `point`: the point lost, or in another place. `unit`: keyed in
 * another unit than the one assumed, of length (so off by 25.4 or 1000) or of temperature. `sign`: the minus lost, or one too many.
 */
type Slip = 'swapped' | 'point' | 'unit' | 'sign'

export interface Likely {
  readonly slip: Slip
  /** To be keyed in full, with its unit where that is not the one assumed. */
  readonly figure: string
  /** SI. */
  readonly si: number
}

/** More than these fit anything, so they tell nothing: then none is shown. Common practice, no source. */
const MOST_SHOWN = 2

/** Figures with more places than this are no gauge's. */
const MOST_DECIMALS = 9

/** How the site writes what is keyed. */
export interface Written {
  readonly kind: ReadQuantity
  readonly decimalComma: boolean
  /** Places behind the point that the instrument reads to, in the unit keyed. */
  readonly places: number
  /** A figure with fewer places is asked for again in full (places-sure.ts), so none is shown with fewer. */
  readonly isFull: boolean
}

/**
 * The likely meanings of what was keyed, at most two, each inside the window by `fits` (SI in); none where more would fit.
 * Nothing is rounded or worked out but by the slip itself: the figures are those that were keyed.
 */
export function likely(
  keyed: Typed,
  { kind, decimalComma, places, isFull }: Written,
  fits: (si: number) => boolean,
): readonly Likely[] {
  const figures = figuresOf(keyed)
  if (figures === null) return []
  const most = Math.max(places, decimalsIn(figures))
  const points = pointsMoved(figures)
    .filter((one) => decimalsIn(one) <= most)
    .map((one) => slipped('point', one, keyed.unit))
  const units = hasUnit(keyed.typed) ? [] : otherUnits(kind, keyed.unit)
  const inUnits = units.map((unit) => slipped('unit', figures, unit))
  const all = [
    ...swaps(figures).map((one) => slipped('swapped', one, keyed.unit)),
    // Where both come to the same, a point that was keyed is believed before the unit is.
    ...(figures.includes('.') ? [...inUnits, ...points] : [...points, ...inUnits]),
    slipped('sign', figures.startsWith('-') ? figures.slice(1) : `-${figures}`, keyed.unit),
  ]
  const fitting = all.filter(
    (one, n) =>
      Math.abs(one.si - keyed.si) > NOISE &&
      fits(one.si) &&
      all.findIndex((other) => Math.abs(other.si - one.si) <= NOISE) === n,
  )
  if (fitting.length > MOST_SHOWN) return []
  return fitting.map((one) => {
    const full = isFull && one.slip !== 'unit' ? inFull(one.figure, places) : one.figure
    return { ...one, figure: decimalComma ? full.replace('.', ',') : full }
  })
}

function decimalsIn(figures: string): number {
  return figures.split('.')[1]?.length ?? 0
}

/** `9.5020` of `9.502` where four places are read. */
function inFull(figures: string, places: number): string {
  return formatNumber(Number(figures), Math.max(places, decimalsIn(figures)))
}

/** `9.503 would fit; 9.053 has two figures changed round. ...` for each, and what to do; null where there is nothing to show. */
export function likelySentence(keyed: Typed, meant: readonly Likely[]): string | null {
  const [first, second] = meant
  if (first === undefined) return null
  const why = ({ slip }: Likely) => `${keyed.typed.trim()} ${SAYING[slip]}.`
  const also = second === undefined ? '' : ` So would ${second.figure}; ${why(second)}`
  const which = second === undefined ? 'that' : 'one of them'
  const full = second === undefined ? first.figure : 'that one'
  return `${first.figure} would fit; ${why(first)}${also} If ${which} is what you read: 2, then ${full} in full.`
}

const SAYING: Readonly<Record<Slip, string>> = {
  swapped: 'has two figures changed round',
  point: 'has its point lost or in another place',
  unit: 'was keyed without that unit',
  sign: 'has the other sign',
}

/** The plain figures as keyed, with every place and their sign; null where they are not told for certain. */
function figuresOf({ typed, value }: Typed): string | null {
  const decimals = /\d*[.,](\d+)/.exec(typed.normalize('NFKC'))?.[1]?.length ?? 0
  if (decimals > MOST_DECIMALS || !Number.isFinite(value)) return null
  const figures = formatNumber(value, decimals)
  return Number(figures) === value ? figures : null
}

function slipped(slip: Slip, figures: string, unit: string): Likely {
  const named = slip === 'unit' ? `${figures} ${unit}` : figures
  return { slip, figure: named, si: quantity(Number(figures), unit).si }
}

/** Every two figures next to each other changed round, the point staying where it is. */
function swaps(figures: string): string[] {
  const count = figures.replace(/[^\d]/g, '').length
  return Array.from({ length: Math.max(0, count - 1) }, (_, n) => swapped(figures, n)).filter(
    (one) => one !== figures && isPlain(one),
  )
}

/** The figures `n` and `n + 1`, from 0, changed round. Twice gives back what there was. */
export function swapped(figures: string, n: number): string {
  const places = [...figures].flatMap((sign, at) => (/\d/.test(sign) ? [at] : []))
  const [one, other] = [places[n], places[n + 1]]
  if (one === undefined || other === undefined) return figures
  const signs = [...figures]
  ;[signs[one], signs[other]] = [signs[other] ?? '', signs[one] ?? '']
  return signs.join('')
}

/** The point anywhere among the figures that were keyed, and one place off with a nought put in. */
function pointsMoved(figures: string): string[] {
  const sign = figures.startsWith('-') ? '-' : ''
  const digits = figures.replace(/[^\d]/g, '')
  const own = digits.length - (figures.split('.')[1]?.length ?? 0)
  const among = Array.from({ length: digits.length + 1 }, (_, n) => pointAt(digits, n))
  const beside = [pointAt(digits, own - 1), pointAt(digits, own + 1)]
  return [...new Set([...among, ...beside])].map((one) => sign + one).filter((one) => one !== figures)
}

/** `digits` with the point behind the first `n` of them; noughts are put in where it stands beside them. */
function pointAt(digits: string, n: number): string {
  const before =
    n === 0
      ? '0'
      : digits
          .slice(0, n)
          .padEnd(n, '0')
          .replace(/^0+(?=\d)/, '')
  const behind = digits.slice(n)
  return behind === '' ? before : `${before}.${behind}`
}

/** No nought stands before another figure of the whole: such a number cannot be keyed. */
function isPlain(figures: string): boolean {
  return !/^-?0\d/.test(figures)
}

function hasUnit(typed: string): boolean {
  return /[\p{L}"\u2033\u201d]/u.test(typed)
}

/** Units a figure is keyed in by mistake for the one assumed: of a length off by 25.4, by 1000, or by both at once never. */
function otherUnits(kind: ReadQuantity, unit: string): readonly string[] {
  if (kind === 'temperature') return { degF: ['degC'], degC: ['degF'] }[unit] ?? []
  if (kind !== 'length') return []
  return { in: ['mm', 'mil'], mm: ['in', 'um'], mil: ['um', 'in'], um: ['mil', 'mm'] }[unit] ?? []
}
