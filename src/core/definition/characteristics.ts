// What a limit can bound, by name. A limit in a record, a rule in a book and a figure in a procedure meet here, so that none
// of them can stand for another: each has one kind of quantity and bounds one way.
import type { QuantityKind } from '../units/index.ts'

export interface Characteristic {
  /** As the sheet calls it; at most 24 characters. */
  readonly label: string
  readonly kind: QuantityKind
  readonly bound: 'at-most' | 'at-least'
}

const most = (label: string, kind: QuantityKind = 'length'): Characteristic => ({
  label,
  kind,
  bound: 'at-most',
})
const least = (label: string, kind: QuantityKind = 'length'): Characteristic => ({
  label,
  kind,
  bound: 'at-least',
})

/** Those of a bore's form, worked out by the program itself (`compute: bore_form`). */
export const FORM_CHARACTERISTICS = ['out-of-round', 'taper', 'spread', 'largest-diameter'] as const

export const CHARACTERISTICS = {
  'out-of-round': most('out of round'),
  taper: most('taper'),
  spread: most('spread of all'),
  'largest-diameter': most('largest'),
  ridge: most('ridge'),
  'liner-interference': most('liner interference'),
  'liner-interference-least': least('liner interference'),
  'ring-end-gap': most('ring end gap'),
  'ring-end-gap-least': least('ring end gap'),
  'ring-side-clearance': most('ring side clearance'),
  'ring-side-clearance-least': least('ring side clearance'),
  'ring-radial-thickness-least': least('ring radial thickness'),
  'ring-groove-depth-least': least('ring below its land'),
  'rider-clearance': most('rider clearance'),
  'rider-clearance-least': least('rider clearance'),
  'rider-stands-proud-least': least('rider stands proud'),
  'piston-clearance': most('piston clearance'),
  'piston-clearance-least': least('piston clearance'),
  'piston-bore-oversize': most('rod bore oversize'),
  'piston-face-squareness': most('piston face squareness'),
  'rod-undersize': most('rod undersize'),
  'rod-out-of-round': most('rod out of round'),
  'rod-taper': most('rod taper'),
  'rod-straightness': most('rod straightness'),
  'rod-fit-undersize': most('piston fit undersize'),
  'rod-thread-runout': most('thread runout'),
  'rod-shoulder-squareness': most('shoulder squareness'),
  'nut-torque': most('nut torque', 'torque'),
  'nut-torque-least': least('nut torque', 'torque'),
  'nut-angle': most('nut angle', 'angle'),
  'nut-angle-least': least('nut angle', 'angle'),
  'nut-stretch': most('stretch'),
  'nut-stretch-least': least('stretch'),
  'end-clearance-head': most('head end clearance'),
  'end-clearance-head-least': least('head end clearance'),
  'end-clearance-crank': most('crank end clearance'),
  'end-clearance-crank-least': least('crank end clearance'),
  'end-clearance-sum-change': most('change of the sum'),
  'runout-horizontal': most('runout sideways'),
  'runout-vertical-deviation': most('runout up and down'),
  'dial-return': most('dial back to zero'),
  'pocket-leak-rise': most('pocket leak, rise', 'pressure-difference'),
  'jacket-test-pressure': most('jacket test pressure', 'pressure-gauge'),
  'jacket-test-pressure-least': least('jacket test pressure', 'pressure-gauge'),
  'jacket-test-loss': most('loss of jacket test', 'pressure-difference'),
  'driver-load': most('driver load', 'power'),
  'test-pressure-loss': most('loss under test', 'pressure-difference'),
} as const satisfies Record<string, Characteristic>

export type CharacteristicId = keyof typeof CHARACTERISTICS

export const CHARACTERISTIC_IDS = Object.keys(CHARACTERISTICS) as [CharacteristicId, ...CharacteristicId[]]

export function characteristicOf(id: CharacteristicId): Characteristic {
  return CHARACTERISTICS[id]
}

/** `least rider clearance`: the label with its side, where two limits share one. */
export function characteristicText(id: CharacteristicId): string {
  const { label, bound } = CHARACTERISTICS[id]
  return bound === 'at-least' ? `least ${label}` : label
}
