// What check says of a whole compressor that contradicts its record or itself, and of a judge of the pocket setting whose inputs
// cannot be: code and place, each from the shipped text with one thing changed.
import { describe, expect, it } from 'vitest'
import { toldCodes } from '../helpers/told-codes.ts'

const TC = 'examples/tc-401/machine.yaml'
const RG = 'examples/rg-27/machine.yaml'
const LOAD = 'procedures/pocket-load.yaml'

describe('a whole compressor', () => {
  it.each([
    [
      'another bore than its record',
      '          bore: 9.500 in',
      '          bore: 9.550 in',
      'contradiction bore: 9.550 in',
    ],
    [
      'another rod than its record',
      '          rod: 2.250 in',
      '          rod: 2.500 in',
      'contradiction rod: 2.500 in',
    ],
    ['a rod larger than its bore', /bore: 6.250 in/, 'bore: 2.000 in', 'contradiction rod: 2.250 in'],
    ['its own throw in another stage', '- throw: 2\n', '- throw: 1\n', 'contradiction - throw: 1'],
    ['one throw twice', '- throw: 2\n', '- throw: 1\n', 'repeated-id - throw: 1'],
    ['one stage twice', '- stage: 2\n', '- stage: 1\n', 'repeated-id - stage: 1'],
    ['a stage too many', 'stages_in_all: 2', 'stages_in_all: 1', 'contradiction - stage: 2'],
    [
      'a cylinder too many',
      'cylinders_in_all: 2',
      'cylinders_in_all: 1',
      'contradiction cylinders_in_all: 1',
    ],
    [
      'a cooler behind the last stage',
      '{ after: 1,',
      '{ after: 2,',
      'contradiction - { after: 2, drop: 2.5 %, passed_on: 100 %, source: Data sheet of the cooler (invented) }',
    ],
    [
      'a margin that leaves more than the limit of the driver',
      'margin: 5 %',
      'margin: 1 %',
      'contradiction margin: 1 %',
    ],
  ])('with %s is told', (_what, from, to, expected) => {
    expect(toldCodes(TC, from, to)).toContain(expected)
  })

  it.each([
    ['a step of nought', 'least_step: 90 deg', 'least_step: 0 deg', 'zero least_step: 0 deg'],
    [
      'a step beyond the whole travel',
      'least_step: 90 deg',
      'least_step: 9000 deg',
      'contradiction least_step: 9000 deg',
    ],
    [
      'a stem that does not move',
      'open: 82.0 mm',
      'open: 10.0 mm',
      'contradiction stem: { shut: 10.0 mm, open: 10.0 mm }',
    ],
  ])('with %s is told', (_what, from, to, expected) => {
    expect(toldCodes(RG, from, to)).toContain(expected)
  })

  it('that only lacks figures is no finding: the verdict names them and holds', () => {
    expect(toldCodes(TC, '      z_suction: 0.98\n', '')).toEqual([])
    expect(toldCodes(TC, / {4}- stage: 2\n[\s\S]*? {2}between:/, '  between:')).toEqual([])
  })
})

describe('a judge of the pocket setting', () => {
  it.each([
    [
      'a pressure that is a temperature',
      'suction: first_suction',
      'suction: gas_1',
      /^wrong-quantity suction: gas_1/,
    ],
    [
      'a load that is a pressure',
      'driver_load: load',
      'driver_load: last_discharge',
      /^wrong-quantity driver_load/,
    ],
    ['a step that is not there', 'driver_load: load', 'driver_load: lode', /^unknown-step driver_load: lode/],
    [
      'one reading for two figures',
      'discharge: last_discharge',
      'discharge: first_suction',
      /^repeated-id discharge/,
    ],
    ['a finding for a reading', 'wheel: wheel', 'wheel: position', /^wrong-step wheel: position/],
    [
      'a reading for a finding',
      '      position: position',
      '      position: load',
      /^wrong-step position: load/,
    ],
    [
      'findings that do not tell',
      '{ id: shut, label',
      '{ id: closed, label',
      /^no-condition position: position/,
    ],
    [
      'kinds that are not all there',
      '{ id: none, label: "There is none", finding: true }',
      '{ id: no, label: "x" }',
      /^no-condition fitted: fitted/,
    ],
    [
      'nothing that tells the setting',
      '      wheel: wheel\n      stem: stem\n      position: position\n',
      '',
      /^no-setting/,
    ],
    [
      'a reading at two places',
      '[{ id: panel, label: at the panel, short: panel, at: 0.5 }]',
      '[{ id: a, label: a, at: 0 }, { id: b, label: b, at: 1 }]',
      /^too-many-places driver_load: load/,
    ],
    [
      'an input that does not exist',
      'driver_load: load',
      'driver_load: load\n      wind: load',
      /^unknown-key wind: load/,
    ],
  ])('with %s is told at its place', (_what, from, to, expected) => {
    expect(toldCodes(LOAD, from, to)).toContainEqual(expect.stringMatching(expected))
  })
})
