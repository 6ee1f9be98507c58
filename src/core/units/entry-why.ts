// Why an entry was refused, as near to what the person did as can be told. Nothing here ever accepts anything.
import { refuse } from '../lib/result.ts'
import { quoted, type Refused } from './entry-text.ts'
import { aKind, KIND_NAME } from './kinds.ts'
import { findUnit, type Unit, unitsOf } from './unit-table.ts'

/** For text that does not begin with a number. */
export function explainNoNumber(text: string, plain: string): Refused {
  const word = quoted(text)
  if (/^[+\-.,]+$/.test(plain)) {
    return refuse('no-figures', `${word} has no figures in it; key the figures you read.`)
  }
  const letter = lookAlike(plain)
  if (letter !== undefined) return refuseLookAlike(word, letter)
  if (/^[+\-\u00b1\u2010-\u2015\ufe63]/.test(plain)) return refuseSign(word)
  if (/^\D+\d/.test(plain) && findUnit(/^[^\d+\-.,]+/.exec(plain)?.[0] ?? '') !== undefined) {
    return refuse('unit-first', `${word} has the unit in front; key the number first, then the unit.`)
  }
  return refuse('not-a-number', `${word} is not a number; key the figures you read.`)
}

/** For a number followed by something that is no unit of this box; undefined if that can only be a wrong unit. */
export function explainRest(text: string, plain: string, rest: string): Refused | undefined {
  const word = quoted(text)
  if (/^[+-]?0[xX]/.test(plain)) {
    return refuse('hex', `${word} is not a plain decimal number; key it with the figures 0 to 9.`)
  }
  const letter = lookAlike(plain)
  if (letter !== undefined) return refuseLookAlike(word, letter)
  if (/^[eE] ?[+-]?\d/.test(rest)) {
    return refuse('exponent', `${word} is in powers of ten; write it out in full.`)
  }
  if (/^[.,]?\d|^['_\u2019]\d/.test(rest)) {
    return refuse('space', `${word} has a gap or mark between its figures; key one number without gaps.`)
  }
  if (/^[+\-\u00b1\u2010-\u2015\ufe63]/.test(rest)) return refuseSign(word)
  const first = /^(\S+) /.exec(rest)?.[1] ?? /^([^\d+\-.,]+)[\d+\-.,]/.exec(rest)?.[1]
  if (findUnit(rest) === undefined && first !== undefined && findUnit(first) !== undefined) {
    return refuse('extra', `${word} goes on after the unit; key one number and one unit.`)
  }
  return undefined
}

/** For a known unit of another kind, a pressure that does not say its reference, or a unit nobody knows. */
export function refuseUnit(rest: string, assumed: Unit): Refused {
  const word = quoted(rest)
  const takes = `this box takes ${aKind(assumed.kind)}: ${unitList(assumed)}`
  const found = findUnit(rest)
  if (found === undefined) return refuse('unit-unknown', `${word} is not a unit known here; ${takes}.`)
  const needsReference = assumed.kind === 'pressure-gauge' || assumed.kind === 'pressure-absolute'
  if (found.kind === 'pressure-difference' && needsReference) {
    return refuse('unit-bare-pressure', `${word} does not say gauge or absolute; ${takes}.`)
  }
  return refuse('unit-kind', `${word} is ${aKind(found.kind)}; ${takes}.`)
}

/** The assumed unit first, then the others of its kind. The plain ratio is named by leaving the unit out. */
function unitList(assumed: Unit): string {
  const others = unitsOf(assumed.kind).filter((unit) => unit !== assumed)
  const names = [assumed, ...others].map((unit) => (unit.symbol === '1' ? 'no unit' : unit.symbol))
  const last = names.pop() ?? KIND_NAME[assumed.kind]
  return names.length === 0 ? last : `${names.join(', ')} or ${last}`
}

/** The first letter standing where a figure belongs, if all else before the unit is figures and marks. */
function lookAlike(plain: string): string | undefined {
  const parts = /^[+-]?([\d.,OoIl|]+)(.*)$/s.exec(plain)
  const [, body = '', rest = ''] = parts ?? []
  // A word of such letters alone is none that was meant for a figure.
  const letter = /\d/.test(body) || plain.length === 1 ? /[OoIl|]/.exec(body)?.[0] : undefined
  const isWhole = rest === '' || findUnit(rest) !== undefined
  return isWhole ? letter : undefined
}

function refuseLookAlike(word: string, letter: string): Refused {
  if (letter === '|') return refuse('look-alike', `${word} has an upright stroke in it; key the figure 1.`)
  const figure = letter.toUpperCase() === 'O' ? 0 : 1
  return refuse('look-alike', `${word} has the letter ${letter} in it; key the figure ${figure}.`)
}

function refuseSign(word: string): Refused {
  return refuse(
    'sign',
    `${word} has a sign out of place; key one number, with one sign at most, in front of it.`,
  )
}
