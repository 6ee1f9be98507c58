// What may be quoted of figures that stand in the machine record, its limit books and the register of instruments: limits with
// book and source, the sizes of the cylinder, the standards of its gauges.
import { type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import type { Instrument } from '../definition/instruments.ts'
import type { GasLimit } from '../definition/machine.ts'
import type { Definitions } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import type { Limit } from '../metrology/limit.ts'
import { formatQuantity, fromSi } from '../units/index.ts'
import type { Bare } from './passages.ts'

/** What a job judges, in the order of the verdicts; those that are still to come after sheet `from` before the others. */
export function judgedIds(defs: Definitions, from: number | null): CharacteristicId[] {
  const judged = defs.steps.flatMap(({ number, step }) => {
    if (step.kind !== 'judge') return []
    const ids: readonly CharacteristicId[] =
      step.compute === 'bore_form'
        ? step.against
        : step.compute === 'figures'
          ? step.figures.map((figure) => figure.characteristic)
          : []
    return [{ isPast: from !== null && number < from, ids }]
  })
  const ahead = judged.filter(({ isPast }) => !isPast)
  const past = judged.filter(({ isPast }) => isPast)
  return [...new Set([...ahead, ...past].flatMap(({ ids }) => ids))]
}

/** Only the limit that a verdict would be held against; where there is none, there is nothing to quote. */
export function limitPassage(defs: Definitions, id: CharacteristicId): Bare[] {
  const limit = limitsFor(defs, [id])[id]
  if (limit === undefined) return []
  const { label, bound } = characteristicOf(id)
  const way = bound === 'at-most' ? 'at most' : 'at least'
  const rule = limit.rule === undefined ? '' : ` (${limit.rule})`
  const fallback = limit.from !== 'machine'
  const whose = fallback ? 'Fall-back limit, named by a lead' : 'Limit of this machine'
  const judged = judgedIds(defs, null).includes(id)
  return [
    {
      kind: 'limit',
      from: `${whose}, ${label}${judged ? '' : ' (not judged in this job)'}`,
      step: null,
      name: label,
      limits: id,
      text: `${label}: ${way} ${limitFigure(defs, id, limit)}${rule}, beyond it ${limit.beyond}. Source: ${limit.source}`,
      about: `${id.replaceAll('-', ' ')} ${ALSO[id] ?? ''} limit`,
      fallback,
    },
  ]
}

/** What the cylinder was made to: sizes of its record, which bound nothing by themselves. */
export function sizePassages({ machine: { bore } }: Definitions): Bare[] {
  const size = (name: string, text: string, about: string): Bare => ({
    kind: 'size',
    from: `Machine record, ${name}`,
    step: null,
    name,
    text,
    about: `${about} size machine record`,
  })
  const made = bore.as_made
  return [
    size(
      'nominal bore',
      `Nominal bore: ${bore.nominal.text}${made === undefined ? '' : `, made to plus ${made.plus.text}, minus ${made.minus.text}. Source: ${made.source}`}`,
      'nominal bore diameter drawing new',
    ),
    ...(bore.counterbore === undefined
      ? []
      : [
          size(
            'counterbore size',
            `Counterbore: ${bore.counterbore.text}. It is larger by design, and no wear`,
            'counterbore diameter',
          ),
        ]),
    size('stroke', `Stroke: ${bore.stroke.text}`, 'length of stroke'),
  ]
}

/** What people say for it. */
const ALSO: Readonly<Partial<Record<CharacteristicId, string>>> = {
  'largest-diameter': 'bore size, bore diameter, bore worn',
  'ring-end-gap': 'gap of the ring',
  'ring-end-gap-least': 'gap of the ring',
  'ring-side-clearance': 'groove',
  'runout-horizontal': 'rod',
  'runout-vertical-deviation': 'rod',
  'out-of-round': 'bore round oval',
  taper: 'bore',
  spread: 'bore',
}

/** As the machine record writes it; a figure reckoned from a rule, in the shop's unit. */
export function limitFigure({ machine }: Definitions, id: CharacteristicId, limit: Limit): string {
  const own = limit.from === 'machine' ? machine.limits.find((one) => one.characteristic === id) : undefined
  const text = own?.at_most?.text ?? own?.at_least?.text
  if (text !== undefined) return text
  const { kind } = characteristicOf(id)
  const decimals = kind !== 'length' ? undefined : limit.unit === 'in' ? 5 : 3
  return formatQuantity(fromSi(kind, limit.value), limit.unit, decimals ?? 1)
}

/** Gas limits that a hold point of this job asks for. */
function gasLimitsAsked(defs: Definitions): string[] {
  return defs.steps.flatMap(({ step }) =>
    step.kind === 'gate' ? step.evidence.flatMap((one) => (one.kind === 'gas' ? [one.limit] : [])) : [],
  )
}

const GAS_PLACES = {
  breathing_zone: 'where people breathe',
  in_the_opening: 'inside the opening',
  at_the_vent: 'at the vent',
} as const

const GAS_WORDS = {
  oxygen: 'oxygen',
  flammable: 'flammables',
  flammable_in_inert: 'flammables in gas without air',
  hydrogen_sulfide: 'hydrogen sulfide, H2S',
} as const

export function gasPassage(defs: Definitions, limit: GasLimit): Bare {
  const { machine } = defs
  const { at_least: least, at_most: most } = limit
  const bounds = [
    ...(least === undefined ? [] : [`at least ${least.text}`]),
    ...(most === undefined ? [] : [`at most ${most.text}`]),
  ].join(', ')
  const { lel_basis: lel } = machine.site.gas
  const basis = limit.gas === 'flammable' ? ` of ${lel.gas}` : ''
  const name = `${GAS_WORDS[limit.gas]} ${GAS_PLACES[limit.place]}`
  const isAsked = gasLimitsAsked(defs).includes(limit.id)
  return {
    kind: 'limit',
    from: `Gas limit of this site, ${name}${isAsked ? '' : ' (not asked in this job)'}`,
    step: null,
    name: GAS_WORDS[limit.gas],
    text: `${name}: ${bounds}${basis}, for ${limit.purpose}. Source: ${limit.source}`,
    about: `${limit.gas.replaceAll('_', ' ')} gas test air limit`,
    elsewhere: !isAsked,
  }
}

/** How big the standard of a gauge is, and how near to it the gauge has to read. */
export function standardPassage(instrument: Instrument): Bare[] {
  if (!('set_check' in instrument) || instrument.set_check === undefined) return []
  const { standard, size, within, source } = instrument.set_check
  return [
    {
      kind: 'limit',
      from: `Register of instruments, setting standard of ${instrument.id}`,
      step: null,
      name: 'standard',
      text: `${standard}: ${size.text}, to be read within ${within.text}. Source: ${source}`,
      about: `setting standard size set-check ${instrument.id}`,
    },
  ]
}
