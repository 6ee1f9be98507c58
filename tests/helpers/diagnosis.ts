// What a careful trainee tells of a hidden machine, by the record of their session and by nothing else.
import { asKind } from '../../src/core/job/definitions.ts'
import { judgeStep } from '../../src/core/job/judge-step.ts'
import { applicability } from '../../src/core/job/next.ts'
import type { VerdictRecord } from '../../src/core/job/verdict-record.ts'
import { faultsFor } from '../../src/core/practice/faults.ts'
import type { Walk } from './example.ts'

/** Their numbers; `0`: nothing. */
export function diagnosed(walk: Walk): string {
  const found = faultsFor(walk.engine.defs).flatMap(({ id }, n) => (tells(walk, id) ? [n + 1] : []))
  return found.length === 0 ? '0' : found.join(' ')
}

const SHOWN: Readonly<Record<string, RegExp>> = {
  'lock-missing': /no lock in it/,
  'lock-open': /comes open/,
  'driver-live': /motor hums/,
  'bleed-blows': /breath of gas/,
  'bleed-plugged': /stops hard/,
  'block-loose': /unpinned/,
  'block-one-way': /comes away from the block/,
  'meter-dead': /stays at 0/,
  'gas-returns': /monitor on your chest sounds/,
  'wear-top': /polished over your head/,
  'wear-side': /polished on the right/,
  ridge: /nail stops at a raised edge/,
  scored: /nail drops into/,
  cracked: /dark hair line/,
  rust: /brown streak/,
  damp: /comes away wet/,
  leak: /Water stands/,
  'no-strip': /So at both ends/,
  'strip-crank-end': /Past the crank end a band/,
  'ring-light': /light comes past its face|light stands a hand wide/i,
  'oil-shut': /nothing comes\.$|dark oil comes/,
  'check-valve': /creeps back in the glass/,
  'vent-plugged': /stops hard at the depth of a finger nail; nothing/,
  'plug-seized': /plug does not move/,
  'cavity-presses': /a hiss at a plug/,
  'plug-spins': /something pushes/,
  'plug-aimed': /looks down the aisle/,
  'tag-unproved': /for one cavity of two/,
  'vent-compound': /a plug of compound/,
  'blocks-on-run': /on its packing run, where/,
  'seat-bare': /one half only/,
  'compound-copper': /COPPER/,
  'nut-gives': /the nut creeps on/,
  'rod-proud': /straight edge rocks/,
  'barred-uncounted': /Four answers/,
  'barred-shut': /every cover is on and its vent is shut/,
  'ring-binds': /The third binds|mark looks away/,
  'turns-tight': /goes stiff/,
  'jacket-runs': /it runs again/,
  'pocket-holds': /gauge stands off its pin/,
  'cover-hisses': /hisses all round/,
  'pocket-end-other': /The outer head is plain\. The stem/,
  'jacket-tells': /bubbles came with it|a skin of oil/,
  'pieces-inside': /a bit of ring/,
  'black-dust': /Black dust/,
  lubricator: /less than half|three times what/,
}

const FAILED: Readonly<Record<string, string>> = {
  'thin-air': 'oxygen_breathing',
  'gas-breathing': 'flammable_breathing',
  'h2s-breathing': 'h2s_breathing',
  'gas-inside': 'flammable_inside',
  'h2s-inside': 'h2s_inside',
  'nitrogen-hides-gas': 'flammable_inside',
  'purge-short': 'purged',
  'piston-hot': 'cool',
  'jacket-hot': 'jacket_temp',
}

/** A figure that is past its limit, whatever the word: a check on a standard may hold it. */
const BEYOND: Readonly<Record<string, readonly string[]>> = {
  'rod-undersize': ['rod-undersize'],
  'rod-oval': ['rod-out-of-round'],
  'rod-tapered': ['rod-taper'],
  'rod-bent': ['rod-straightness'],
  'rod-thread': ['rod-thread-runout'],
  'rod-shoulder': ['rod-shoulder-squareness'],
  'ring-tight': ['ring-side-clearance-least'],
  'groove-worn': ['ring-side-clearance'],
  'ring-thin': ['ring-radial-thickness-least'],
  'ring-bottoms': ['ring-groove-depth-least'],
  'piston-worn': ['piston-clearance', 'rider-clearance'],
  'piston-face': ['piston-face-squareness'],
  'gap-wide': ['ring-end-gap'],
  'gap-tight': ['ring-end-gap-least'],
  'runout-aside': ['runout-horizontal'],
  'runout-up': ['runout-vertical-deviation'],
  'dial-moved': ['dial-return'],
  'nut-over': ['nut-torque', 'nut-angle', 'nut-stretch'],
  'nut-loose': ['nut-torque-least', 'nut-angle-least', 'nut-stretch-least'],
}

/** Where a gauge is held against its standard, and what it measures. */
const GAUGED: Readonly<Record<string, Gauged>> = {
  bore_inspection: {
    set: 'set',
    temp: 'part_temp',
    gaugeTemp: 'gauge_temp',
    repeats: /^(?:bore|strip_diameter)\./,
  },
  rod_sizes: {
    set: 'mic_set',
    temp: 'rod_temp',
    gaugeTemp: 'mic_temp',
    repeats: /^rod_(?:top|side|unworn|fit)\./,
  },
  ring_fit: { set: 'mic_set', temp: 'piston_temp', gaugeTemp: 'mic_temp', repeats: /^(?:piston|rider)_od\./ },
}

interface Gauged {
  readonly set: string
  readonly temp: string
  readonly gaugeTemp: string
  /** Places that are read twice where the gauge is sound. */
  readonly repeats: RegExp
}

function tells(walk: Walk, id: string): boolean {
  const { entries } = walk
  const asked = entries.filter((entry) => entry.type === 'practice.asked')
  const shown = SHOWN[id]
  if (shown !== undefined) return asked.some((one) => shown.test(one.shown))
  const failed = FAILED[id]
  if (failed !== undefined) {
    const isIt = entries.some((one) => one.type === 'evidence.failed' && one.item === failed)
    const oxygen = asked.findLast(({ of }) => of.endsWith('/oxygen_inside'))?.figure
    const isThin = oxygen !== undefined && Number(oxygen) < 10
    // The first test was good, and the second was not.
    if (id === 'thin-air' && wasGood(walk, failed)) return false
    return isIt && (id === 'nitrogen-hides-gas') === (isThin && failed === 'flammable_inside')
  }
  const seen = (pattern: RegExp) => asked.some((one) => pattern.test(one.shown))
  const fails = (item: string) =>
    entries.filter((one) => one.type === 'evidence.failed' && one.item === item).length
  switch (id) {
    case 'air-stale':
      return fails('oxygen_breathing') > 0 && wasGood(walk, 'oxygen_breathing')
    case 'axes-swapped': {
      const along = (axis: string) =>
        asked.flatMap(({ of, figure }) =>
          of.startsWith('bore.') && of.endsWith(axis) ? [Number(figure)] : [],
        )
      const mean = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0) / of.length
      return seen(/Brightest at the bottom/) && mean(along('.horizontal')) - mean(along('.vertical')) > 0.0006
    }
    case 'clearance-swapped':
    case 'clearance-short': {
      const isOut = (name: string) => records(walk).some((one) => isPast(one, [name]))
      return (
        isOut('end-clearance-head-least') && (id === 'clearance-swapped') === isOut('end-clearance-crank')
      )
    }
    case 'end-not-empty':
      return fails('head_end_zero') + fails('crank_end_zero') > 0
    case 'valve-creeps': {
      // At the end of the wait a gauge shows more than when it began.
      const gauges = asked.flatMap(({ shown: text }) => [
        ...text.matchAll(/(-?[\d.]+)(?: psig when it began)?, (-?[\d.]+) now/g),
      ])
      return gauges.some(([, from, to]) => Number(to) > Number(from))
    }
    case 'overloaded':
      return records(walk).some(({ result }) => result.verdict === 'REWORK')
    case 'no-opening':
      return held(walk, /^No opening of this pocket/)
    case 'pocket-half':
      return held(walk, /different settings/)
    case 'load-apart':
      return held(walk, /are apart by/)
    case 'pocket-other':
      return held(walk, /is not the one on record/)
    case 'pocket-unlike-order':
    case 'pocket-stuck': {
      const read = asked.findLast(({ step }) => step === 'as_ordered')?.shown ?? ''
      const last = (step: string) => Number(asked.findLast((one) => one.step === step)?.figure ?? Number.NaN)
      const [turns = Number.NaN, stem = Number.NaN] = [...read.matchAll(/[\d.]+(?= (?:turns|mm))/g)].map(
        Number,
      )
      const isWheel = Math.abs(last('turns_left') / 360 - turns) < 0.1
      const isStem = Math.abs(last('stem_left') - stem) < 0.5
      return read !== '' && !isStem && (id === 'pocket-stuck') === isWheel
    }
    case 'ring-material': {
      const stamped = asked
        .map((one) => /Stamped on each ring, read under the lamp: ([\w-]+)/.exec(one.shown)?.[1])
        .find((one) => one !== undefined)
      return stamped !== undefined && stamped !== walk.engine.defs.machine.rings?.material
    }
    case 'hollow-as-solid':
      return seen(/solid, all three/) && seen(/it rings, and hums/) && !isNearSolid(walk)
    case 'cavity-small':
      return seen(/solid, all three/) && seen(/it rings, and hums/) && isNearSolid(walk)
  }
  if (id === 'plate-other') return entries.some(({ type }) => type === 'machine.mismatched')
  const gauge = GAUGED[walk.engine.defs.procedure.procedure]
  if (gauge !== undefined) {
    const told = gaugeTells(walk, id, gauge)
    if (told !== null) return told
    if (gaugeTells(walk, 'gauge-loose', gauge)) return false
  }
  const beyond = BEYOND[id]
  return beyond === undefined ? boreTells(walk, id) : records(walk).some((one) => isPast(one, beyond))
}

function wasGood({ entries }: Walk, item: string): boolean {
  return entries.some((one) => one.type === 'evidence.given' && one.item === item)
}

/** By the hook, against the same piston in solid metal: within the error that is told with it. */
function isNearSolid({ entries }: Walk): boolean {
  const told = entries.findLast((one) => one.type === 'practice.asked' && /On the hook/.test(one.shown))
  const text = told?.type === 'practice.asked' ? told.shown : ''
  const [weighed = Number.NaN, solid = Number.NaN, percent = Number.NaN] = [
    ...text.matchAll(/[\d.]+(?= (?:lb|kg|%))/g),
  ].map(Number)
  return weighed / solid >= 1 - percent / 100
}

/** Null: it is no fault of the gauge or of its warmth. */
function gaugeTells(walk: Walk, id: string, gauge: Gauged): boolean | null {
  const asked = walk.entries.filter((entry) => entry.type === 'practice.asked')
  const last = (step: string) => Number(asked.findLast((one) => one.step === step)?.figure ?? Number.NaN)
  const used = asked.findLast(({ step }) => step === `${gauge.set}_before`)?.instrument
  const standard = walk.engine.defs.instruments.instruments.find((one) => one.id === used)
  const size = standard !== undefined && 'set_check' in standard ? standard.set_check.size.value : Number.NaN
  const { length, temperature } = walk.engine.defs.machine.shop_units
  /** In inches. */
  const off = (when: string) => Math.abs(last(`${gauge.set}_${when}`) - size) / (length === 'mm' ? 25.4 : 1)
  const places = new Set(asked.map(({ of }) => of).filter((of) => gauge.repeats.test(of)))
  const isLoose = [...places].some((of) => asked.filter((one) => one.of === of).length > 2)
  /** In degF. */
  const warm =
    (last(`${gauge.temp}_before`) - last(`${gauge.gaugeTemp}_before`)) * (temperature === 'degC' ? 1.8 : 1)
  switch (id) {
    case 'gauge-off':
      return !isLoose && off('before') > 0.0005
    case 'gauge-knocked':
      return !isLoose && off('before') < 0.0005 && off('after') > 0.0005
    case 'gauge-loose':
      return isLoose
    case 'part-hot':
      return warm > 15
    case 'gauge-warm':
      return warm < -15
    default:
      return null
  }
}

/** Verdicts that were given, and those that the readings would give where the work did not come so far. */
function records({ engine, state }: Walk): readonly VerdictRecord[] {
  return engine.defs.steps.flatMap((placed) => {
    if (placed.step.kind !== 'judge' || applicability(engine.defs, state, placed) === 'skip') return []
    return [
      state.verdicts[placed.id]?.verdict ?? judgeStep(engine.defs, state, asKind(placed, 'judge'), 'test'),
    ]
  })
}

function held(walk: Walk, why: RegExp): boolean {
  return records(walk).some(({ result }) => result.holds.some((hold) => why.test(hold)))
}

function isPast(record: VerdictRecord, names: readonly string[]): boolean {
  return (
    record.compute === 'figures' &&
    record.inputs.figures.some(
      ({ characteristic, value, limit }) =>
        names.includes(characteristic) &&
        value !== null &&
        limit !== null &&
        (limit.bound === 'at-least' ? value < limit.value : value > limit.value),
    )
  )
}

function boreTells(walk: Walk, id: string): boolean {
  const record = records(walk).find(({ compute }) => compute === 'bore_form')
  if (record?.compute !== 'bore_form') throw new Error(`nobody told the trainee how ${id} shows`)
  const { judged, form } = record.result
  const isBeyond = (characteristic: string) =>
    judged.some((one) => one.characteristic === characteristic && (one.judgement.used ?? 0) > 1)
  switch (id) {
    case 'worn-out':
      return isBeyond('largest-diameter')
    case 'oval':
      return isBeyond('out-of-round')
    case 'barrel':
    case 'hourglass':
      return isBeyond('taper') && form?.form === id
    case 'taper':
      return isBeyond('taper') && form?.form === 'tapered'
  }
  throw new Error(`nobody told the trainee how ${id} shows`)
}
