// What the lead might do about a judged bore: proposals in words, never orders, never a verdict.

import type { Judgement } from '../metrology/conformity.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import type { BoreCharacteristic, Hold } from './bore-judge-input.ts'
import type { ReboreRoom } from './bore-wear.ts'

export interface Proposal {
  readonly kind:
    | 'nothing-to-do'
    | 'keep-watch'
    | 'measure-again'
    | 'judge-again'
    | 'bore'
    | 'renew-liner'
    | 'line-or-renew'
  readonly say: string
}

export interface ProposalInput {
  readonly verdict: VerdictWord
  readonly judged: readonly { readonly characteristic: BoreCharacteristic; readonly judgement: Judgement }[]
  readonly holds: readonly Hold[]
  readonly lined: boolean
  /** Null when the room for boring out is not known. */
  readonly room: ReboreRoom | null
}

const WATCH: Proposal = {
  kind: 'keep-watch',
  say: 'Keep watch: read the same places at the next opening; by which day or running hours, a lead says with the reason.',
}
const NOTHING: Proposal = { kind: 'nothing-to-do', say: 'Nothing to do to the bore.' }
const RENEW_LINER: Proposal = { kind: 'renew-liner', say: 'Renew the liner.' }
const LINE_OR_RENEW: Proposal = {
  kind: 'line-or-renew',
  say: 'No boring out within the limits: ask the maker whether the cylinder may be lined, or renew it.',
}
/** Bloch & Hoefner 1996, p. 258-259: a hone follows the bore it is in. */
const HONE_LAST = 'honing takes out neither taper nor out-of-round, so bore first and hone last'

/** In the order a lead would weigh them. A bore on HOLD is first measured or recorded right. */
export function proposalsFor(input: ProposalInput): Proposal[] {
  const beyond = input.judged.filter(
    ({ judgement: { verdict } }) => verdict === 'REWORK' || verdict === 'REPLACE',
  )
  const again = input.verdict === 'HOLD' ? onceMore(input.holds) : []
  if (beyond.length > 0) return [...again, ...cure(input, beyond)]
  if (input.verdict === 'MONITOR') return [WATCH]
  return input.verdict === 'ACCEPT' ? [NOTHING] : again
}

function onceMore(holds: readonly Hold[]): Proposal[] {
  const proposals: Proposal[] = []
  if (holds.some(({ about }) => about === 'measuring'))
    proposals.push({
      kind: 'measure-again',
      say: 'Measure again, after putting right what is named on hold.',
    })
  if (holds.some(({ about }) => about === 'record'))
    proposals.push({
      kind: 'judge-again',
      say: 'Complete the record that is named on hold, then judge again.',
    })
  return proposals
}

function cure({ lined, room }: ProposalInput, beyond: ProposalInput['judged']): Proposal[] {
  // A bore over its greatest diameter, or one its own limit sends to REPLACE, is not helped by taking more out.
  const isPastBoring = beyond.some(
    ({ characteristic, judgement }) =>
      characteristic === 'largest-diameter' || judgement.verdict === 'REPLACE',
  )
  const renew = lined ? RENEW_LINER : LINE_OR_RENEW
  if (isPastBoring || (room !== null && room.roomM <= 0)) return [renew]
  const isFormWrong = beyond.some(({ characteristic }) => characteristic !== 'largest-diameter')
  const hone = isFormWrong ? `; ${HONE_LAST}` : ''
  if (lined) {
    // A liner is thin: it is bored only within a greatest bore that the book gives.
    if (room?.boundBy !== 'greatest bore of the book') return [RENEW_LINER]
    return [{ kind: 'bore', say: `Bore the liner within the greatest bore of the book${hone}.` }, RENEW_LINER]
  }
  if (room === null)
    return [{ kind: 'bore', say: `Bore the cylinder, once the room to the counterbore is known${hone}.` }]
  return [{ kind: 'bore', say: `Bore the cylinder within the ${room.boundBy}${hone}.` }]
}
