// The instruments of a kit: one line for each seat that anything is read from, with what fits it and what does not.
import type { Instrument } from '../definition/instruments.ts'
import type { Seat } from '../definition/procedure.ts'
import { unfitness } from '../job/admit-people.ts'
import type { Definitions } from '../job/definitions.ts'
import { unsuited } from '../job/seats.ts'
import { a, list } from '../lib/wording.ts'
import type { SeatUse } from './seat-use.ts'
import { once, type Steps, stepsOf, stepsText } from './steps.ts'

/** Why an instrument of the register cannot sit in a seat. */
export interface Unfit {
  readonly id: string
  readonly title: string
  /** It may not be picked at all; false: the program would let it be picked, and the step would fail with it. */
  readonly refused: boolean
  /** Each a clause, with the steps it is about; none for a fault that is about all of them. */
  readonly why: readonly { readonly say: string; readonly steps: Steps | null }[]
}

export interface KitSeat {
  readonly id: string
  /** Kinds of instrument that may sit there, as words. */
  readonly kinds: readonly string[]
  readonly for: string
  readonly steps: Steps
  readonly asks: readonly { readonly what: string; readonly steps: Steps }[]
  /** Those that can do all of it. */
  readonly fit: readonly {
    readonly id: string
    readonly title: string
    /** The last day its calibration stands. */
    readonly due: string
    /** What has to come with it. */
    readonly standard: string | null
    /** Its scale, where what may be read there can lie beyond it; null where it takes in all of that. */
    readonly scale: string | null
  }[]
  readonly unfit: readonly Unfit[]
  /** What the job is not to be started without, as a clause with why; null when something does each use. */
  readonly held: string | null
  /** Each use has an instrument, but no single one does them all. */
  readonly changesOver: boolean
}

/** `at`: a stamp of the day that calibrations have to stand on. A seat that nothing is read from is left out. */
export function kitSeats(defs: Definitions, uses: readonly SeatUse[], at: string): KitSeat[] {
  return defs.seats.flatMap((seat) => {
    const own = uses.filter((use) => use.seat === seat.id)
    return own.length === 0 ? [] : [kitSeat(defs, seat, own, at)]
  })
}

function kitSeat(defs: Definitions, seat: Seat, uses: readonly SeatUse[], at: string): KitSeat {
  const candidates = defs.instruments.instruments.filter((one) =>
    seat.kinds.some((kind) => kind === one.kind),
  )
  const looked = candidates.map((instrument) => ({ instrument, ...lookAt(defs, seat, uses, instrument, at) }))
  const isOpen = (use: SeatUse) => !looked.some((one) => one.does.includes(use))
  const open = uses.filter(isOpen)
  const fit = looked.filter((one) => one.does.length === uses.length).map((one) => one.instrument)
  const unfit = looked.flatMap((one) => (one.unfit === null ? [] : [one.unfit]))
  const base = {
    id: seat.id,
    kinds: seat.kinds.map((kind) => kind.replaceAll('_', ' ')),
    for: seat.for,
    steps: stepsOf(uses.map((use) => use.placed)),
    asks: once(uses.map((use) => ({ key: use.asks, placed: use.placed, thing: use.asks }))).map((one) => ({
      what: one.things[0] ?? '',
      steps: one.steps,
    })),
    fit: fit.map((one) => named(one, uses)),
    unfit,
  }
  return {
    ...base,
    held: open.length === 0 ? null : heldWords(base, open, uses.length),
    changesOver: open.length === 0 && fit.length === 0,
  }
}

/** What of its uses an instrument can do, and why it is not fit for all of them. */
function lookAt(
  defs: Definitions,
  seat: Seat,
  uses: readonly SeatUse[],
  instrument: Instrument,
  at: string,
): { readonly does: readonly SeatUse[]; readonly unfit: Unfit | null } {
  const refused = [unfitness(defs, instrument, at), unsuited(defs, seat.id, instrument)].filter(
    (why) => why !== null,
  )
  const faults = uses.flatMap((use) => {
    const say = use.fault(instrument)
    return say === null ? [] : [{ use, say }]
  })
  if (refused.length + faults.length === 0) return { does: uses, unfit: null }
  const failing = faults.map((fault) => fault.use)
  const said = once(faults.map(({ use, say }) => ({ key: say, placed: use.placed, thing: say }))).map(
    ({ things, steps }) => ({ say: things[0] ?? '', steps }),
  )
  return {
    does: refused.length > 0 ? [] : uses.filter((use) => !failing.includes(use)),
    unfit: {
      id: instrument.id,
      title: instrument.title,
      refused: refused.length > 0,
      why: [...refused.map((say) => ({ say, steps: null })), ...said],
    },
  }
}

function named(instrument: Instrument, uses: readonly SeatUse[]): KitSeat['fit'][number] {
  const check = 'set_check' in instrument ? instrument.set_check : null
  return {
    id: instrument.id,
    title: instrument.title,
    due: instrument.calibration.due,
    standard: check === null ? null : `${check.standard}, ${check.size.text}`,
    scale: uses.every((use) => use.covers?.(instrument) !== false) ? null : scaleOf(instrument),
  }
}

function scaleOf(instrument: Instrument): string | null {
  return instrument.kind === 'gas_meter'
    ? null
    : `${instrument.range.from.text} to ${instrument.range.to.text}`
}

/** What is wanted, then each instrument that was looked at with why not. */
function heldWords(
  seat: Pick<KitSeat, 'kinds' | 'for' | 'unfit'>,
  open: readonly SeatUse[],
  uses: number,
): string {
  const steps = stepsOf(open.map((use) => use.placed))
  const what = `${a(list(seat.kinds, 'or'))} for ${seat.for} (${stepsText(steps)})`
  if (seat.unfit.length === 0) return `${what}: none in the register.`
  const whole = open.length === uses ? '' : ` can do ${list(open.map((use) => use.asks))}`
  return `${what}: none in the register${whole === '' ? ' is fit' : whole}. ${seat.unfit.map(unfitText).join('. ')}.`
}

/** `M-1: its calibration lapsed on 2025-11-30; it shows steps of ... (steps 9, 11)`. */
export function unfitText({ id, why }: Unfit): string {
  const clauses = why.map(({ say, steps }) => (steps === null ? say : `${say} (${stepsText(steps)})`))
  return `${id}: ${clauses.join('; ')}`
}
