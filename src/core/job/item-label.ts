// What a line of a gate is called in a sentence, and why a gate shut, in the job's own words.
import type { Evidence, EvidenceOf } from '../definition/evidence.ts'
import { list } from '../lib/wording.ts'
import { KIND_NAME } from '../units/index.ts'
import { type Definitions, gasLimitById } from './definitions.ts'
import { GAS_NAMES } from './evidence-gas.ts'
import { type GateStep, type Item, itemByKey, wantsAnother } from './gate.ts'
import { tellsOff } from './tells-off.ts'

const DEVICES = {
  permit: 'permit number',
  blind: 'blind',
  tag: 'tag',
  personal_lock: 'personal lock',
  part: 'part number',
} as const

/** `oxygen where people breathe`, `lock at main driver breaker, E-1`. */
const PLACES = {
  breathing_zone: 'where people breathe',
  in_the_opening: 'inside the opening',
  at_the_vent: 'at the vent',
} as const

export function itemLabel(defs: Definitions, item: Item): string {
  const { evidence } = item
  const id = evidence.id.replaceAll('_', ' ')
  switch (evidence.kind) {
    case 'locks':
      return `lock ${evidence.taken_off === undefined ? 'at' : 'off'} ${item.point?.name ?? ''}`
    case 'words':
    case 'wait':
      return id
    case 'witness':
      return 'witness'
    case 'measured':
      return measuredName(evidence)
    case 'numbers': {
      const device = DEVICES[evidence.of]
      if (wantsAnother(item)) return `${device} of somebody else`
      const off = tellsOff(evidence) ? ' off' : ''
      if (item.point !== null) return `${device}${off === '' ? ' at' : off} ${item.point.name}`
      if (item.person !== null) return `${device} of ${item.person}${off}`
      return `${placedDevice(evidence)}${off}`
    }
    case 'lift':
      return `${id}, ${item.part ?? ''}`
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      if (limit === undefined) return id
      return `${GAS_NAMES[limit.gas]} ${PLACES[limit.place]}`
    }
  }
}

/** Two blinds are two places: `suction blind`, as the procedure calls it; where that says no more than what it is, what it is. */
function placedDevice({ id, of }: EvidenceOf<'numbers'>): string {
  if (of !== 'blind' && of !== 'tag') return DEVICES[of]
  const place = id.split('_').filter((word) => word !== of && word !== 'off')
  return [...place, DEVICES[of]].join(' ')
}

export function keyLabel(defs: Definitions, gate: GateStep, key: string): string {
  const item = itemByKey(defs, gate, key)
  return item === null ? key : itemLabel(defs, item)
}

/** What of this lapses by time, named so that several items of one thing are said once. */
export function agedName(evidence: Evidence): string {
  if (evidence.kind === 'gas') return 'gas test'
  return evidence.kind === 'measured' ? measuredName(evidence) : evidence.id.replaceAll('_', ' ')
}

/** `gauge pressure, head-end space`. */
function measuredName({ quantity, place }: EvidenceOf<'measured'>): string {
  return `${KIND_NAME[quantity]}, ${place}`
}

/** Why a gate fell by time, naming each; nothing where it was gas alone, which its cause says already. */
export function staleWhy(stale: readonly { readonly evidence: Evidence }[]): { readonly why?: string } {
  if (stale.every(({ evidence }) => evidence.kind === 'gas')) return {}
  const names = (isPlan: boolean) => [
    ...new Set(
      stale
        .filter(({ evidence }) => (evidence.kind === 'lift') === isPlan)
        .map(({ evidence }) => `the ${agedName(evidence)}`),
    ),
  ]
  const aged = names(false)
  const plans = names(true)
  const clauses = [
    ...(aged.length === 0
      ? []
      : [`${list(aged)} ${aged.length === 1 ? 'is past its' : 'are past their'} life`]),
    ...(plans.length === 0 ? [] : [`${list(plans)} ${plans.length === 1 ? 'is' : 'are'} of another day`]),
  ]
  return { why: clauses.join('; ') }
}
