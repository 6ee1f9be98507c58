// How a signature is shown.
import type { Signed } from '../job/signature.ts'

/** A signature without a PIN says so; so do old entries, which had none. */
export function bySign(signed: Signed | undefined): string {
  return signed === 'pin' ? '' : ' (initials only)'
}
