// Operations whose exponents would come out as some kind, and which are refused all the same; each with its reason.
// A test goes through all pairs: one that comes out as a kind is either an operation (operators.ts) or stands here.
import { QUANTITY_KINDS } from '../units/index.ts'
import type { ArithmeticOp } from './operators.ts'
import type { Operand } from './types.ts'

export interface RefusedOperation {
  readonly left: readonly Operand[]
  readonly op: readonly ArithmeticOp[]
  readonly right: readonly Operand[]
  /** A clause that follows the names of the two. */
  readonly why: string
}

const ALL: readonly Operand[] = [...QUANTITY_KINDS, 'number']
const PRESSURES: readonly Operand[] = ['pressure-gauge', 'pressure-absolute', 'pressure-difference']
/** Shares that are not plain fractions: each is a share of something that is not said. */
const SHARES: readonly Operand[] = ['angle', 'concentration', 'lel-fraction']
const ANY_SHARE: readonly Operand[] = [...SHARES, 'ratio', 'number']

/** The first row that fits is the reason given, so what is more particular stands first. */
export const REFUSED_OPERATIONS: readonly RefusedOperation[] = [
  {
    left: ['pressure-gauge'],
    op: ['*'],
    right: ['area', 'volume', 'flow'],
    why: 'a gauge pressure leaves out the air that presses on the other side: take a pressure difference, or to_absolute(p, machine.barometer)',
  },
  {
    left: ['area', 'volume', 'flow'],
    op: ['*'],
    right: ['pressure-gauge'],
    why: 'a gauge pressure leaves out the air that presses on the other side: take a pressure difference, or to_absolute(p, machine.barometer)',
  },
  {
    left: ['pressure-gauge'],
    op: ['+', '-', '/'],
    right: ['pressure-absolute'],
    why: 'gauge and absolute are counted from different zeros',
  },
  {
    left: ['pressure-absolute'],
    op: ['+', '-', '/'],
    right: ['pressure-gauge'],
    why: 'gauge and absolute are counted from different zeros',
  },
  {
    left: ['pressure-gauge'],
    op: ['/'],
    right: ['pressure-gauge'],
    why: 'how many times one is the other depends on the air outside: divide absolute pressures',
  },
  {
    left: ['temperature'],
    op: ['/'],
    right: ['temperature'],
    why: 'it would be a ratio of kelvins, which is seldom what is meant: take a temperature difference',
  },
  {
    left: ['pressure-gauge'],
    op: ['+'],
    right: ['pressure-gauge'],
    why: 'two points of a scale have no sum',
  },
  {
    left: ['pressure-absolute'],
    op: ['+'],
    right: ['pressure-absolute'],
    why: 'two points of a scale have no sum',
  },
  {
    left: ['temperature'],
    op: ['+'],
    right: ['temperature'],
    why: 'two temperatures have no sum: add a temperature difference, or take the mean',
  },
  {
    left: ['pressure-gauge', 'temperature'],
    op: ['*', '/'],
    right: ['number', 'ratio'],
    why: 'twice as much depends on where its zero lies',
  },
  {
    left: ['number', 'ratio'],
    op: ['*'],
    right: ['pressure-gauge', 'temperature'],
    why: 'twice as much depends on where its zero lies',
  },
  {
    left: ['pressure-difference'],
    op: ['-'],
    right: ['pressure-gauge', 'pressure-absolute'],
    why: 'a point cannot be taken from a difference: the other way round it can',
  },
  {
    left: ['temperature-difference'],
    op: ['-'],
    right: ['temperature'],
    why: 'a point cannot be taken from a difference: the other way round it can',
  },
  {
    left: ['pressure-difference'],
    op: ['/'],
    right: ['pressure-gauge'],
    why: 'a gauge pressure is no amount to divide by',
  },
  {
    left: ['pressure-gauge'],
    op: ['/'],
    right: ['pressure-difference'],
    why: 'a gauge pressure is no amount to be divided',
  },
  {
    left: ['pressure-difference', 'pressure-absolute'],
    op: ['/'],
    right: ['pressure-difference', 'pressure-absolute'],
    why: 'one is a difference and the other a pressure: divide two of one kind',
  },
  {
    left: ['temperature', 'temperature-difference'],
    op: ['/'],
    right: ['temperature', 'temperature-difference'],
    why: 'one is a difference and the other a temperature: divide two differences',
  },
  {
    left: ['torque'],
    op: ['*'],
    right: ['rotation'],
    why: 'a speed of rotation counts turns, and a turn is 2 pi radians: the power would come out 2 pi too small',
  },
  {
    left: ['rotation'],
    op: ['*'],
    right: ['torque'],
    why: 'a speed of rotation counts turns, and a turn is 2 pi radians: the power would come out 2 pi too small',
  },
  {
    left: ['power'],
    op: ['/'],
    right: ['rotation'],
    why: 'a speed of rotation counts turns, and a turn is 2 pi radians',
  },
  {
    left: ['power'],
    op: ['/'],
    right: ['torque'],
    why: 'a speed of rotation counts turns, and a turn is 2 pi radians',
  },
  {
    left: ['torque'],
    op: ['/'],
    right: ['time'],
    why: 'a torque is no work, though both are force by length',
  },
  { left: ['power'], op: ['*'], right: ['time'], why: 'that is work, and there is no kind for work here' },
  { left: ['time'], op: ['*'], right: ['power'], why: 'that is work, and there is no kind for work here' },
  {
    left: ['torque'],
    op: ['/'],
    right: ['power'],
    why: 'a torque is no work, though both are force by length',
  },
  { left: PRESSURES, op: ['*'], right: ['volume'], why: 'that is work, and there is no kind for work here' },
  { left: ['volume'], op: ['*'], right: PRESSURES, why: 'that is work, and there is no kind for work here' },
  {
    left: ['torque'],
    op: ['/'],
    right: ['volume', ...PRESSURES],
    why: 'a torque is no work, though both are force by length',
  },
  {
    left: PRESSURES,
    op: ['*'],
    right: ['flow'],
    why: 'that is the power of a liquid; a gas changes its volume',
  },
  {
    left: ['flow'],
    op: ['*'],
    right: PRESSURES,
    why: 'that is the power of a liquid; a gas changes its volume',
  },
  {
    left: ['power'],
    op: ['/'],
    right: ['flow', ...PRESSURES],
    why: 'that holds for a liquid; a gas changes its volume',
  },
  {
    left: ['force'],
    op: ['/'],
    right: ['pressure-gauge', 'pressure-absolute'],
    why: 'a force comes of a difference of pressure: divide by that',
  },
  { left: ANY_SHARE, op: ['/'], right: ['time', 'rotation'], why: 'nothing here says what is counted' },
  { left: ['rotation'], op: ['*'], right: ['time'], why: 'turns counted are no kind here' },
  { left: ['time'], op: ['*'], right: ['rotation'], why: 'turns counted are no kind here' },
  { left: ANY_SHARE, op: ['+', '-'], right: ANY_SHARE, why: 'they are shares of different things' },
  {
    left: SHARES,
    op: ['*', '/'],
    right: ALL,
    why: 'only a plain number or a ratio makes so many times as much of something',
  },
  {
    left: ALL,
    op: ['*', '/'],
    right: SHARES,
    why: 'only a plain number or a ratio makes so many times as much of something',
  },
]

export function reasonAgainst(left: Operand, op: ArithmeticOp, right: Operand): string | undefined {
  return REFUSED_OPERATIONS.find(
    (row) => row.left.includes(left) && row.op.includes(op) && row.right.includes(right),
  )?.why
}
