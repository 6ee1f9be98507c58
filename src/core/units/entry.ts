// What a person typed becomes one number with one unit, knowingly, or is refused in one sentence. Nothing is guessed:
// never NaN, never a zero for something unread, never a comma taken one way when it can be read two.
import { ok, type Result, refuse } from '../lib/result.ts'
import { plainText, quoted, type Refused, refuseCharacters, shown } from './entry-text.ts'
import { explainNoNumber, explainRest, refuseUnit } from './entry-why.ts'
import type { QuantityKind } from './kinds.ts'
import { quantity } from './quantity.ts'
import { findUnit, type Unit, unitNamed } from './unit-table.ts'

export interface EntryOptions {
  readonly kind: QuantityKind
  /** The unit assumed when none is typed, and shown beside the box. Must be of `kind`. */
  readonly unit: string
  /** May be below zero. Off unless said: a size cannot be. Temperatures and vacuum need it on. @default false */
  readonly signed?: boolean
  /** The site writes decimals with a comma; see `readFigures`. @default false */
  readonly decimalComma?: boolean
  /** What is being keyed, with its article, for the sentence: `a diameter`. */
  readonly what?: string
}

export interface Entry {
  /** Exactly what was typed. */
  readonly typed: string
  /** The number in `unit`. */
  readonly value: number
  /** Symbol of the unit typed, or of the assumed one. */
  readonly unit: string
  /** The same in the SI unit of the kind. */
  readonly si: number
  /** Decimals typed: 9.50 has two. */
  readonly decimals: number
}

/** A double holds 15 decimal figures faithfully, and no instrument reads more. */
const MAX_FIGURES = 15

/**
 * Reads one entry. Refusal codes: empty, too-long, character, digits, fraction, no-figures, not-a-number, look-alike,
 * exponent, hex, space, sign, comma, point, points, unfinished, spare-zero, too-many-figures, unit-first, extra,
 * unit-unknown, unit-kind, unit-bare-pressure, negative, impossible. Throws only on options that are wrong: a bug.
 */
export function parseEntry(text: string, options: EntryOptions): Result<Entry> {
  const assumed = unitNamed(options.unit)
  if (assumed?.kind !== options.kind) throw new Error(`"${options.unit}" is not a unit of ${options.kind}`)
  const unreadable = refuseCharacters(text)
  if (unreadable !== undefined) return unreadable
  const plain = plainText(text)
  const parts = /^([+-]?)([\d.,]*\d[\d.,]*)( *)(.*)$/su.exec(plain)
  if (parts === null) return explainNoNumber(text, plain)
  const [, sign = '', body = '', gap = '', rest = ''] = parts
  const unit = readUnit(text, plain, gap, rest, assumed)
  if ('ok' in unit) return unit
  const figures = readFigures(text, sign, body, options.decimalComma ?? false)
  if (!figures.ok) return figures
  if (sign === '-' && options.signed !== true) return refuseNegative(text, options.what)
  return finish(text, sign, figures.value, unit)
}

function readUnit(text: string, plain: string, gap: string, rest: string, assumed: Unit): Unit | Refused {
  if (rest === '') return assumed
  // A unit that starts with a figure needs its gap (25 1/s), and the plain ratio 1 is never typed: `5 1` is two numbers.
  const canBeUnit = !/^\d/.test(rest) || (gap !== '' && rest.startsWith('1/'))
  const found = canBeUnit ? findUnit(rest, assumed.kind) : undefined
  // `5l` may be 51 or 5 L.
  const isLookAlike = gap === '' && rest === 'l'
  if (found !== undefined && !isLookAlike) return found
  return explainRest(text, plain, rest) ?? refuseUnit(rest, assumed)
}

/**
 * The figures as plain `123.45`, or the reason not. With a decimal point in use any comma is refused, since 9,503 is
 * 9.503 to one person and 9503 to another. With `decimalComma` the comma is the decimal mark: 9,503 is 9.503. A point
 * is then taken for the decimal mark too (the gauge shows one) unless it could mark thousands: one to three figures,
 * no leading zero, then exactly three (9.503). 0.503, .503, 9.50, 9.5030 and 1234.567 cannot, and are taken.
 */
function readFigures(text: string, sign: string, body: string, decimalComma: boolean): Result<string> {
  const word = quoted(text)
  const mark = decimalComma ? 'comma' : 'point'
  const marks = body.replace(/\d/g, '')
  if (decimalComma && /^[1-9]\d{0,2}\.\d{3}$/.test(body)) {
    const [whole = '', part = ''] = body.split('.')
    const readings = `${sign}${whole},${part} or ${sign}${whole}${part}`
    return refuse('point', `${word} could be ${readings}; key it in full without a point.`)
  }
  if (marks.includes(',') && !(decimalComma && marks === ',')) return refuseComma(word, sign, body, mark)
  if (marks.length > 1) return refuse('points', `${word} has more than one point; key it with one ${mark}.`)
  const figures = body.replace(',', '.')
  if (figures.endsWith('.')) {
    return refuse('unfinished', `${word} stops at the ${mark}; key the figures after it, or leave it out.`)
  }
  if (/^0\d/.test(figures)) {
    return refuse(
      'spare-zero',
      `${word} starts with a spare zero; key it in full with the ${mark} in its place.`,
    )
  }
  if (figures.replace('.', '').replace(/^0+/, '').length > MAX_FIGURES) {
    return refuse(
      'too-many-figures',
      `${word} has more than ${MAX_FIGURES} figures; key what the instrument shows.`,
    )
  }
  return ok(figures)
}

/** Both readings are shown and neither is taken: decisions, item 17. */
function refuseComma(word: string, sign: string, body: string, mark: string): Refused {
  const parts = /^([1-9]\d*),(\d+)$/.exec(body)
  if (parts === null || mark === 'comma') {
    const right = mark === 'comma' ? 'one comma and no other mark' : 'a point and no comma'
    return refuse('comma', `${word} has its marks in doubt; key it in full with ${right}.`)
  }
  const readings = `${sign}${parts[1]}.${parts[2]} or ${sign}${parts[1]}${parts[2]}`
  return refuse('comma', `${word} could be ${readings}; key it in full without a comma.`)
}

function refuseNegative(text: string, what: string | undefined): Refused {
  const subject =
    what === undefined ? 'this box takes nothing below zero' : `${shown(what, 40)} cannot be below zero`
  return refuse(
    'negative',
    `${quoted(text)} has a minus, and ${subject}; read it again and key what you see.`,
  )
}

function finish(text: string, sign: string, figures: string, unit: Unit): Result<Entry> {
  const size = Number(figures)
  const value = sign === '-' && size !== 0 ? -size : size
  const { si } = quantity(value, unit.symbol)
  if (unit.kind === 'temperature' && si < 0) {
    return refuse('impossible', `${quoted(text)} is below absolute zero; read it again and key what you see.`)
  }
  if (unit.kind === 'pressure-absolute' && si < 0) {
    return refuse('impossible', `${quoted(text)} is below a full vacuum; read it again and key what you see.`)
  }
  const decimals = figures.includes('.') ? figures.length - figures.indexOf('.') - 1 : 0
  return ok({ typed: text, value, unit: unit.symbol, si, decimals })
}
