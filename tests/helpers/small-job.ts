// Small jobs built in place, past the checks of the files, so that the engine itself is what holds.
import { type Procedure, procedureSchema } from '../../src/core/definition/procedure.ts'
import { assemble, type Definitions } from '../../src/core/job/definitions.ts'
import type { Result } from '../../src/core/lib/result.ts'
import { exampleDefs } from './example.ts'

export type Raw = Record<string, unknown>

const base = exampleDefs()

export function rawProcedure(steps: readonly Raw[], more: Raw = {}): Procedure {
  return procedureSchema.parse({
    procedure: 'small',
    title: 'Small job',
    edition: '1',
    summary: 'For tests.',
    for: base.procedure.for,
    not_for: [],
    hazards: [
      { id: 'start', name: 'the driver being started' },
      { id: 'bad_air', name: 'gas' },
      { id: 'fall', name: 'the head falling' },
    ],
    seats: base.procedure.seats,
    steps,
    ...more,
  })
}

/** The definitions of a job over the example's machine, with two isolation points. */
export function tryAssemble(
  steps: readonly Raw[],
  parts: readonly Procedure[] = [],
  change: Partial<Definitions> = {},
  more: Raw = {},
): Result<Definitions> {
  const { machine } = base
  const site = { ...machine.site, isolation_points: machine.site.isolation_points.slice(0, 2) }
  return assemble({
    procedure: rawProcedure(steps, more),
    parts: new Map(parts.map((part) => [part.procedure, part])),
    machine: { ...machine, site },
    instruments: base.instruments,
    crew: base.crew,
    limitBooks: base.limitBooks,
    ...change,
  })
}

export function smallDefs(...given: Parameters<typeof tryAssemble>): Definitions {
  const defs = tryAssemble(...given)
  if (!defs.ok) throw new Error(defs.error.say)
  return defs.value
}

export const tell = (id: string, more: Raw = {}): Raw => ({ id, kind: 'tell', title: id, ...more })

export const gate = (id: string, holds: string[], evidence: Raw[], more: Raw = {}): Raw => ({
  id,
  kind: 'gate',
  title: id,
  holds,
  evidence,
  clear_words: 'ALL OUT',
  ...more,
})

export const LOCKS = { id: 'locks', kind: 'locks', ask: 'Lock.' }
export const NO_START = { id: 'try_start', kind: 'words', ask: 'Try.', words: 'NO START' }
export const OXYGEN = { id: 'oxygen', kind: 'gas', ask: 'Oxygen.', limit: 'oxygen_breathing', with: 'meter' }
export const FLAMMABLE = {
  id: 'flammable',
  kind: 'gas',
  ask: 'Flammables.',
  limit: 'flammable_breathing',
  with: 'meter',
  oxygen: 'oxygen',
}
export const WITNESS = { id: 'witness', kind: 'witness', ask: 'Witness.', roles: ['mechanic', 'lead'] }

/** The start of the machine, as the end of a job. */
export const FIRST_START: Raw = {
  id: 'run',
  kind: 'confirm',
  title: 'First start',
  seen: 'Runs.',
  exposes: ['start'],
  lets_in: ['start'],
}

/** One diameter; `more` changes the step. */
export const readOne = (id: string, more: Raw = {}): Raw => ({
  id,
  kind: 'read',
  title: id,
  quantity: 'length',
  of: 'bore',
  with: 'gauge',
  drawing: 'none',
  stations: [{ id: 'here', label: 'here', at: 0.5 }],
  how: {},
  repeats: { at_least: 1, at_most: 3, within: '0.0003 in' },
  plausible: { from: 'nominal', below: '0.010 in', above: '0.060 in' },
  ...more,
})

/** One temperature; `more` changes the step. */
export const readTemperature = (id: string, more: Raw = {}): Raw =>
  readOne(id, {
    quantity: 'temperature',
    with: 'thermometer',
    repeats: { at_least: 1, at_most: 3, within: '2 delta-degF' },
    plausible: { from: 'range', least: '30 degF', most: '120 degF' },
    ...more,
  })

/** Isolation first, then air at the opening, where the second gate's own tests are made behind the first. */
export const TWO_GATES: readonly Raw[] = [
  tell('brief'),
  gate('isolated', ['start'], [LOCKS, NO_START, WITNESS]),
  gate('air', ['bad_air'], [OXYGEN, FLAMMABLE, WITNESS], { exposes: ['start'] }),
  {
    id: 'wiped',
    kind: 'confirm',
    title: 'wiped',
    seen: 'Dry.',
    exposes: ['start', 'bad_air'],
  },
  readOne('size', { exposes: ['start', 'bad_air'] }),
  {
    id: 'look',
    kind: 'observe',
    title: 'look',
    conditions: [
      { id: 'sound', label: 'Sound' },
      { id: 'scored', label: 'Scored', note: true },
    ],
    exposes: ['bad_air'],
  },
  tell('paper', {
    places: [
      { id: 'pin', what: 'locking pin' },
      { id: 'tag', what: 'tag on the panel' },
    ],
  }),
  tell('close', { exposes: ['start'] }),
]

/** The same machine with a valve beside the breaker and the barring gear: the one lock that comes off before gas. */
export function withValve(small: Definitions): Definitions {
  const { site } = small.machine
  const valve = { id: 'suction', name: 'suction block valve, V-11' }
  const isolation_points = [...site.isolation_points, valve]
  return { ...small, machine: { ...small.machine, site: { ...site, isolation_points } } }
}

/** Locks hung and noted, work behind them, and all of them off again: of pipes first, of what turns last. */
export const OFF_STEPS: readonly Raw[] = [
  gate('hung', ['start'], [{ ...LOCKS, notes: 'lock' }, WITNESS]),
  tell('work', { exposes: ['start'] }),
  gate(
    'gas',
    ['bad_air'],
    [{ ...LOCKS, id: 'off', same_as: 'lock', taken_off: 'before_gas', ask: 'Off.' }, WITNESS],
  ),
  tell('let_in', { exposes: ['bad_air'] }),
  gate(
    'go',
    ['fall'],
    [{ ...LOCKS, id: 'driver', same_as: 'lock', taken_off: 'before_start', ask: 'Last.' }, WITNESS],
  ),
  tell('run', { exposes: ['fall'] }),
]
