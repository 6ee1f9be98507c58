// Keys of people: a PIN is kept as its scrypt hash in the crew file, in the PHC string form
// `$scrypt$ln=15,r=8,p=1$salt$hash` (base64 without padding). The PIN itself is never stored, shown or logged.
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'

/** Cost: 2^15 blocks of 8, 32 MiB and some tens of milliseconds a try. Parameters of RFC 7914, section 2. */
const LN = 15
const R = 8
const P = 1
const BYTES = 32

const PHC = /^\$scrypt\$ln=(\d{1,2}),r=(\d{1,2}),p=(\d)\$([A-Za-z0-9+/]{16,64})\$([A-Za-z0-9+/]{32,128})$/

/** A new salted hash of a PIN. @throws when the PIN is not 4 to 12 digits: that is checked where it is keyed. */
export async function hashPin(pin: string, ln: number = LN): Promise<string> {
  if (!isPin(pin)) throw new Error('a PIN is 4 to 12 digits')
  const salt = randomBytes(16)
  const hash = await derive(pin, salt, { ln, r: R, p: P, bytes: BYTES })
  return `$scrypt$ln=${ln},r=${R},p=${P}$${bare(salt)}$${bare(hash)}`
}

/** The PINs that the example crews print beside their keys. */
const PRINTED: readonly string[] = [
  ...['4071', '2596', '8314', '6053', '1749'],
  ...['6318', '2907', '5174', '8426', '3095'],
]

export function isPin(text: string): boolean {
  return /^\d{4,12}$/.test(text)
}

/** Why this may not become somebody's PIN, in one sentence that does not say it, or null. */
export function pinProblem(pin: string): string | null {
  if (!isPin(pin)) return 'A PIN is 4 to 12 digits and nothing else.'
  const steps = new Set([...pin].slice(1).map((digit, i) => (Number(digit) - Number(pin[i]) + 10) % 10))
  // 1111, 2345, 9876, 8901: what is tried first. Common practice, no source.
  if (steps.size === 1 && [0, 1, 9].includes([...steps][0] ?? 0))
    return 'Digits all alike, or counting up or down, are guessed first: choose others.'
  if (PRINTED.includes(pin))
    return 'That PIN is printed in an example, where everybody can read it: choose another.'
  return null
}

/** Whether the PIN is the one that was hashed. A hash that cannot be read fits no PIN. */
export async function pinFits(pin: string, phc: string): Promise<boolean> {
  const m = PHC.exec(phc)
  if (m === null || !isPin(pin)) return false
  const [ln, r, p] = [Number(m[1]), Number(m[2]), Number(m[3])]
  if (ln < 10 || ln > 20 || r < 1 || r > 16 || p < 1) return false
  const wanted = Buffer.from(m[5] ?? '', 'base64')
  const got = await derive(pin, Buffer.from(m[4] ?? '', 'base64'), { ln, r, p, bytes: wanted.length })
  return wanted.length >= 24 && timingSafeEqual(got, wanted)
}

interface Cost {
  readonly ln: number
  readonly r: number
  readonly p: number
  readonly bytes: number
}

function derive(pin: string, salt: Buffer, { ln, r, p, bytes }: Cost): Promise<Buffer> {
  const N = 2 ** ln
  return new Promise((resolve, reject) => {
    scrypt(pin, salt, bytes, { N, r, p, maxmem: 256 * N * r }, (error, key) =>
      error === null ? resolve(key) : reject(error),
    )
  })
}

function bare(bytes: Buffer): string {
  return bytes.toString('base64').replace(/=+$/, '')
}
