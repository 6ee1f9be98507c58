// Asking the hidden machine at the prompt: what somebody sees there, or what their instrument shows. Pure: the same state and the
// same moment give the same answer, and each asking is on record, so that a job taken up again goes on where it was.
import type { Instrument } from '../definition/instruments.ts'
import { findReading } from '../job/admit-change.ts'
import {
  asKind,
  type Definitions,
  gasLimitById,
  instrumentById,
  type PlacedStep,
  stepById,
} from '../job/definitions.ts'
import { GAS_UNITS } from '../job/evidence-gas.ts'
import { gateState, gatesBefore, type Item, itemByKey } from '../job/gate.ts'
import { noGaugeAt } from '../job/gauge-at.ts'
import { next } from '../job/next.ts'
import { type Place, placesOf } from '../job/places.ts'
import {
  lineOf,
  type Manner,
  PLATE,
  type PracticeBody,
  type PracticeState,
  type Practised,
} from '../job/practice.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { oncePer } from '../lib/once.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { decimalsOf, formatNumber, fromSi, unitNamed, valueIn } from '../units/index.ts'
import { buildMachine } from './build.ts'
import { type Chance, chanceOf } from './chance.ts'
import { factsOf } from './facts.ts'
import { isFault } from './faults.ts'
import { type Figure, gasShown } from './gas-shown.ts'
import { insideNow } from './inside-air.ts'
import type { HiddenMachine } from './machine.ts'
import { pastRange, pastTold } from './past-range.ts'
import { exactOf } from './sample.ts'
import type { Spot, Truth } from './tell.ts'
import { airAt } from './tell-hold-point.ts'
import { truthAt } from './truth.ts'

export type AskedBody = Extract<PracticeBody, { type: 'practice.asked' }>

const machinesOf = oncePer((_defs: Definitions) => new Map<string, HiddenMachine>())

/** The hidden machine of a session. @throws where the files have no machine to make one of: no session is opened on those. */
export function hiddenMachine(
  defs: Definitions,
  { seed, level, hidden = null }: Practised & Partial<Pick<PracticeState, 'hidden'>>,
): HiddenMachine {
  const known = machinesOf(defs)
  // What is on record as hidden counts before what the list of today would draw.
  const faults = hidden?.every(isFault) === true ? hidden : defs.scenario?.faults
  const key = `${seed} ${level} ${faults?.join(' ') ?? 'drawn'}`
  let machine = known.get(key)
  if (machine === undefined) {
    const facts = factsOf(defs)
    if (!facts.ok) throw new Error(facts.error.say)
    machine = buildMachine(facts.value, { seed, level, ...(faults === undefined ? {} : { faults }) })
    known.set(key, machine)
  }
  return machine
}

const NOTHING = 'There is nothing to look at here: do as the sheet says.'
const WITNESS_LOOKS =
  'Here it is the witness who looks, at what hangs and stands there against this sheet, and signs. Key their initials.'
const DOUBT_FIRST =
  'A figure waits here: 1 drops it, and measure then shows a new one; 2 is for a slip of the keys, and what was measured is keyed again.'
/** A step that practice hides nothing at: it is not said that nobody need look. */
const AS_SHEET =
  'Practice hides nothing at this step: here it is as the sheet says. At a machine you go and look.'

/** What is seen at the prompt that stands now. */
export function askMachine(defs: Definitions, state: State, manner: Manner, now: Instant): Result<AskedBody> {
  const { practice } = state
  if (practice === null) return refuse('no-practice', 'That is for a practice session.')
  const machine = hiddenMachine(defs, practice)
  const prompt = next(defs, state)
  switch (prompt.kind) {
    case 'tag':
      return ok({
        type: 'practice.asked',
        step: null,
        of: PLATE,
        manner,
        shown: `You wipe the plate on the cylinder. It reads ${machine.plate}.`,
        figure: machine.plate,
      })
    case 'evidence': {
      const { evidence } = prompt.item
      if (evidence.kind === 'witness') return refuse('nothing-there', WITNESS_LOOKS)
      const id = 'with' in evidence ? state.seats[evidence.with] : undefined
      // One that fell with its hold point has to begin anew.
      const isWaiting = gateState(state, prompt.gate.id).begun[prompt.item.key] !== undefined
      return asked(defs, practice, prompt.gate, {
        item: prompt.item,
        place: null,
        id,
        manner,
        now,
        isWaiting,
      })
    }
    case 'read': {
      // A gauge that nobody may use is not there: it was put aside, or its calibration is over.
      const none = noGaugeAt(defs, state, prompt.step)
      if (none !== null) return refuse('nothing-there', none)
      return asked(defs, practice, prompt.step, {
        item: null,
        place: prompt.place,
        id: prompt.instrument,
        manner,
        now,
      })
    }
    case 'observe':
    case 'confirm':
      return asked(defs, practice, prompt.step, { item: null, place: null, id: undefined, manner, now })
    case 'doubt':
      return refuse('nothing-there', DOUBT_FIRST)
    default:
      return refuse('nothing-there', NOTHING)
  }
}

/** What the instrument shows anew where a reading is being put right. Whoever goes in for it goes by the hold points as ever. */
export function measureAnew(
  defs: Definitions,
  state: State,
  of: number,
  manner: Manner,
  now: Instant,
): Result<AskedBody> {
  const { practice } = state
  const reading = findReading(state, of)
  if (practice === null || reading === null) return refuse('nothing-there', NOTHING)
  const placed = stepById(defs, reading.step)
  if (gatesBefore(defs, placed).some(({ id }) => gateState(state, id).status !== 'open'))
    return refuse('nothing-there', NOBODY_IN)
  const place = placesOf(asKind(placed, 'read')).find(({ key }) => key === reading.place) ?? null
  const seen = asked(defs, practice, placed, { item: null, place, id: reading.instrument, manner, now })
  return seen.ok ? ok({ ...seen.value, corrects: of }) : seen
}

const NOBODY_IN =
  'Nobody is in: the hold point of that place is shut. A slip of the keys is put right by what was shown there; anything else waits until it is proved again.'

const isToSee = ({ step }: PlacedStep) => step.kind === 'confirm' || step.kind === 'observe'

interface Asking {
  readonly item: Item | null
  readonly place: Place | null
  readonly id: string | undefined
  readonly manner: Manner
  readonly now: Instant
  readonly isWaiting?: boolean
}

function asked(
  defs: Definitions,
  practice: PracticeState,
  placed: PlacedStep,
  { item, place, id, manner, now, isWaiting = false }: Asking,
): Result<AskedBody> {
  const machine = hiddenMachine(defs, practice)
  const instrument = id === undefined ? null : (instrumentById(defs, id) ?? null)
  const sinceGasS = sinceGas(defs, practice, now.ms)
  const of = place?.key ?? (item === null ? placed.id : lineOf(placed.id, item.key))
  const spot: Spot = {
    defs,
    machine,
    placed,
    item,
    place,
    instrument,
    sinceGasS,
    inside: insideNow(defs, practice, now.ms),
    begunS: isWaiting ? begunFor(practice, of, now.ms) : null,
    answered: practice.answered[of]?.length ?? 0,
  }
  const base = { type: 'practice.asked', step: placed.id, of, manner } as const
  if (item === null && sinceGasS !== null && isAlarm(spot))
    return ok({
      ...base,
      shown: 'Before you get to it the monitor on your chest sounds: gas that burns, and the figure climbs.',
      alarm: true,
    })
  const truth = truthAt(spot)
  if (truth === null) return refuse('nothing-there', isToSee(placed) ? AS_SHEET : NOTHING)
  if (truth.kind === 'line' || truth.kind === 'eye' || truth.kind === 'done')
    return ok({ ...base, shown: truth.seen })
  if (instrument === null)
    return refuse('nothing-there', 'Pick the instrument first: nothing shows a figure yet.')
  const nth = practice.asked.filter((one) => one.of === of).length
  const chance = chanceOf(machine.seed, 'read', of, instrument.id, nth)
  const figure = figureOf(spot, truth, instrument, manner, chance)
  const how = howTold(placed, instrument, manner)
  if (figure.past !== undefined) {
    // At a hold point the end of the scale is what stands there, and it shuts; a reading is none.
    const keyed = item === null ? {} : { figure: figure.keyed }
    return ok({ ...base, shown: `${how} ${figure.past}`, ...keyed, instrument: instrument.id })
  }
  return ok({
    ...base,
    shown: `${how} ${instrument.id} shows ${figure.text}.`,
    figure: figure.keyed,
    instrument: instrument.id,
  })
}

/** What the machine has at a spot that an entry of this state spoke of; null where it has nothing. */
export function truthOf(
  defs: Definitions,
  practice: PracticeState,
  placed: PlacedStep,
  at: {
    readonly item?: string
    readonly place?: string
    readonly instrument?: string | undefined
    /** A wait fell since it was begun. */
    readonly isFallen?: boolean
  },
  atMs: number,
): Truth | null {
  const item =
    at.item === undefined || placed.step.kind !== 'gate'
      ? null
      : itemByKey(defs, asKind(placed, 'gate'), at.item)
  const place =
    at.place === undefined || placed.step.kind !== 'read'
      ? null
      : (placesOf(asKind(placed, 'read')).find(({ key }) => key === at.place) ?? null)
  const of = place?.key ?? (item === null ? placed.id : lineOf(placed.id, item.key))
  return truthAt({
    defs,
    machine: hiddenMachine(defs, practice),
    placed,
    item,
    place,
    instrument: at.instrument === undefined ? null : (instrumentById(defs, at.instrument) ?? null),
    sinceGasS: sinceGas(defs, practice, atMs),
    inside: insideNow(defs, practice, atMs),
    begunS: at.isFallen === true ? null : begunFor(practice, of, atMs),
    answered: practice.answered[of]?.length ?? 0,
  })
}

/** Seconds since the wait of a line was begun; null: it was not, or only after that moment. */
function begunFor({ begun }: PracticeState, of: string, nowMs: number): number | null {
  const atMs = begun[of]
  return atMs === undefined || !(nowMs >= atMs) ? null : (nowMs - atMs) / 1000
}

/** Seconds since a gas meter was read last at a hold point; null: it was not. */
function sinceGas(defs: Definitions, practice: PracticeState, nowMs: number): number | null {
  const last = practice.asked.findLast(
    ({ of, instrument, atMs }) =>
      of.includes('/') &&
      atMs <= nowMs &&
      instrument !== null &&
      instrumentById(defs, instrument)?.kind === 'gas_meter',
  )
  return last === undefined ? null : (nowMs - last.atMs) / 1000
}

/** The monitor is switched on with the meter; it sounds at what the site lets people stand in; where it says nothing, at a tenth of the lower limit. */
function isAlarm(spot: Spot): boolean {
  const { defs } = spot
  const { limits, lel_basis: basis } = defs.machine.site.gas
  const limit = limits.find(({ gas, place }) => gas === 'flammable' && place === 'breathing_zone')
  const sounds = limit?.at_most?.si ?? 0.1
  return airAt(spot, 'breathing_zone').methane / basis.lower_limit.si > sounds
}

function figureOf(
  { defs, machine, item }: Spot,
  truth: Extract<Truth, { kind: 'figure' | 'gas' }>,
  instrument: Instrument,
  manner: Manner,
  chance: Chance,
): Figure {
  if (truth.kind === 'gas') {
    if (instrument.kind !== 'gas_meter') throw new Error(`${instrument.id} is no gas meter`)
    const evidence = item?.evidence
    const limit = evidence?.kind === 'gas' ? gasLimitById(defs, evidence.limit) : undefined
    return gasShown(truth, instrument, defs.machine.site.gas.lel_basis.lower_limit.si, {
      unit: GAS_UNITS[limit?.gas ?? truth.gas],
      manner,
      chance,
    })
  }
  if (instrument.kind === 'gas_meter') throw new Error(`${instrument.id} shows gas only`)
  const off = machine.off[instrument.id]
  if (off === undefined) throw new Error(`nothing is known of how ${instrument.id} is off`)
  const kind = unitNamed(instrument.unit)?.kind
  if (kind === undefined) throw new Error(`${instrument.id} shows a unit that is none: ${instrument.unit}`)
  const inUnit = (si: number) => valueIn(fromSi(kind, si), instrument.unit)
  // A thermometer steps in degrees from its own nought, so the step is taken in its unit.
  const step = Number((inUnit(instrument.resolution.si) - inUnit(0)).toPrecision(9))
  const exact = exactOf(
    { truth: truth.si, off, isKnocked: truth.isKnocked, manner, hurried: truth.hurried },
    chance,
  )
  const there = Math.max(truth.least ?? pinOf(instrument), exact)
  const past = pastRange(instrument, there)
  const { from, to } = instrument.range
  const end = past === 'over' ? to.si : from.si
  const keyed = formatNumber(Math.round(inUnit(past === null ? there : end) / step) * step, decimalsOf(step))
  const text = `${keyed} ${instrument.unit}`
  return past === null ? { keyed, text } : { keyed, text, past: pastTold(instrument, past, text) }
}

/** The needle of a gauge rests on its pin, and shows nothing below. SI. */
function pinOf(instrument: Instrument): number {
  return instrument.kind === 'pressure_gauge' ? instrument.range.from.si : Number.NEGATIVE_INFINITY
}

function howTold({ step }: PlacedStep, instrument: Instrument, manner: Manner): string {
  if (instrument.kind === 'gas_meter')
    return manner === 'quick'
      ? 'You take the first figure that comes up.'
      : 'You wait until the figure stands.'
  if (manner === 'quick') return 'You take it as it lies, in one go.'
  const how = step.kind === 'read' ? step.how[instrument.kind] : undefined
  return how === undefined ? 'As the sheet says.' : how
}
