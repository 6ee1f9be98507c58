// What the hidden machine answers while a cylinder is isolated, vented and swept.
import { formatNumber, fromSi, valueIn } from '../units/index.ts'
import { isSour } from './inside-air.ts'
import type { HiddenMachine } from './machine.ts'
import type { EndTruth } from './parts.ts'
import { eye, type Teller, type Tellers } from './tell.ts'
import { bleedsSeen, holdPoint, type Waited } from './tell-hold-point.ts'

/** By the record: what it calls sour, or has H2S in, poisons. */
const breathingAir: Teller = ({ defs }) => {
  const { gas } = defs.machine.service
  const seen = `The record says: ${gas}. The permit says the same.`
  return isSour(gas)
    ? eye(`${seen} Air sets lie at the machine, tried today, one for each and one for who watches.`, 'worn')
    : eye(seen, 'clean')
}

export const ISOLATION: Tellers = {
  breathing_air: breathingAir,
  isolation: holdPoint(),
}

const psi = (pa: number) => formatNumber(valueIn(fromSi('pressure-gauge', pa), 'psig'), 1)

/** Both gauges, as they climb. A low-range gauge is full at 15 psig, and shows no more. */
function held({ parts }: HiddenMachine, sinceS: number | null): Waited {
  if (parts.closed === null) return { seen: 'There is nothing to wait for.', isSo: false }
  const { head, crank } = parts.closed
  const now = (end: EndTruth) => Math.min(FULL_PA, end.pressurePa + end.risePaPerS * (sinceS ?? 0))
  if (sinceS === null)
    return {
      seen: `Both vents shut. HEAD END ${psi(now(head))} psig, CRANK END ${psi(now(crank))} psig, noted.`,
      isSo: true,
    }
  const seen = `HEAD END ${psi(head.pressurePa)} psig when it began, ${psi(now(head))} now. CRANK END ${psi(crank.pressurePa)}, ${psi(now(crank))} now.`
  const isSo = [head, crank].every((end) => psi(now(end)) === psi(end.pressurePa))
  return { seen, isSo }
}

const FULL_PA = 15 * 6894.757293168

export const VENT_AND_PURGE: Tellers = {
  at_zero: holdPoint({
    measured: {
      head_end_zero: ({ parts }) => parts.closed?.head.pressurePa ?? Number.NaN,
      crank_end_zero: ({ parts }) => parts.closed?.crank.pressurePa ?? Number.NaN,
    },
    waits: { hold: held },
    words: { no_flow: bleedsSeen },
  }),
}
