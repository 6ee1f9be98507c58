// Faults of the bore itself: forms that the figures tell, and what only the eye finds.
import type { BoreVerdict } from '../bore/bore-judge.ts'
import { type BoreJudging, tightestOf, verdictOfTruth } from './bore-truth.ts'
import type { Chance } from './chance.ts'
import type { Facts } from './facts.ts'
import { BORE, COMMON, type Fault } from './fault.ts'
import type { BoreTruth, HiddenMachine } from './machine.ts'

const BOOK =
  'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 256-260'

const IN = 0.0254

/** Factors on a limit that are tried in turn, until the bore is beyond a limit for sure, and nothing of it too close to call. */
const BEYOND = [1.25, 1.4, 1.55, 1.7, 1.9, 2.1, 2.4, 2.8, 3.3, 4] as const

/**
 * A bore worn beyond a limit in one form. The wear it had by itself is made small, so that the form is plain; then the form is
 * made greater until the judge says so.
 */
function worn(
  machine: HiddenMachine,
  chance: Chance,
  facts: Facts,
  form: (amountM: number) => Partial<BoreTruth>,
  isIt: (verdict: BoreVerdict) => boolean,
): HiddenMachine {
  const little = chance.between(0.1, 0.25)
  const { bore, judging } = boreOf(machine, facts)
  const plain: BoreTruth = {
    ...bore,
    middleM: bore.middleM * little,
    bottomM: bore.bottomM * little,
  }
  const tightest = tightestOf(judging)
  const start = chance.between(1, 1.12)
  for (const factor of BEYOND) {
    const made = { ...plain, ...form(tightest * factor * start) }
    const verdict = verdictOfTruth(made, judging)
    if (isBeyond(verdict) && isIt(verdict)) return { ...machine, bore: made }
  }
  throw new Error(`no bore of this form is beyond a limit of ${facts.tag}`)
}

function isBeyond({ verdict }: BoreVerdict): boolean {
  return verdict === 'REWORK' || verdict === 'REPLACE'
}

const hasForm = (word: string) => (verdict: BoreVerdict) => verdict.form?.form === word

/** A finding that the eye has: nothing of the figures changes. */
function seen(change: (bore: BoreTruth) => Partial<BoreTruth>): Fault['apply'] {
  return (machine, _chance, facts) => {
    const { bore } = boreOf(machine, facts)
    return { ...machine, bore: { ...bore, ...change(bore) } }
  }
}

function ownWear(machine: HiddenMachine, facts: Facts, share: number): number {
  const { bore, judging } = boreOf(machine, facts)
  return Math.max(bore.bottomM, tightestOf(judging) * share)
}

function boreOf({ bore }: HiddenMachine, facts: Facts): { bore: BoreTruth; judging: BoreJudging } {
  if (bore === null || facts.bore === null) throw new Error('a machine without a bore')
  return { bore, judging: facts.bore.judging }
}

export const BORE_FAULTS: readonly Fault[] = [
  {
    id: 'barrel',
    name: 'The bore is wider in the middle: a barrel',
    level: 1,
    shows: 'figures',
    procedures: [BORE],
    at: ['bore'],
    hint: 'Hold the middle of the stroke against its two ends, on one axis.',
    teaches:
      'Rings run fastest in the middle of the stroke. Wider there than at both ends is a barrel, and taper is judged by it.',
    source: BOOK,
    apply: (machine, chance, facts) =>
      worn(machine, chance, facts, (amount) => ({ middleM: amount }), hasForm('barrel')),
  },
  {
    id: 'hourglass',
    name: 'The bore is wider at both ends: an hourglass',
    level: 2,
    shows: 'figures',
    procedures: [BORE],
    at: ['bore'],
    hint: 'Hold the middle of the stroke against its two ends, on one axis.',
    teaches:
      'Rings dwell at the ends of the stroke, where oil is thinnest. Three stations tell it; one reading in the middle would pass this bore.',
    source: BOOK,
    apply: (machine, chance, facts) =>
      worn(machine, chance, facts, (amount) => ({ endsM: amount }), hasForm('hourglass')),
  },
  {
    id: 'taper',
    name: 'The bore is wider at one end: tapered',
    level: 1,
    shows: 'figures',
    procedures: [BORE],
    at: ['bore'],
    hint: 'Hold the two ends of ring travel against each other.',
    teaches: 'A bore that opens towards one end makes rings work in and out in their grooves at each stroke.',
    source: BOOK,
    apply: (machine, chance, facts) => {
      const isHead = chance.isOne(0.5)
      return worn(
        machine,
        chance,
        facts,
        // What it had worn in the middle by itself would give the form another name.
        (amount) => ({ middleM: 0, ...(isHead ? { headM: amount } : { crankM: amount }) }),
        hasForm('tapered'),
      )
    },
  },
  {
    id: 'oval',
    name: 'The bore is oval, worn at the bottom',
    level: 1,
    shows: 'figures',
    procedures: [BORE],
    at: ['bore'],
    hint: 'Hold top to bottom against side to side, at one station.',
    teaches: 'Weight wears the bottom of a horizontal bore. Only two axes at each station show it.',
    source: BOOK,
    apply: (machine, chance, facts) =>
      worn(
        machine,
        chance,
        facts,
        (amount) => ({ bottomM: amount }),
        ({ judged }) =>
          judged.some(
            ({ characteristic, judgement }) =>
              characteristic === 'out-of-round' && judgement.verdict === 'REWORK',
          ),
      ),
  },
  {
    id: 'worn-out',
    name: 'The bore is past the largest diameter of its book',
    level: 2,
    shows: 'figures',
    procedures: [BORE],
    at: ['bore'],
    hint: 'Hold the largest reading against the greatest bore of the machine book.',
    teaches:
      'A bore can be round and straight and still be worn out: size is a limit of its own, and no hone brings it back.',
    source: BOOK,
    apply: (machine, chance, facts) => {
      const { bore, judging } = boreOf(machine, facts)
      const size = judging.limits['largest-diameter']?.value ?? judging.nominalM
      const room = size - bore.madeM
      const more = chance.between(0.02, 0.12)
      return worn(
        machine,
        chance,
        facts,
        (amount) => ({ evenM: room * (1 + more) + amount * 0.1 }),
        ({ governs }) => governs?.characteristics.includes('largest-diameter') === true,
      )
    },
  },
  {
    id: 'wear-top',
    name: 'The bore is worn at the top: rod or crosshead out of line',
    level: 3,
    shows: 'seen',
    procedures: [BORE],
    at: ['wear_side'],
    hint: 'Two axes tell how much, and not on which side: look with the lamp.',
    teaches:
      'Weight cannot wear the top. Look for alignment, rod runout and crosshead clearance before new rings go in.',
    source: COMMON,
    apply: (machine, _chance, facts) => ({
      ...machine,
      bore: { ...boreOf(machine, facts).bore, topM: ownWear(machine, facts, 0.25), bottomM: 0 },
    }),
  },
  {
    id: 'wear-side',
    name: 'The bore is worn at one side: cylinder or rod out of line',
    level: 3,
    shows: 'seen',
    procedures: [BORE],
    at: ['wear_side'],
    hint: 'Which of the two axes is the larger, and what would weight do?',
    teaches:
      'Side to side larger than top to bottom is no work of weight. Something pushes the piston aside.',
    source: COMMON,
    apply: (machine, _chance, facts) => ({
      ...machine,
      bore: { ...boreOf(machine, facts).bore, sideM: ownWear(machine, facts, 0.3), bottomM: 0 },
    }),
  },
  {
    id: 'axes-swapped',
    // Another wear beside it, and nobody could tell which axis it is on.
    isAlone: true,
    name: 'The two axes are swapped: the marks at the flange stand a quarter turn round',
    level: 4,
    shows: 'measuring',
    procedures: [BORE],
    at: ['bore', 'wear_side'],
    hint: 'On which side does the lamp show wear, and which of the two axes reads larger?',
    teaches:
      'Readings keyed for the wrong axis give the right out of round and the wrong cause. What the eye sees and what the figures say has to be one story.',
    source: COMMON,
    apply: (machine, _chance, facts) => ({
      ...machine,
      bore: { ...boreOf(machine, facts).bore, bottomM: ownWear(machine, facts, 0.3), isTurned: true },
    }),
  },
  {
    id: 'ridge',
    name: 'A ridge stands at an end of ring travel',
    level: 1,
    shows: 'seen',
    procedures: [BORE],
    at: ['surface'],
    hint: 'Draw a fingernail along the bore, out over both ends of ring travel.',
    teaches:
      'New rings have sharp edges and run to the very ridge: it breaks them, so it is cut before they go in.',
    source: BOOK,
    apply: seen((bore) => ({ surface: [...bore.surface, 'ridge'], evenM: bore.evenM + 0.0008 * IN })),
  },
  {
    id: 'scored',
    name: 'The bore is scored',
    level: 1,
    shows: 'seen',
    procedures: [BORE],
    at: ['surface'],
    hint: 'Lamp in low, and a fingernail across what it shows.',
    teaches:
      'A score leaks along its length whatever the diameter says. The gauge bridges it, so only the eye has it.',
    source: COMMON,
    apply: seen((bore) => ({ surface: [...bore.surface, 'scored'] })),
  },
  {
    id: 'cracked',
    name: 'There is a crack in the wall',
    level: 2,
    shows: 'seen',
    procedures: [BORE],
    at: ['surface'],
    hint: 'Look at the bridges between the ports, and along the bottom.',
    teaches: 'A crack goes to a lead and to a dye test before anything else is decided about this bore.',
    source: COMMON,
    apply: seen((bore) => ({ surface: [...bore.surface, 'cracked'] })),
  },
  {
    id: 'rust',
    name: 'A streak of rust: water has come through from the jacket',
    level: 2,
    shows: 'seen',
    procedures: [BORE],
    at: ['jacket_side'],
    hint: 'Look at the ends of the liner and at plugs in the wall.',
    teaches: 'Rust where the bore should be oiled is old water. It shows before the oil turns grey.',
    source: COMMON,
    apply: seen(() => ({ jacket: 'rust' })),
  },
  {
    id: 'damp',
    name: 'A damp spot that comes back: the jacket leaks into the bore',
    level: 3,
    shows: 'seen',
    procedures: [BORE],
    at: ['jacket_side'],
    hint: 'Wipe, wait, and look at the same place once more.',
    teaches: 'One wipe hides it. What comes back after wiping comes through the wall or past a seal.',
    source: COMMON,
    apply: seen(() => ({ jacket: 'damp' })),
  },
  {
    id: 'leak',
    name: 'Water runs into the bore from the jacket',
    level: 1,
    shows: 'seen',
    procedures: [BORE],
    at: ['jacket_side'],
    hint: 'Look along the bottom of the bore.',
    teaches: 'Water in a cylinder at the start is a broken piston or head: it does not compress.',
    source: COMMON,
    apply: seen(() => ({ jacket: 'leak' })),
  },
  {
    id: 'no-strip',
    name: 'No strip is left that the rings never swept',
    level: 2,
    shows: 'seen',
    procedures: [BORE],
    at: ['strip'],
    hint: 'Look past the end of ring travel, before the counterbore.',
    teaches:
      'Without a strip the bore itself tells no wear. The counterbore is cut larger on purpose and tells none either.',
    source: COMMON,
    apply: seen(() => ({ strip: 'gone' })),
  },
  {
    id: 'strip-crank-end',
    name: 'The only strip that the rings never swept is at the crank end',
    level: 2,
    shows: 'seen',
    procedures: [BORE],
    at: ['strip'],
    hint: 'Look past both ends of ring travel, not only the near one.',
    teaches:
      'Rings may run out over the counterbore at one end and stop short of it at the other. What they left still tells the wear.',
    source: COMMON,
    apply: seen(() => ({ strip: 'crank end' })),
  },
]
