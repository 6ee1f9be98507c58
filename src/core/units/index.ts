// The public names of units: kinds, the unit table, quantities, typed entries and their display.
export { formatNumber } from '../lib/decimal.ts'
export { differenceUnit } from './difference-unit.ts'
export { type Entry, type EntryOptions, parseEntry } from './entry.ts'
export {
  companion,
  decimalsOf,
  formatBoth,
  formatFinish,
  formatQuantity,
  hoursText,
  isMetric,
  percentText,
  placesFor,
  shownNumber,
  shownUp,
} from './format.ts'
export {
  aKind,
  DIMENSION,
  type Dimension,
  isQuantityKind,
  KIND_NAME,
  QUANTITY_KINDS,
  type QuantityKind,
} from './kinds.ts'
export { difference, fromSi, type Quantity, quantity, toAbsolute, toGauge, valueIn } from './quantity.ts'
export { type ShareTold, shareTold, usedText } from './share.ts'
export { findUnit, UNITS, type Unit, unitNamed, unitsOf } from './unit-table.ts'
