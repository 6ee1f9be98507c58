// Colour by tone. It only repeats what a word already says, and is left out altogether under NO_COLOR.
import process from 'node:process'
import type { Tone } from '../core/sheet/block.ts'

export interface Look {
  readonly bold?: boolean
  readonly inverse?: boolean
  readonly color?: string
}

const LOOKS: Readonly<Record<Tone, Look>> = {
  plain: {},
  strong: { bold: true },
  faint: {},
  caution: { bold: true, color: 'red' },
  stamp: { bold: true, inverse: true },
}

export function lookOf(tone: Tone): Look {
  const look = LOOKS[tone]
  if (process.env.NO_COLOR === undefined || process.env.NO_COLOR === '') return look
  const { color: _color, ...rest } = look
  return rest
}
