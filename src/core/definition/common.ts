// Pieces shared by the definition files a lead writes: identifiers, quantities as text, sources.
import { z } from 'zod'
import { aKind, findUnit, parseEntry, type QuantityKind, unitsOf } from '../units/index.ts'
import { quantityExample, quantityPattern } from './quantity-pattern.ts'

/** A quantity as an author wrote it. `si` is in the SI unit of its kind. */
export interface WrittenQuantity {
  readonly text: string
  readonly kind: QuantityKind
  readonly value: number
  readonly unit: string
  readonly si: number
}

/** Identifiers are also names in rules, so they follow the expression language: letters, digits, underscore. */
export const identifier = z
  .string()
  .regex(
    /^[a-z][a-z0-9_]*$/,
    'is not an identifier: small letters, digits and underscores, starting with a letter',
  )

/** Ids that appear on plates, stickers and sheets: capitals, digits, dashes. */
export const label = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/, 'is not a short label: letters, digits, dash, dot')

export const line = z
  .string()
  .min(1, 'is empty')
  .max(400, 'is too long for a screen')
  .refine(isPlain, 'holds control characters')
export const short = z
  .string()
  .min(1, 'is empty')
  .max(72, 'is longer than 72 characters')
  .refine(isPlain, 'holds control characters')

/** A file named beside the one it is named in. */
export const filePath = z
  .string()
  .min(1, 'is empty')
  .max(200, 'is longer than 200 characters')
  .refine(isPlain, 'holds control characters')

/** Words that stand where a source should and name none. */
const NO_SOURCE = /^(?:tbd|tba|tbc|todo|n\/?a|nil|none|no|unknown|same|see above|xx+|[\W_]+)\.?$/i

/** Where a figure comes from: something a stranger could look up, or the plain words that there is no source. */
export const source = line.refine((text) => !NO_SOURCE.test(text.trim()), 'names no source')

/** Control, bidirectional and zero-width characters could make a screen say other than the file. */
function isPlain(text: string): boolean {
  return !/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/.test(text)
}

/** A calendar day as YYYY-MM-DD, checked to exist. */
export const day = z
  .string()
  .meta({ pattern: '^[0-9]{4}-[0-9]{2}-[0-9]{2}$', examples: ['2026-03-31'] })
  .refine(isDay, 'is not a day written YYYY-MM-DD')

function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  if (parts === null) return false
  const [y, m, d] = [Number(parts[1]), Number(parts[2]), Number(parts[3])]
  const leap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0
  const lengths = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
  return m >= 1 && m <= 12 && d >= 1 && d <= (lengths[m - 1] ?? 0)
}

/** Sixties written with a colon as one number, for what may have been hours and minutes or minutes and seconds. */
function clock(text: string): number | undefined {
  const parts = /^\s*(\d{1,3}):([0-5]\d)\s*$/.exec(text)
  return parts === null ? undefined : Number(parts[1]) * 60 + Number(parts[2])
}

/** A quantity in a file carries its unit: `9.500 in`. A bare number is refused. */
export function written(kind: QuantityKind, options: { signed?: boolean } = {}) {
  const units = unitsOf(kind)
    .map((u) => u.symbol)
    .filter((symbol) => symbol !== '1')
  // For editors only; the reader below decides. `patternErrorMessage` is what two common editors show for a misfit.
  const input = z.string().meta({
    description: `${aKind(kind).replace(/^./, (first) => first.toUpperCase())} with its unit.`,
    pattern: quantityPattern(kind, options.signed ?? false),
    patternErrorMessage: `needs a figure and a unit: ${units.join(', ')}`,
    examples: [quantityExample(kind)],
  })
  return input.transform((text, ctx): WrittenQuantity => {
    const first = units[0] ?? ''
    // `params.sentence` tells a whole sentence from one that still needs the author's word in front.
    const problem = (message: string, sentence = false): WrittenQuantity => {
      ctx.addIssue({ code: 'custom', message, params: { sentence } })
      return z.NEVER
    }
    if (text.trim() === '') return problem('is empty')
    const unitPart = text.trim().replace(/^[+\-\u2212]?[\d.,\s]*/, '')
    if (kind === 'time' && clock(text) !== undefined)
      return problem(
        `'${text.trim()}' does not say of what; write ${clock(text)} s or ${clock(text)} min.`,
        true,
      )
    if (unitPart === '') return problem(`needs a unit: ${units.join(', ')}`)
    const entry = parseEntry(text, { kind, unit: first, signed: options.signed ?? false, what: 'this' })
    if (!entry.ok) return problem(entry.error.say.replace('this box takes', 'this takes'), true)
    // Figures of another width, for example, are read as figures and leave no unit behind.
    if (findUnit(unitPart, kind) === undefined)
      return problem(`has no unit that can be read: ${units.join(', ')}`)
    return { text, kind, value: entry.value.value, unit: entry.value.unit, si: entry.value.si }
  })
}

/** Where a figure comes from and who stands for it. */
export const provenance = {
  source: source.meta({
    description: 'Title, edition and page, table or clause the figure comes from.',
    examples: ['Machine book rev. 4, sheet 12'],
  }),
  approved_by: short.meta({ description: 'Who approved its use here.' }),
  since: day.meta({ description: 'Since when it is in force, YYYY-MM-DD.' }),
}

/** A coefficient of linear thermal expansion per kelvin, with its source. */
export const expansion = z.strictObject({
  per_kelvin: z.number().positive('is not above zero').max(4e-5, 'is too large for a metal').meta({
    description: 'Growth per unit length and kelvin, for example 11.5e-6 for steel.',
  }),
  u_per_kelvin: z
    .number()
    .positive('is not above zero')
    .max(1e-5, 'is too large to be of use')
    .optional()
    .meta({
      description:
        'Standard uncertainty (k = 1) of the coefficient per kelvin, where the table or certificate gives one. Left out: not counted.',
    }),
  source: source.meta({ description: 'Table or certificate the coefficient comes from.' }),
})

/** On procedure, machine, instruments and crew alike: such a file never serves a REAL job. */
export const invented = z
  .boolean()
  .optional()
  .meta({ description: 'true: made up for examples and practice; never a real job.' })

/** The two moments at which locks come off: those of pipes before gas is let in, those of what turns before the start. */
export const LOCK_ENDS = ['before_gas', 'before_start'] as const
