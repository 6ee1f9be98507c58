// What a quantity looks like as text, as a pattern for editors: figures, then one of the units of its kind. An editor
// thereby marks a missing unit while it is typed; the last word has the reader of entries in src/core/units.
import { type QuantityKind, unitsOf } from '../units/index.ts'

/** Everything ordinary that the reader takes, and no bare figure. Anchored; plain enough for any JSON Schema reader. */
export function quantityPattern(kind: QuantityKind, signed: boolean): string {
  const names = unitsOf(kind)
    .filter((unit) => unit.symbol !== '1')
    .flatMap((unit) => [unit.symbol, ...unit.aliases])
  const sign = signed ? '[+\\-\\u2212]?' : '\\+?'
  return `^ *${sign}(?:(?:0|[1-9][0-9]*)(?:\\.[0-9]+)?|\\.[0-9]+)(?:${names.map(unitPattern).join('|')}) *$`
}

/** One example, with the unit named first for its kind. */
export function quantityExample(kind: QuantityKind): string {
  return `${EXAMPLE_FIGURE[kind] ?? '1.5'} ${unitsOf(kind).find((unit) => unit.symbol !== '1')?.symbol ?? ''}`
}

const EXAMPLE_FIGURE: Readonly<Partial<Record<QuantityKind, string>>> = {
  length: '9.500',
  temperature: '68',
  'temperature-difference': '1',
  'pressure-absolute': '14.7',
  'pressure-difference': '125',
  time: '1800',
  concentration: '19.5',
  'lel-fraction': '10',
  ratio: '70',
}

/** Case is forgiven, as the reader forgives it. A unit that begins with a figure needs its gap. */
function unitPattern(name: string): string {
  const letters = [...name].map((character) => {
    const [lower, upper] = [character.toLowerCase(), character.toUpperCase()]
    if (lower !== upper && lower.length === 1 && upper.length === 1) return `[${lower}${upper}]`
    if (character === ' ') return ' +'
    return /[.*+?^${}()|[\]\\/]/.test(character) ? `\\${character}` : character
  })
  return `${/^\d/.test(name) ? ' +' : ' *'}${letters.join('')}`
}
