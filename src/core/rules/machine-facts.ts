// What a rule may know of the machine record, by name. A fact that is not on record is unknown, never a default.
import type { Value } from '../compute/computation.ts'
import { POCKET_FITTED } from '../cycle/pocket-words.ts'
import type { WrittenQuantity } from '../definition/common.ts'
import { PISTON_MATERIALS } from '../definition/limit-book.ts'
import type { Machine } from '../definition/machine.ts'
import { fromSi, type QuantityKind } from '../units/index.ts'
import type { NameType, Values } from './types.ts'

interface QuantityFact {
  readonly kind: QuantityKind
  readonly from: (machine: Machine) => WrittenQuantity | undefined
}

interface WordFact {
  readonly words: readonly string[]
  readonly from: (machine: Machine) => string | undefined
}

const QUANTITY_FACTS: Readonly<Record<string, QuantityFact>> = {
  nominal: { kind: 'length', from: (m) => m.bore.nominal },
  as_made_plus: { kind: 'length', from: (m) => m.bore.as_made?.plus },
  as_made_minus: { kind: 'length', from: (m) => m.bore.as_made?.minus },
  as_bored: { kind: 'length', from: (m) => m.bore.as_bored?.diameter },
  counterbore: { kind: 'length', from: (m) => m.bore.counterbore },
  stroke: { kind: 'length', from: (m) => m.bore.stroke },
  ring_travel_from: { kind: 'length', from: (m) => m.bore.ring_travel.from },
  ring_travel_to: { kind: 'length', from: (m) => m.bore.ring_travel.to },
  ring_differential: { kind: 'pressure-difference', from: (m) => m.service.ring_differential },
  barometer: { kind: 'pressure-absolute', from: (m) => m.site.barometer },
  piston_mass: { kind: 'mass', from: (m) => m.piston?.mass },
  piston_diameter: { kind: 'length', from: (m) => m.piston?.diameter },
  piston_length: { kind: 'length', from: (m) => m.piston?.length },
  rod_diameter: { kind: 'length', from: (m) => m.rod?.diameter },
  rod_length: { kind: 'length', from: (m) => m.rod?.length },
  rod_mass: { kind: 'mass', from: (m) => m.rod?.mass },
  ring_width: { kind: 'length', from: (m) => m.rings?.width },
  ring_radial: { kind: 'length', from: (m) => m.rings?.radial },
  ring_new_gap: { kind: 'length', from: (m) => m.rings?.new_gap },
  rider_thickness: { kind: 'length', from: (m) => m.rings?.rider_thickness },
  pocket_volume: { kind: 'volume', from: (m) => m.pocket?.volume },
  driver_rating: { kind: 'power', from: (m) => m.driver?.rating },
}

const WORD_FACTS: Readonly<Record<string, WordFact>> = {
  orientation: { words: ['horizontal', 'vertical'], from: (m) => m.cylinder.orientation },
  acting: { words: ['double', 'single'], from: (m) => m.cylinder.acting },
  jacket: { words: ['water', 'air', 'none'], from: (m) => m.cylinder.jacket },
  rings: { words: ['metallic', 'ptfe'], from: (m) => m.bore.rings },
  running_surface: { words: ['liner', 'solid_bore'], from: (m) => (m.bore.lined ? 'liner' : 'solid_bore') },
  piston_construction: { words: ['hollow', 'solid', 'unknown'], from: (m) => m.piston?.construction },
  piston_material: { words: PISTON_MATERIALS, from: (m) => m.piston?.material },
  ring_joint: { words: ['butt', 'step', 'angle_cut', 'segmental'], from: (m) => m.rings?.joint },
  pocket: { words: POCKET_FITTED, from: (m) => m.pocket?.kind },
  // Of a machine without a pocket nobody has to say where it is.
  pocket_end: {
    words: ['head', 'crank', 'none'],
    from: (m) => (m.pocket?.kind === 'none' ? 'none' : m.whole_compressor?.pocket?.end),
  },
  stages: {
    words: ['1', '2', '3', '4', '5', '6', '7', '8'],
    from: (m) => m.whole_compressor?.stages_in_all.toString(),
  },
}

/** Types of all facts, whatever the record holds: a procedure is checked without a machine. */
export const FACT_TYPES: ReadonlyMap<string, NameType> = new Map<string, NameType>([
  ...Object.entries(QUANTITY_FACTS).map(([name, { kind }]): [string, NameType] => [
    `machine.${name}`,
    { is: 'one', of: kind },
  ]),
  ...Object.entries(WORD_FACTS).map(([name, { words }]): [string, NameType] => [
    `machine.${name}`,
    { is: 'word', words },
  ]),
])

/** A figure of the record as its owner wrote it, by the name rules use behind `machine.`; undefined if not on record. */
export function writtenFact(machine: Machine, name: string): WrittenQuantity | undefined {
  return Object.hasOwn(QUANTITY_FACTS, name) ? QUANTITY_FACTS[name]?.from(machine) : undefined
}

/** The facts that are on record. */
export function factsOf(machine: Machine): Values {
  const facts = new Map<string, Value>()
  for (const [name, { kind, from }] of Object.entries(QUANTITY_FACTS)) {
    const written = from(machine)
    if (written !== undefined)
      facts.set(`machine.${name}`, { is: 'quantity', quantity: fromSi(kind, written.si) })
  }
  for (const [name, { from }] of Object.entries(WORD_FACTS)) {
    const word = from(machine)
    if (word !== undefined) facts.set(`machine.${name}`, { is: 'word', word })
  }
  return facts
}
