// How a signature is shown: who signed stands first, and whose keyboard it was keyed at after that.
import type { Entry } from '../job/entries.ts'
import { FROM_PAPER, type OnSheet } from '../job/paper.ts'
import { MISSES_ALLOWED, type Signed, WAIT_AFTER_MISSES_MS } from '../job/signature.ts'
import type { State } from '../job/state.ts'
import { clockOf, readStamp } from '../lib/instant.ts'

/** A signature without a PIN says so; so do old entries, which had none. */
export function bySign(signed: Signed | undefined): string {
  return signed === 'pin' ? '' : ' (initials only)'
}

type Signable = Pick<Entry, 'at' | 'by'> & {
  readonly signed?: Signed
  readonly person?: string
  readonly radio?: { readonly by: string }
  readonly paper?: OnSheet | true
}

/** Who signed, where somebody did and it was not whoever had the keyboard. What was said by radio is signed by who heard it. */
export function signerBeside({ signed, person, radio, by }: Signable): string | null {
  const signer = signed === undefined ? undefined : (radio?.by ?? person)
  return signer === undefined || signer === by ? null : signer
}

/** `by RO 06:52`; of what another signed, `signed KH, keyed RO 06:52`. */
export function byLine(entry: Signable): string {
  const time = entry.at.slice(11, 16)
  if (typeof entry.paper === 'object') return fromSheet(entry.paper, entry.by, time)
  const signer = signerBeside(entry)
  if (signer !== null) return `signed ${signer}${entry.by === undefined ? '' : `, keyed ${entry.by}`} ${time}`
  return entry.by === undefined ? time : `by ${entry.by} ${time}`
}

/** `from paper 06:52 RO, keyed ML 14:10`: what stands beside it on the sheet, then who keyed it and when. */
function fromSheet(paper: OnSheet, by: string | undefined, keyed: string): string {
  return `${besideText(paper)}, keyed ${by ?? 'nobody'} ${keyed}`
}

/** `from paper 06:52 RO`. Boxes of the front have neither beside them. */
export function besideText({ time, who }: OnSheet): string {
  return time === null && who === null
    ? FROM_PAPER
    : `${FROM_PAPER} ${time?.slice(-5) ?? 'no time'} ${who ?? 'no initials'}`
}

/** `state` is the one after the entry: how many in a row it is, and until when no other is looked at. */
export function missedText(state: State, { person, at }: Extract<Entry, { type: 'pin.missed' }>): string {
  const count = state.pinMisses[person]?.count ?? 1
  const keyed = `A PIN was keyed that is not ${person}'s`
  if (count < MISSES_ALLOWED)
    return `${keyed}: ${count} of ${MISSES_ALLOWED} in a row; after ${MISSES_ALLOWED} none of ${person}'s is looked at for ${WAIT_AFTER_MISSES_MS / 60_000} min.`
  const now = readStamp(at)
  const until =
    now === null ? 'five minutes from now' : clockOf({ ...now, ms: now.ms + WAIT_AFTER_MISSES_MS })
  return `${keyed}: ${count} in a row. No other of theirs is looked at until ${until}. STOP and coming out need none.`
}
