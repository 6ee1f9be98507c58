// Faults of a closed cylinder that was vented and swept: what a gauge, a wait and a second gas test are there to find.
import { COMMON, type Fault, PURGE, type Shows } from './fault.ts'
import { CLEAN_AIR, type HiddenMachine } from './machine.ts'
import type { EndTruth } from './parts.ts'

const STOP: Shows = 'stop'
const PSI = 6894.757293168

function end(machine: HiddenMachine, which: 'head' | 'crank', change: Partial<EndTruth>): HiddenMachine {
  const { closed } = machine.parts
  if (closed === null) throw new Error('a machine without a closed cylinder')
  return {
    ...machine,
    parts: { ...machine.parts, closed: { ...closed, [which]: { ...closed[which], ...change } } },
  }
}

export const PURGE_FAULTS: readonly Fault[] = [
  {
    id: 'end-not-empty',
    name: 'One end of the cylinder still holds pressure',
    level: 1,
    shows: STOP,
    procedures: [PURGE],
    at: ['at_zero/head_end_zero', 'at_zero/crank_end_zero'],
    hint: 'Each end has a gauge of its own. A range of 15 psig, not that of the line.',
    teaches: 'A double-acting cylinder is two vessels. One that is empty says nothing of the other.',
    source: COMMON,
    consequence: 'The cover of that end comes off at whoever slacks it.',
    apply: (machine, chance) =>
      end(machine, chance.pick(['head', 'crank']), { pressurePa: chance.between(1.5, 11) * PSI }),
  },
  {
    id: 'valve-creeps',
    name: 'A suction valve passes: pressure creeps back',
    level: 3,
    shows: STOP,
    procedures: [PURGE],
    at: ['at_zero/hold'],
    hint: 'Note both gauges when the vents are shut, and read both again when the wait is over.',
    teaches:
      'A gauge at zero with its vent open shows the vent, not the valve. Only a cylinder shut in and watched tells what comes back.',
    source: COMMON,
    consequence: 'The cylinder would have filled again behind your back while the cover hung on two nuts.',
    // From one to six psi in ten minutes.
    apply: (machine, chance) =>
      end(machine, chance.pick(['head', 'crank']), { risePaPerS: (chance.between(1, 6) * PSI) / 600 }),
  },
  {
    id: 'purge-short',
    name: 'The purge was too short: gas is left at the vent',
    level: 2,
    shows: STOP,
    procedures: [PURGE],
    at: ['at_zero/purged'],
    hint: 'The hose well inside the far vent of each end, and the highest of them.',
    teaches:
      'A sweep has an end point, read at the far vent in percent of the volume, and not a time on a watch.',
    source: COMMON,
    consequence: 'Air goes in with the first cover, and the cylinder holds a mixture that burns.',
    apply: (machine, chance) => ({
      ...machine,
      air: {
        ...machine.air,
        at_the_vent: { ...machine.air.at_the_vent, methane: chance.between(0.035, 0.22) },
      },
    }),
  },
  {
    id: 'air-stale',
    name: 'The air has changed since it was tested',
    level: 4,
    shows: STOP,
    procedures: [PURGE],
    at: ['isolation/oxygen_breathing'],
    hint: 'The hold point asks for the air again. Why would it?',
    teaches:
      'A gas test is good for the moment it was made in. Inert gas from the vent, or a valve that passes, has the whole break to change it.',
    source: '29 CFR 1910.146(b), hazardous atmosphere; how long a test stands is the site’s own rule',
    consequence: 'You would have gone back to where you stood before, and there was nothing left to breathe.',
    apply: (machine, chance) => ({
      ...machine,
      later: { place: 'breathing_zone', air: { ...CLEAN_AIR, oxygen: chance.between(0.14, 0.187) } },
    }),
  },
]
