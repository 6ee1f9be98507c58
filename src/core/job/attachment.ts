// Files attached to a job: what may be said of one in the log, and under which name it is kept. Knows no disk. An attachment
// is never evidence: it opens no gate, settles no reading and completes no step.
import { formatNumber } from '../lib/decimal.ts'
import { clean } from '../lib/text.ts'

/** What was kept of a file, by the bytes that were written. */
export interface KeptFile {
  /** Name in the folder of the job's files. */
  readonly name: string
  /** Base name it had where it came from; nothing else of that computer. */
  readonly given: string
  /** Bytes. */
  readonly size: number
  readonly sha256: string
}

export interface AttachedFile extends KeptFile {
  /** Entry it was attached with. */
  readonly seq: number
  readonly at: string
  readonly by: string | null
  readonly step: string | null
  /** What it shows, in words. */
  readonly caption: string
}

/** Largest file that is taken, in bytes. Our own figure: a photo or a scan is far smaller, and a log is carried about. */
export const MOST_FILE_BYTES = 50_000_000

const MOST_NAME = 100
const MOST_GIVEN = 255
const MOST_ENDING = 10

/** A name that no system takes for a folder, a device, an option or a hidden file. */
const KEPT = /^[\p{L}\p{N}_][\p{L}\p{M}\p{N}._ -]*$/u
/** Windows keeps these for devices, whatever ending they have. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i

export function isKeptName(name: string): boolean {
  return KEPT.test(name) && name.length <= MOST_NAME && !DEVICE.test(name) && !/[. ]$/.test(name)
}

export function isGivenName(name: string): boolean {
  return name !== '' && name.length <= MOST_GIVEN && !/[/\\]/.test(name) && clean(name) === name
}

export function isSha256(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text)
}

export function isFileSize(size: number): boolean {
  return Number.isSafeInteger(size) && size > 0 && size <= MOST_FILE_BYTES
}

/** The base name as it is told: what cannot be seen, and what parts folders, becomes `?`. */
export function givenName(base: string): string {
  const told = [...clean(base.slice(0, 2 * MOST_GIVEN)).replace(/[/\\]/g, '?')]
  let name = ''
  for (const one of told) {
    if (name.length + one.length > MOST_GIVEN) break
    name += one
  }
  return name === '' ? '?' : name
}

/** The name to keep it under; from the second of one name on with its number, `wall-2.jpg`. */
export function keptName(given: string, count: number): string {
  const plain = given
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}._ -]/gu, '_')
    .replace(/[. ]+$/, '')
  const dot = plain.lastIndexOf('.')
  const hasEnding = dot > 0 && plain.length - dot <= MOST_ENDING + 1
  const ending = hasEnding ? plain.slice(dot) : ''
  const tail = count < 2 ? ending : `-${count}${ending}`
  const stem = (hasEnding ? plain.slice(0, dot) : plain)
    .replace(/^[^\p{L}\p{N}_]+/u, '_')
    .slice(0, MOST_NAME - 1 - tail.length)
    // Half of a character that takes two units must not be left over.
    .replace(/[\ud800-\udbff]$/, '')
  const name = `${stem === '' ? '_' : stem}${tail}`
  return DEVICE.test(name) ? `_${name}` : name
}

/** `2.1 MB`, `840 kB`, `12 bytes`; in thousands, as makers of cards and cameras count. */
export function sizeText(size: number): string {
  if (size >= 999_500) return `${formatNumber(size / 1_000_000, 1)} MB`
  if (size >= 1000) return `${formatNumber(size / 1000, 0)} kB`
  return size === 1 ? '1 byte' : `${size} bytes`
}

/** `bore-wall.jpg, 2.1 MB: the score at the crank end`. */
export function fileText({ name, size, caption }: Pick<AttachedFile, 'name' | 'size' | 'caption'>): string {
  return `${name}, ${sizeText(size)}: ${caption}`
}
