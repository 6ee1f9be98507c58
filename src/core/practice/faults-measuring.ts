// Faults of the measuring: the bore may be good, and still no verdict stands on the readings before these are found.
import { BORE, COMMON, type Fault, RINGS, ROD } from './fault.ts'
import type { HiddenMachine, Off } from './machine.ts'

const TEMPERATURE = 'ISO 1:2022, reference temperature 20 degC; JCGM 100:2008, H.1'
const IN = 0.0254

/** Every gauge that is set on a standard: whichever is picked has it. */
function gauges(
  machine: HiddenMachine,
  ids: readonly string[],
  change: (off: Off) => Partial<Off>,
): HiddenMachine {
  const changed = ids.flatMap((id) => {
    const off = machine.off[id]
    return off === undefined ? [] : [[id, { ...off, ...change(off) }] as const]
  })
  return { ...machine, off: { ...machine.off, ...Object.fromEntries(changed) } }
}

const setOn = (instruments: readonly { readonly id: string; readonly setWithin: number | null }[]) =>
  instruments.filter(({ setWithin }) => setWithin !== null).map(({ id }) => id)

export const MEASURING_FAULTS: readonly Fault[] = [
  {
    id: 'gauge-off',
    name: 'The gauge is off by a thousandth',
    level: 2,
    shows: 'measuring',
    procedures: [BORE, ROD, RINGS],
    at: ['set_before', 'mic_set_before'],
    hint: 'What does the gauge say of a size that is known?',
    teaches:
      'A gauge that is off moves every reading the same way: they agree with each other and with nothing else. The standard tells it.',
    source: COMMON,
    apply: (machine, chance, { instruments }) => {
      const off = chance.pick([-1, 1]) * chance.between(0.0009, 0.0012) * IN
      return gauges(machine, setOn(instruments), () => ({ bias: off }))
    },
  },
  {
    id: 'gauge-knocked',
    name: 'The gauge was knocked while you measured',
    level: 4,
    shows: 'measuring',
    procedures: [BORE, ROD, RINGS],
    at: ['set_after', 'mic_set_after'],
    hint: 'Two checks bracket the readings. Hold the second against the first.',
    teaches: 'Nobody knows which readings came before the knock. All of them are read again.',
    source: COMMON,
    apply: (machine, chance, { instruments }) => {
      const knocked = chance.pick([-1, 1]) * chance.between(0.0007, 0.0011) * IN
      return gauges(machine, setOn(instruments), () => ({ knocked }))
    },
  },
  {
    id: 'gauge-loose',
    isAlone: true,
    name: 'The anvil of the gauge is loose: it does not repeat',
    level: 3,
    shows: 'measuring',
    procedures: [BORE, ROD, RINGS],
    at: ['bore', 'rod_top', 'piston_od'],
    hint: 'Read one place again and again, and look how far the figures lie apart.',
    teaches:
      'Repeats are there to tell you of the gauge, not of the part. Readings that do not agree are no reading.',
    source: COMMON,
    apply: (machine, _chance, { instruments }) =>
      gauges(machine, setOn(instruments), () => ({ scatter: 0.0008 * IN })),
  },
  {
    id: 'part-hot',
    name: 'The part is still warm from running',
    level: 2,
    shows: 'measuring',
    procedures: [BORE, ROD, RINGS],
    at: ['part_temp_before', 'rod_temp_before', 'piston_temp_before'],
    hint: 'Iron grows as it warms. How warm is the metal?',
    teaches: 'Iron of 9.5 in grows by 0.0001 in for each degC: thirty degrees hide or make a whole verdict.',
    source: TEMPERATURE,
    apply: (machine, chance) => {
      const more = chance.between(12, 30)
      const { boreBefore, boreAfter } = machine.warmth
      return {
        ...machine,
        warmth: { ...machine.warmth, boreBefore: boreBefore + more, boreAfter: boreAfter + more * 0.97 },
      }
    },
  },
  {
    id: 'gauge-warm',
    name: 'The gauge lay in the sun',
    level: 3,
    shows: 'measuring',
    procedures: [BORE, ROD, RINGS],
    at: ['gauge_temp_before', 'mic_temp_before'],
    hint: 'The gauge has a temperature of its own.',
    teaches:
      'A warm gauge is longer than it says, so a part reads small on it. Its standard, as warm as it is, does not tell.',
    source: TEMPERATURE,
    apply: (machine, chance) => {
      const more = chance.between(12, 22)
      const { gaugeBefore, gaugeAfter } = machine.warmth
      return {
        ...machine,
        warmth: { ...machine.warmth, gaugeBefore: gaugeBefore + more, gaugeAfter: gaugeAfter + more * 0.97 },
      }
    },
  },
]
