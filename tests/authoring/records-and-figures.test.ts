// What check says of limits that bound the wrong way, records that contradict themselves, rules of a book without a figure, and
// figures that cannot be judged: code and place, each from the shipped text with one thing changed.
import { describe, expect, it } from 'vitest'
import { toldCodes } from '../helpers/told-codes.ts'

const MACHINE = 'examples/tc-401/machine.yaml'
const BOOK = 'procedures/limits/handbook-1996.yaml'
const RODS = 'procedures/rod-sizes.yaml'

describe('a machine record', () => {
  it.each([
    ['a least with at_most', 'at_least: 900 ft-lb', 'at_most: 900 ft-lb', 'wrong-bound at_most: 900 ft-lb'],
    [
      'a most with at_least too',
      'at_most: 1000 ft-lb',
      'at_most: 1000 ft-lb\n    at_least: 1 ft-lb',
      'wrong-bound at_least: 1 ft-lb',
    ],
    ['a limit without a figure', '    at_most: 1000 ft-lb\n', '', 'no-figure - characteristic: nut-torque'],
    ['a torque in inches', 'at_most: 1000 ft-lb', 'at_most: 1 in', 'wrong-quantity at_most: 1 in'],
    [
      'a least above its most',
      'at_least: 900 ft-lb',
      'at_least: 1100 ft-lb',
      'contradiction at_least: 1100 ft-lb',
    ],
    ['a limit of nought', 'at_most: 1000 ft-lb', 'at_most: 0 ft-lb', 'zero at_most: 0 ft-lb'],
    ['a solid piston with a cavity', 'cavities: 0', 'cavities: 1', 'contradiction cavities: 1'],
    [
      'a piston larger than its bore',
      'diameter: 9.488 in',
      'diameter: 9.600 in',
      'contradiction diameter: 9.600 in',
    ],
    [
      'a rod larger than its bore',
      'diameter: 2.250 in',
      'diameter: 22.50 in',
      'contradiction diameter: 22.50 in',
    ],
    ['rings of two sorts', 'material: cast-iron', 'material: ptfe', 'contradiction material: ptfe'],
    ['overhauls out of order', 'day: 2021-08-03', 'day: 2018-08-03', 'wrong-order - day: 2018-08-03'],
    ['overhauls whose hours go back', 'hours: 38900 h', 'hours: 8900 h', 'wrong-order - day: 2021-08-03'],
  ])('with %s is told', (_what, from, to, expected) => {
    expect(toldCodes(MACHINE, from, to)).toContain(expected)
  })
})

describe('a limit book', () => {
  const ridge = 'characteristic: ridge\n    is: 0.007 in'
  it.each([
    ['a rule without a figure', '    is: 0.007 in\n', '', 'no-figure - characteristic: ridge'],
    ['a fixed figure and a ratio', ridge, `${ridge}\n    ratio: 0.1`, 'two-figures - characteristic: ridge'],
    ['a figure of another kind', ridge, 'characteristic: ridge\n    is: 5 deg', 'wrong-quantity is: 5 deg'],
    ['a figure of nought', ridge, 'characteristic: ridge\n    is: 0 in', 'zero is: 0 in'],
    [
      'a torque as a ratio',
      /characteristic: taper/,
      'characteristic: nut-torque',
      'wrong-quantity - characteristic: nut-torque',
    ],
    [
      'two rules for one ring material',
      'ring_material: bronze',
      'ring_material: cast-iron',
      'never-chosen - characteristic: ring-end-gap-least',
    ],
  ])('with %s is told', (_what, from, to, expected) => {
    expect(toldCodes(BOOK, from, to)).toContain(expected)
  })
})

describe('a judge by figures', () => {
  const straight = 'characteristic: rod-straightness, is: max(rod_straight)'
  it.each([
    [
      'one characteristic twice',
      'characteristic: rod-taper,',
      'characteristic: rod-undersize,',
      /^repeated-id .*rod-undersize/,
    ],
    [
      'what the program works out itself',
      straight,
      straight.replace('rod-straightness', 'spread'),
      /^wrong-compute .*spread/,
    ],
    [
      'another kind than its characteristic',
      straight,
      straight.replace('rod-straightness', 'nut-torque'),
      /^value-kind .*nut-torque/,
    ],
    [
      'a step that is not there',
      straight,
      straight.replace('rod_straight)', 'rod_straigt)'),
      /^unknown-step .*rod_straigt/,
    ],
    [
      'a set-check that stands after',
      'set_before: mic_set_before',
      'set_before: mic_set_after',
      /^wrong-order set_before: mic_set_after/,
    ],
    [
      'a set-check of another instrument',
      'set_before: mic_set_before',
      'set_before: rod_straight',
      /^other-instrument set_before/,
    ],
    [
      'a temperature that is a length',
      'part: [rod_temp_before, rod_temp_after]',
      'part: [rod_top]',
      /^wrong-quantity part/,
    ],
    [
      'a reading compared with no such figure',
      'of: rod_diameter, below',
      'of: rod_diametre, below',
      /^unknown-fact .*rod_diametre/,
    ],
    [
      'a window that runs backwards',
      'of: rod_diameter, below: 0.05 in',
      'of: rod_diameter, below: -0.05 in',
      /./,
    ],
  ] as const)('with %s is told', (_what, from, to, expected) => {
    expect(toldCodes(RODS, from, to)).toContainEqual(expect.stringMatching(expected))
  })
})
