// What may be quoted to somebody who asks: every text of this job's steps, the limits that count for this machine, and the
// terms of the trade. Each passage stands as it was written; nothing of another job, machine or book is among them.
import { CHARACTERISTIC_IDS, type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import type { Evidence } from '../definition/evidence.ts'
import type { Instrument } from '../definition/instruments.ts'
import type { GasLimit } from '../definition/machine.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { itemLabel } from '../job/item-label.ts'
import { limitsFor } from '../job/limits.ts'
import type { Limit } from '../metrology/limit.ts'
import { formatQuantity, fromSi } from '../units/index.ts'
import { phrased } from './ask-words.ts'
import { GLOSSARY } from './glossary.ts'

export type PassageKind = 'term' | 'limit' | 'why' | 'hazard' | 'step'

export interface Passage {
  readonly id: string
  readonly kind: PassageKind
  /** Where it stands, as `Step 7, Bore, why`. */
  readonly from: string
  /** Sheet number of the step it stands in; null: in none. */
  readonly step: number | null
  /** What it is the passage of, where it has a name of its own: the term, what is limited; else empty. */
  readonly name: string
  /** The words, as they stand there. */
  readonly text: string
  /** Looked through too, and not quoted: the title over it, other words for it. */
  readonly about: string
  /** A limit from a book, used as the machine's own is silent: its caution goes with it. */
  readonly fallback: boolean
}

/** `fallback` is left out where it is none. */
type Bare = Omit<Passage, 'id' | 'fallback'> & { readonly fallback?: boolean }

export function passagesOf(defs: Definitions): readonly Passage[] {
  const all: Bare[] = [
    ...GLOSSARY.map(({ term, says }): Bare => {
      return {
        kind: 'term',
        from: `Terms of the trade, ${term}`,
        step: null,
        name: phrased(term),
        text: says,
        about: phrased(term),
      }
    }),
    ...CHARACTERISTIC_IDS.flatMap((id) => limitPassage(defs, id)),
    ...defs.machine.site.gas.limits.map((limit) => gasPassage(defs, limit)),
    ...defs.instruments.instruments
      .filter(({ kind }) => defs.seats.some((seat) => seat.kinds.includes(kind)))
      .flatMap(standardPassage),
    ...defs.steps.flatMap((placed) => stepPassages(defs, placed)),
  ]
  return all.map((one, i) => ({ fallback: false, ...one, id: String(i) }))
}

/** Only the limit that a verdict would be held against; where there is none, there is nothing to quote. */
function limitPassage(defs: Definitions, id: CharacteristicId): Bare[] {
  const limit = limitsFor(defs, [id])[id]
  if (limit === undefined) return []
  const { label, bound } = characteristicOf(id)
  const way = bound === 'at-most' ? 'at most' : 'at least'
  const rule = limit.rule === undefined ? '' : ` (${limit.rule})`
  const fallback = limit.from !== 'machine'
  const whose = fallback ? 'Fall-back limit, named by a lead' : 'Limit of this machine'
  return [
    {
      kind: 'limit',
      from: `${whose}, ${label}`,
      step: null,
      name: label,
      text: `${label}: ${way} ${limitFigure(defs, id, limit)}${rule}. Source: ${limit.source}`,
      about: `${id.replaceAll('-', ' ')} ${ALSO[id] ?? ''} limit`,
      fallback,
    },
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
function limitFigure({ machine }: Definitions, id: CharacteristicId, limit: Limit): string {
  const own = limit.from === 'machine' ? machine.limits.find((one) => one.characteristic === id) : undefined
  const text = own?.at_most?.text ?? own?.at_least?.text
  if (text !== undefined) return text
  const { kind } = characteristicOf(id)
  const decimals = kind !== 'length' ? undefined : limit.unit === 'in' ? 5 : 3
  return formatQuantity(fromSi(kind, limit.value), limit.unit, decimals ?? 1)
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

function gasPassage({ machine }: Definitions, limit: GasLimit): Bare {
  const { at_least: least, at_most: most } = limit
  const bounds = [
    ...(least === undefined ? [] : [`at least ${least.text}`]),
    ...(most === undefined ? [] : [`at most ${most.text}`]),
  ].join(', ')
  const { lel_basis: lel } = machine.site.gas
  const basis = limit.gas === 'flammable' ? ` of ${lel.gas}` : ''
  const name = `${GAS_WORDS[limit.gas]} ${GAS_PLACES[limit.place]}`
  return {
    kind: 'limit',
    from: `Gas limit of this site, ${name}`,
    step: null,
    name: GAS_WORDS[limit.gas],
    text: `${name}: ${bounds}${basis}, for ${limit.purpose}. Source: ${limit.source}`,
    about: `${limit.gas.replaceAll('_', ' ')} gas test air limit`,
  }
}

/** How big the standard of a gauge is, and how near to it the gauge has to read. */
function standardPassage(instrument: Instrument): Bare[] {
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

function stepPassages(defs: Definitions, placed: PlacedStep): Bare[] {
  const { step, number } = placed
  const from = `Step ${number}, ${step.title}`
  const about = [step.title, ...placed.inside.map((part) => part.step.title)].join(' ')
  const passage = (kind: PassageKind, what: string, text: string | undefined): Bare[] =>
    text === undefined
      ? []
      : [
          {
            kind,
            from: what === '' ? from : `${from}, ${what}`,
            step: number,
            name: '',
            text,
            about: `${about} ${what}`,
          },
        ]
  return [
    ...passage('step', '', step.text),
    ...passage('why', 'why', step.why),
    ...passage('hazard', 'hazard', step.hazard),
    ...passage('hazard', 'in trouble', step.trouble),
    ...(step.kind === 'confirm' ? passage('step', 'to be seen', step.seen) : []),
    ...(step.kind === 'read'
      ? Object.entries(step.how).flatMap(([kind, how]) =>
          passage('step', `how, with ${kind.replaceAll('_', ' ')}`, how),
        )
      : []),
    ...(step.kind === 'gate' ? step.evidence.flatMap((one) => evidencePassages(defs, one, passage)) : []),
  ]
}

function evidencePassages(
  defs: Definitions,
  evidence: Evidence,
  passage: (kind: PassageKind, what: string, text: string) => Bare[],
): Bare[] {
  if (evidence.kind === 'lift')
    return [evidence.load, evidence.rating, evidence.sling, evidence.inspected].flatMap((ask) =>
      passage('step', 'lift plan', ask),
    )
  const item = { key: evidence.id, evidence, point: null, person: null, part: null }
  const name = evidence.kind === 'locks' ? 'locks' : itemLabel(defs, item)
  return passage('step', name, evidence.ask)
}
