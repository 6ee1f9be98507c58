// Small jobs with the kinds of evidence that the shipped procedure does not use.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Instrument } from '../../src/core/definition/instruments.ts'
import type { Procedure } from '../../src/core/definition/procedure.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { exampleDefs, ROOT } from './example.ts'
import { gate, OXYGEN, type Raw, rawProcedure, readOne, smallDefs, tell, WITNESS } from './small-job.ts'

export const SPACE: Raw = {
  id: 'space',
  kind: 'measured',
  ask: 'Read the gauge.',
  place: 'head-end space',
  quantity: 'pressure-gauge',
  with: 'low_range',
  at_most: '0.5 psig',
  source: 'Site rule (invented)',
  approved_by: 'site lead (invented)',
  since: '2026-01-01',
  life: '30 min',
}
export const NO_RISE: Raw = {
  id: 'no_rise',
  kind: 'wait',
  ask: 'Shut in and watch.',
  lasts: '15 min',
  begin_words: 'ALL SHUT IN',
  words: 'NO RISE',
}
export const PERMIT: Raw = { id: 'permit', kind: 'numbers', ask: 'Permit.', of: 'permit', per: 'once' }
export const OWN_LOCK: Raw = {
  id: 'own_lock',
  kind: 'numbers',
  ask: 'Own lock.',
  of: 'personal_lock',
  per: 'person',
}
export const BLINDS: Raw = {
  id: 'blinds',
  kind: 'numbers',
  ask: 'Blinds.',
  of: 'blind',
  per: 'isolation_point',
}
export const LIFT: Raw = {
  id: 'head_lift',
  kind: 'lift',
  load: 'Load.',
  rating: 'Rating.',
  sling: 'Sling.',
  inspected: 'Inspected.',
}
export const METER_ANSWERED: Raw = {
  id: 'bump',
  kind: 'words',
  ask: 'Bump.',
  words: 'METER ANSWERED',
  life: '30 min',
}

/** The example's instruments and one more gauge for pressures, changed as said. */
export function withGauge(change: Partial<Extract<Instrument, { kind: 'pressure_gauge' }>> = {}) {
  const { instruments } = exampleDefs().instruments
  return {
    instruments: instruments.map((one) => (one.kind === 'pressure_gauge' ? { ...one, ...change } : one)),
  }
}

export function kindsDefs(
  steps: readonly Raw[],
  change: Partial<Definitions> = {},
  more: Raw = {},
): Definitions {
  const seats = [
    ...exampleDefs().procedure.seats,
    { id: 'low_range', kinds: ['pressure_gauge'], for: 'the spaces' },
  ]
  return smallDefs(steps, [], { procedure: rawProcedure(steps, { seats, ...more }), ...change })
}

const facing = (id: string, hazards: readonly string[], more: Raw = {}): Raw =>
  tell(id, { exposes: hazards, ...more })

/** A measured space and a wait, then one reading behind them. */
export const PROVED_EMPTY: readonly Raw[] = [
  gate('empty', ['start'], [SPACE, NO_RISE, WITNESS]),
  readOne('size', { exposes: ['start'], repeats: { at_least: 1, at_most: 1, within: '1 in' } }),
  facing('close', ['start']),
]

/** Two gates, and work between that lets the air of the second in again, and the start of the first. */
export const LET_IN: readonly Raw[] = [
  gate('isolated', ['start'], [OWN_LOCK, WITNESS]),
  gate(
    'air',
    ['bad_air', 'fall'],
    [{ ...METER_ANSWERED, against: ['fall'] }, { ...OXYGEN, against: ['bad_air'] }, WITNESS],
    { exposes: ['start'] },
  ),
  facing('opened', ['bad_air'], { lets_in: ['bad_air'] }),
  facing('unblocked', ['fall', 'start'], { lets_in: ['start'] }),
  facing('close', ['bad_air', 'start']),
]

export const LIFTED: readonly Raw[] = [
  gate('plan', ['start'], [LIFT, WITNESS]),
  facing('hung', ['start']),
  facing('set_down', ['start']),
]

/** Every kind in two gates, and every way of letting in. */
export const EVERY_KIND: readonly Raw[] = [
  gate(
    'isolated',
    ['start', 'fall'],
    [
      PERMIT,
      { ...BLINDS, against: ['start'] },
      { ...OWN_LOCK, against: ['start'] },
      { ...SPACE, life: '45 min', against: ['start'] },
      { ...NO_RISE, against: ['start'] },
      { ...LIFT, against: ['fall'] },
      WITNESS,
    ],
  ),
  gate('air', ['bad_air'], [METER_ANSWERED, OXYGEN, WITNESS], { exposes: ['start'] }),
  facing('opened', ['bad_air', 'fall'], { lets_in: ['bad_air'] }),
  readOne('size', {
    exposes: ['start', 'bad_air'],
    lets_in: ['fall'],
    repeats: { at_least: 1, at_most: 1, within: '1 in' },
  }),
  {
    id: 'look',
    kind: 'observe',
    title: 'look',
    conditions: [
      { id: 'sound', label: 'Sound' },
      { id: 'scored', label: 'Scored', note: true },
    ],
    exposes: ['bad_air'],
    lets_in: ['start', 'bad_air'],
  },
  facing('close', ['start', 'bad_air', 'fall']),
]

/** A pressure read with the gauge; `more` changes the step. */
export const readPressure = (id: string, more: Raw = {}): Raw =>
  readOne(id, {
    quantity: 'pressure-gauge',
    of: id,
    with: 'low_range',
    repeats: { at_least: 1, at_most: 1, within: '0.5 psi' },
    plausible: { from: 'range', least: '0 psig', most: '15 psig' },
    not_applicable: 'never',
    ...more,
  })

const sees = (id: string, exposes: string[], more: Raw = {}): Raw => ({
  id,
  kind: 'confirm',
  title: id,
  seen: id,
  exposes,
  ...more,
})

export const DECIDED: Raw = {
  id: 'decided',
  kind: 'words',
  ask: 'Decided?',
  words: 'ALL DECIDED',
  findings: 'decided',
}

/** Gas on, a reading, a stand, a reading, gas off; judged, decided on, and a start that asks for what was found. */
export const TIED_STEPS: readonly Raw[] = [
  gate('ready', ['start'], [{ id: 'try_start', kind: 'words', ask: 'Try.', words: 'NO START' }, WITNESS]),
  sees('gas_on', ['start']),
  readPressure('first', { exposes: ['start'] }),
  gate('stood', ['bad_air'], [NO_RISE, WITNESS], { exposes: ['start'] }),
  readPressure('last', { exposes: ['start', 'bad_air'] }),
  sees('gas_off', ['start'], { lets_in: ['start', 'bad_air'] }),
  {
    id: 'judged',
    kind: 'judge',
    title: 'judged',
    compute: 'figures',
    figures: [{ characteristic: 'pocket-leak-rise', is: 'last - first' }],
  },
  {
    id: 'look',
    kind: 'observe',
    title: 'look',
    conditions: [
      { id: 'sound', label: 'Sound' },
      { id: 'scored', label: 'Scored', finding: true },
    ],
  },
  gate('go', ['fall'], [DECIDED, WITNESS]),
  facing('run', ['fall']),
  facing('on', ['fall']),
]
export const TIE: Raw = {
  id: 'leak',
  title: 'Leak of the pocket',
  from: 'gas_on',
  start: ['first'],
  stand: 'stood',
  end: ['last'],
  until: 'gas_off',
}

/** `more` changes the test over time. */
export function tiedDefs(more: Raw = {}, steps: readonly Raw[] = TIED_STEPS): Definitions {
  return kindsDefs(steps, {}, { over_time: [{ ...TIE, ...more }] })
}

/** As a file of its own, which may be wrong: `tests` are those over time. */
export function tiedProcedure(tests: readonly Raw[], steps: readonly Raw[] = TIED_STEPS): Procedure {
  const seats = [
    ...exampleDefs().procedure.seats,
    { id: 'low_range', kinds: ['pressure_gauge'], for: 'the spaces' },
  ]
  return rawProcedure(steps, { seats, over_time: tests })
}

/** The file of every kind, as a job on the example's machine: through all the checks of files. */
export function everyKindFile(): string {
  return readFileSync(join(ROOT, 'tests/fixtures/files/good-evidence.yaml'), 'utf8')
}
