// Text of the sheet as it is said: figures one by one, so that a slip is heard, and signs and units in words.
import { boxesInWords } from '../sheet/linear.ts'
import { UNITS } from '../units/index.ts'

/** How each unit of the table is said behind a figure. A word of its own for each, so that no two sound alike. */
export const UNIT_WORDS: Readonly<Record<string, string>> = {
  in: 'inch',
  mm: 'millimetres',
  mil: 'thousandths of an inch',
  um: 'microns',
  ft: 'feet',
  m: 'metres',
  in2: 'square inches',
  mm2: 'square millimetres',
  m2: 'square metres',
  in3: 'cubic inches',
  ft3: 'cubic feet',
  cm3: 'cubic centimetres',
  mL: 'millilitres',
  L: 'litres',
  m3: 'cubic metres',
  deg: 'degrees of angle',
  rad: 'radians',
  psig: 'P S I gauge',
  barg: 'bar gauge',
  kPag: 'kilopascal gauge',
  MPag: 'megapascal gauge',
  psia: 'P S I absolute',
  bara: 'bar absolute',
  kPaa: 'kilopascal absolute',
  MPaa: 'megapascal absolute',
  psi: 'P S I',
  bar: 'bar',
  kPa: 'kilopascal',
  MPa: 'megapascal',
  Pa: 'pascal',
  degF: 'degrees Fahrenheit',
  degC: 'degrees Celsius',
  K: 'kelvin',
  'delta-degF': 'degrees Fahrenheit of difference',
  'delta-degC': 'degrees Celsius of difference',
  lbf: 'pounds force',
  kN: 'kilonewton',
  N: 'newton',
  'lbf.ft': 'pound force feet',
  'lbf.in': 'pound force inches',
  'N.m': 'newton metres',
  lb: 'pounds',
  kg: 'kilograms',
  g: 'grams',
  hp: 'horsepower',
  kW: 'kilowatt',
  W: 'watt',
  s: 'seconds',
  min: 'minutes',
  h: 'hours',
  'ft/min': 'feet a minute',
  'm/s': 'metres a second',
  rpm: 'turns a minute',
  '1/s': 'turns a second',
  cfm: 'cubic feet a minute',
  'm3/h': 'cubic metres an hour',
  'm3/s': 'cubic metres a second',
  '%vol': 'percent by volume',
  ppm: 'parts per million',
  '%LEL': 'percent of L E L',
  // A plain ratio has no unit to say.
  '1': '',
  '%': 'percent',
  'in/in': 'inch per inch',
}

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const

/** `nine point five zero three six`: a figure one digit at a time. */
export function digitByDigit(figure: string): string {
  const words = [...figure].flatMap((c) => {
    if (/\d/.test(c)) return [DIGITS[Number(c)] ?? '']
    return c === '.' || c === ',' ? ['point'] : c === '-' ? ['minus'] : []
  })
  return words.join(' ')
}

const escaped = (symbol: string) => symbol.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
const SYMBOLS = UNITS.map(({ symbol }) => symbol)
  .filter((symbol) => symbol !== '1')
  .sort((a, b) => b.length - a.length)
  .map(escaped)
  .join('|')

/** After a figure `in` is the unit, unless a word follows that only the other `in` goes with. */
const NO_INCH = '(?!(?<=\\bin) (?:a|an|the|each|every|one|all|any|this|that|its|it|line|turn|order)\\b)'
const FIGURE = '-?(?:\\d+(?:[.,]\\d+)?|\\.\\d+)'
const FIGURE_WITH_UNIT = new RegExp(`(?<![\\w.-])(${FIGURE}) ?(${SYMBOLS})(?![\\w%/])${NO_INCH}`, 'g')
const RANGE_TO_UNIT = new RegExp(`(?<![\\w.-])(${FIGURE}) to (?=${FIGURE} ?(?:${SYMBOLS})(?![\\w%/]))`, 'g')
const UNIT_IN_BRACKETS = new RegExp(`\\((${SYMBOLS})\\)`, 'g')
/** Units that are no word of the language, so that they are one wherever they stand. */
const BARE_UNIT = /(?<![\w%])(%vol|%LEL|psig|psia|psi|degF|degC|ppm|rpm|lbf|mm|kPag?)(?!\w)/g

type Sign = readonly [RegExp, string]

/** What has figures in it or could be taken for a tag. */
const ABBREVIATIONS: readonly Sign[] = [
  [/\bn\/a\b/gi, 'not applicable'],
  [/\bH2S\b/g, 'H two S'],
  [/\bO2\b/g, 'oxygen'],
  [/\bN2\b/g, 'nitrogen'],
  [/\bLEL\b/g, 'L E L'],
]

const SIGNS: readonly Sign[] = [
  [/\bHE\b/g, 'head end'],
  [/\bCE\b/g, 'crank end'],
  [/\band ?\/ ?or\b/gi, 'and or'],
  [/(?<=\d) ?\/ ?(?=\d)/g, ' stroke '],
  [/(?<=\p{L}) ?\/ ?(?=\p{L})/gu, ' or '],
  [/\u00b1/g, ' plus or minus '],
  [/\u00b0/g, ' degrees '],
  [/<=|\u2264/g, ' at most '],
  [/>=|\u2265/g, ' at least '],
  [/ < /g, ' under '],
  [/ > /g, ', '],
  [/ = /g, ' equals '],
  [/&/g, ' and '],
  [/\+/g, ' plus '],
  [/%/g, ' percent '],
  [/[()]/g, ', '],
  [/\.{3}|\u2026/g, ', '],
]

/** A number or tag with letters, `TC-401-1`: each letter and each digit by itself. */
const TAG = /(?<![\w-])[A-Z]{1,4}(?:-[A-Z0-9]+)*-?\d[A-Z0-9]*(?:-[A-Z0-9]+)*(?!\w)/g

function spelled(tag: string): string {
  return tag
    .split('-')
    .map((part) => [...part].map((c) => (/\d/.test(c) ? digitByDigit(c) : c)).join(' '))
    .join(', ')
}

/**
 * One line of plain words, that begins with a letter or a figure: no speech program can take it for an option or for a
 * sign of its own. `initials` are spelled, so that RO is not said as a word.
 */
export function inWords(text: string, initials: readonly string[] = []): string {
  let said = boxesInWords(text)
    .replace(/[\u00a0\s]+/g, (gap) => (gap.length > 1 ? '  ' : ' '))
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/[\u2013\u2014\u2212]/g, '-')
    .replace(/^ *(\d+) {2}/, '$1: ')
  said = said
    .replace(RANGE_TO_UNIT, (_all, figure: string) => `${digitByDigit(figure)} to `)
    .replace(
      FIGURE_WITH_UNIT,
      (_all, figure: string, unit: string) => `${digitByDigit(figure)} ${UNIT_WORDS[unit] ?? unit}`,
    )
    .replace(UNIT_IN_BRACKETS, (_all, unit: string) => `, ${UNIT_WORDS[unit] ?? unit},`)
    .replace(BARE_UNIT, (_all, unit: string) => UNIT_WORDS[unit] ?? unit)
  for (const [sign, words] of ABBREVIATIONS) said = said.replace(sign, words)
  said = said.replace(TAG, spelled)
  for (const id of initials) said = said.replace(new RegExp(`\\b${escaped(id)}\\b`, 'g'), [...id].join(' '))
  for (const [sign, words] of SIGNS) said = said.replace(sign, words)
  return said
    .replace(/\b(\d{4})-(\d\d)-(\d\d)\b/g, (_all, ...at: string[]) =>
      at.slice(0, 3).map(digitByDigit).join(', '),
    )
    .replace(/\b(\d\d):(\d\d)\b/g, (_all, h: string, m: string) => digitByDigit(h + m))
    .replace(/(?<![\w.])-?(?:\d+\.\d+|\.\d+)/g, digitByDigit)
    .replace(/(?<![\w.])-?\d{3,}(?!\w)/g, digitByDigit)
    .replace(/[^\p{L}\p{N} .,:;?!']/gu, ' ')
    .replace(/\s*,(?:\s*,)+/g, ',')
    .replace(/\s+([.,:;?!])/g, '$1')
    .replace(/\s+/g, ' ')
    .replace(/^[^\p{L}\p{N}]+/u, '')
    .trim()
}

/** Lines as sentences, one behind the other. */
export function asSentences(lines: readonly string[]): string {
  return lines
    .filter((line) => line !== '')
    .map((line) => (/[.?!:;,]$/.test(line) ? line : `${line}.`))
    .join(' ')
}
