// What a piston that goes back in is set by: the limits of its end clearances and its runout, and the geometry of the machine.
import type { Definitions } from '../job/definitions.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { valuesOf, type Window, windowOf } from './facts-limits.ts'

export interface SetFacts {
  readonly head: Window
  readonly crank: Window
  /** Of what the piston runs on, in its bore. */
  readonly running: Window
  readonly hasRiders: boolean
  readonly asideM: number
  readonly upM: number
  readonly returnM: number
  readonly strokeM: number
  readonly rodLengthM: number
}

export function setFacts(defs: Definitions): Result<SetFacts> {
  const { bore, rod, rings } = defs.machine
  if (rod?.length === undefined)
    return refuse('no-rod', 'Practice needs the rod with its length in the machine record.')
  const hasRiders = rings?.rider_thickness !== undefined
  const head = windowOf(defs, 'end-clearance-head-least', 'end-clearance-head')
  if (!head.ok) return head
  const crank = windowOf(defs, 'end-clearance-crank-least', 'end-clearance-crank')
  if (!crank.ok) return crank
  const running = hasRiders
    ? windowOf(defs, 'rider-clearance-least', 'rider-clearance')
    : windowOf(defs, 'piston-clearance-least', 'piston-clearance')
  if (!running.ok) return running
  const others = valuesOf(defs, ['runout-horizontal', 'runout-vertical-deviation', 'dial-return'])
  if (!others.ok) return others
  const [asideM = Number.NaN, upM = Number.NaN, returnM = Number.NaN] = others.value
  return ok({
    head: head.value,
    crank: crank.value,
    running: running.value,
    hasRiders,
    asideM,
    upM,
    returnM,
    strokeM: bore.stroke.si,
    rodLengthM: rod.length.si,
  })
}
