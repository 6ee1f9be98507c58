// Faults that keep everybody out: at the hold point, or by the monitor on the chest. Passed once, they fail a session.
import {
  BENCH,
  BORE,
  COMMON,
  type Fault,
  GAPS,
  HOLLOW,
  ISOLATION,
  LOAD,
  NUT,
  OPEN,
  PUT,
  RINGS,
  ROD,
  type Shows,
} from './fault.ts'
import { CLEAN_AIR, type HiddenMachine } from './machine.ts'

const LOCKOUT = '29 CFR 1910.147(d), lock-out and its verification'
const SPACES = '29 CFR 1910.146(b), hazardous atmosphere'
const ORDER = '29 CFR 1910.146(c)(5)(ii)(C): oxygen, then flammables, then toxics'
const STOP: Shows = 'stop'

/** At one of the lines of a hold point: that of the bore inspection, the isolation of all others, an opening, the bench of a hollow piston. */
const line = (item: string): readonly string[] => AT.map((gate) => `${gate}/${item}`)
const AT = ['hold_point', 'isolation', 'opening', 'bench'] as const

/** Where people lock out. */
const LOCKED: readonly string[] = [BORE, ISOLATION]
/** Where they test the air they stand in. */
const BREATHED: readonly string[] = [BORE, ISOLATION, BENCH]
/** Where an arm goes into the bore. */
const INSIDE: readonly string[] = [BORE, GAPS, OPEN, PUT]
/** Where it stood open before: in a cylinder that was just swept, gas that burns lies in nitrogen. */
const AIRED: readonly string[] = [BORE, GAPS, PUT]

function air(
  machine: HiddenMachine,
  change: Partial<HiddenMachine['air']['breathing_zone']>,
  ...places: readonly (keyof HiddenMachine['air'])[]
): HiddenMachine {
  const changed = places.map((place) => [place, { ...machine.air[place], ...change }] as const)
  return { ...machine, air: { ...machine.air, ...Object.fromEntries(changed) } }
}

export const STOP_FAULTS: readonly Fault[] = [
  {
    id: 'plate-other',
    name: 'You stand at another machine',
    level: 1,
    shows: STOP,
    procedures: [...LOCKED, RINGS, ROD, HOLLOW, LOAD, NUT],
    at: ['plate'],
    hint: 'Read the plate on the cylinder, not the paper in your hand.',
    teaches:
      'Locks, gas test and limits all belong to the machine of the record. At another one none of them holds.',
    source: COMMON,
    consequence: 'You would have opened a machine that nobody locked out.',
    apply: (machine, chance, facts) => ({
      ...machine,
      plate: facts.tag.replace(/\d(?=\D*$)/, (digit) =>
        String((Number(digit) + chance.pick([1, 2, 3])) % 10),
      ),
    }),
  },
  {
    id: 'lock-missing',
    name: 'At one isolation point no lock hangs',
    level: 2,
    shows: STOP,
    procedures: LOCKED,
    at: line('locks'),
    hint: 'Stand at each point and read the number there.',
    teaches: 'A lock list filled in at the desk locks nothing. The number is read where the lock hangs.',
    source: LOCKOUT,
    consequence:
      'Somebody works that handle for another reason, and gas or power is back at the cylinder with you in it.',
    apply: (machine, chance, facts) => withLock(machine, chance.between(0, 1), facts.points, 'nowhere'),
  },
  {
    id: 'lock-open',
    name: 'A lock hangs open on its hasp',
    level: 3,
    shows: STOP,
    procedures: LOCKED,
    at: line('locks'),
    hint: 'Pull at each lock before you read its number.',
    teaches: 'From three steps away an open lock looks like a shut one.',
    source: LOCKOUT,
    consequence: 'The handle moves under the first hand that leans on it.',
    apply: (machine, chance, facts) => withLock(machine, chance.between(0, 1), facts.points, 'open'),
  },
  {
    id: 'driver-live',
    name: 'The driver still starts: the lock is on another breaker',
    level: 1,
    shows: STOP,
    procedures: LOCKED,
    at: line('try_start'),
    hint: 'The lock says who decided. Only trying the start says whether it is the right breaker.',
    teaches: 'A lock can hang on the wrong breaker. The tried start is the proof, with everybody clear.',
    source: LOCKOUT,
    consequence: 'The machine would have turned with your arm in the bore.',
    apply: (machine) => ({ ...machine, driver: 'turns' }),
  },
  {
    id: 'bleed-blows',
    name: 'Gas comes out of a bleed: a valve passes',
    level: 1,
    shows: STOP,
    procedures: LOCKED,
    at: line('bleeds'),
    hint: 'Hold a hand near each bleed, for longer than a breath.',
    teaches:
      'Gas that comes out now comes in through a block valve that does not hold. It will go on coming.',
    source: LOCKOUT,
    consequence: 'The cylinder fills while you work at its open end.',
    apply: (machine, chance) => ({
      ...machine,
      bleeds: { ...machine.bleeds, [chance.pick(['head', 'crank'])]: 'blows' },
    }),
  },
  {
    id: 'bleed-plugged',
    name: 'A bleed is plugged: no flow proves nothing',
    level: 4,
    shows: STOP,
    procedures: LOCKED,
    at: line('bleeds'),
    hint: 'Nothing comes out of an empty space, nor out of a blocked pipe. Which of them is it?',
    teaches: 'A quiet bleed is probed before it counts. Ice, scale and wax hold full pressure back.',
    source: COMMON,
    consequence:
      'The space behind a plugged bleed is as full as it ever was, and its cover comes off at you.',
    apply: (machine, chance) => ({
      ...machine,
      bleeds: { ...machine.bleeds, [chance.pick(['head', 'crank'])]: 'plugged' },
    }),
  },
  {
    id: 'block-loose',
    name: 'The block can fall out',
    level: 2,
    shows: STOP,
    procedures: LOCKED,
    at: line('block'),
    hint: 'Push at the block the way it would fall.',
    teaches: 'A block that is only laid in is out at the first jolt.',
    source: COMMON,
    consequence: 'Pressure on one side of another piston turns the crank, and the rod comes at your arm.',
    apply: (machine) => ({ ...machine, block: 'loose' }),
  },
  {
    id: 'block-one-way',
    name: 'The crank is blocked one way only',
    level: 3,
    shows: STOP,
    procedures: LOCKED,
    at: line('block'),
    hint: 'Try it forwards, and then backwards.',
    teaches: 'Gas on the other side of a piston turns a crank backwards as easily as forwards.',
    source: COMMON,
    consequence: 'The crank would have swung back over your hand.',
    apply: (machine) => ({ ...machine, block: 'one-way' }),
  },
  {
    id: 'meter-dead',
    name: 'The gas meter does not answer test gas',
    level: 2,
    shows: STOP,
    procedures: BREATHED,
    at: line('bump'),
    hint: 'Hold test gas to the meter and watch the figures.',
    teaches: 'A poisoned sensor reads nought everywhere, and nought looks good.',
    source: COMMON,
    consequence: 'Every nought it shows after that is worth nothing, and you would have gone in on it.',
    apply: (machine) => ({ ...machine, meterAnswers: false }),
  },
  {
    id: 'thin-air',
    name: 'Too little oxygen where people breathe',
    level: 1,
    shows: STOP,
    procedures: BREATHED,
    at: line('oxygen_breathing'),
    hint: 'Read the meter where your face will be.',
    teaches: 'Purge gas that runs out of the bore has no smell and no colour. Only the meter tells it.',
    source: SPACES,
    consequence: 'You would have gone down at the opening, and the next one over you.',
    apply: (machine, chance) => air(machine, { oxygen: chance.between(0.155, 0.188) }, 'breathing_zone'),
  },
  {
    id: 'gas-breathing',
    name: 'Gas that burns, where people stand',
    level: 1,
    shows: STOP,
    procedures: BREATHED,
    at: line('flammable_breathing'),
    hint: 'Read the meter where your face will be, a full minute.',
    teaches: 'At 10 % of the lower limit nobody stays to find out where it comes from.',
    source: SPACES,
    consequence: 'One spark from a tool, and it burns around you.',
    apply: (machine, chance, { lelShare }) => {
      const methane = lelShare * chance.between(0.16, 0.45)
      return air(air(machine, { methane }, 'breathing_zone'), { methane: methane * 1.6 }, 'in_the_opening')
    },
  },
  {
    id: 'h2s-breathing',
    name: 'H2S where people breathe',
    level: 2,
    shows: STOP,
    procedures: BREATHED,
    at: line('h2s_breathing'),
    hint: 'The nose gives up before the meter does.',
    teaches: 'H2S dulls the nose: only the meter counts, and it is read last, not left out.',
    source: ORDER,
    consequence: 'A few breaths more of it and you do not walk out.',
    apply: (machine, chance) =>
      air(machine, { sulfide: chance.between(9e-6, 45e-6) }, 'breathing_zone', 'in_the_opening'),
  },
  {
    id: 'gas-inside',
    name: 'Gas that burns, inside the bore only',
    level: 2,
    shows: STOP,
    procedures: AIRED,
    at: line('flammable_inside'),
    hint: 'The hose goes inside, low and then high.',
    teaches: 'Clean air at the opening says nothing about the pocket behind the piston rod packing.',
    source: SPACES,
    consequence: 'The lamp goes in first, into gas.',
    apply: (machine, chance, { lelShare }) =>
      air(machine, { methane: lelShare * chance.between(0.16, 0.6) }, 'in_the_opening'),
  },
  {
    id: 'h2s-inside',
    name: 'H2S inside the bore only',
    level: 3,
    shows: STOP,
    procedures: INSIDE,
    at: line('h2s_inside'),
    hint: 'Leave the hose in, low, for a full minute.',
    teaches: 'H2S is heavier than air and lies along the bottom of the bore.',
    source: ORDER,
    consequence: 'You lean in to wipe, and breathe what lies there.',
    apply: (machine, chance) => air(machine, { sulfide: chance.between(9e-6, 60e-6) }, 'in_the_opening'),
  },
  {
    id: 'nitrogen-hides-gas',
    name: 'Nitrogen inside, and gas in it that a hot-wire meter cannot see',
    level: 4,
    shows: STOP,
    procedures: INSIDE,
    at: line('flammable_inside'),
    hint: 'What does the flammables sensor of this meter need before it can see anything?',
    teaches:
      'A catalytic sensor burns the gas to see it, and without oxygen nothing burns. Its nought is no reading at all.',
    source: `${COMMON}; ${ORDER}`,
    consequence: 'Air follows your arm into the bore, and then it is a mixture that burns.',
    apply: (machine, chance, { lelShare }) =>
      air(
        machine,
        { oxygen: chance.between(0.02, 0.07), methane: lelShare * chance.between(0.3, 0.9) },
        'in_the_opening',
      ),
  },
  {
    id: 'gas-returns',
    name: 'Gas comes back while you work',
    level: 5,
    shows: STOP,
    procedures: INSIDE,
    at: ['monitor'],
    hint: 'A gas test is good for the moment it was made in. What hangs on your chest?',
    teaches:
      'A block valve that held at the test may pass an hour later. When the monitor sounds, arms come out first.',
    source: COMMON,
    consequence: 'You measured on in air that was filling with gas.',
    apply: (machine, chance, { lelShare }) => ({
      ...air(machine, { ...CLEAN_AIR }, 'breathing_zone', 'in_the_opening'),
      returning: {
        afterS: chance.between(60, 150),
        methanePerS: (lelShare * chance.between(0.2, 0.4)) / 60,
      },
    }),
  },
]

function withLock(
  machine: HiddenMachine,
  share: number,
  points: readonly { readonly id: string }[],
  hangs: 'nowhere' | 'open',
): HiddenMachine {
  const point = points[Math.min(points.length - 1, Math.floor(share * points.length))]
  const lock = machine.locks[point?.id ?? '']
  if (point === undefined || lock === undefined) throw new Error('a machine without any isolation point')
  return { ...machine, locks: { ...machine.locks, [point.id]: { ...lock, hangs } } }
}
