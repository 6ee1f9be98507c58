// A grid of single characters that drawings are put on, and the two sets of signs: box and ASCII.
import type { Drawing } from './types.ts'

/** The one sign for the instrument, the same in both forms: the blackest sign there is, never used as a wall. */
export const INSTRUMENT = '#'

export interface Signs {
  readonly wall: string
  /** Wall swept by the rings. */
  readonly swept: string
  readonly upright: string
  readonly topLeft: string
  readonly topRight: string
  readonly lowLeft: string
  readonly lowRight: string
  readonly spanFrom: string
  readonly spanTo: string
  readonly roundTopLeft: string
  readonly roundTopRight: string
  readonly roundLowLeft: string
  readonly roundLowRight: string
  readonly bar: string
}

const BOX: Signs = {
  wall: '─',
  swept: '═',
  upright: '│',
  topLeft: '┌',
  topRight: '┐',
  lowLeft: '└',
  lowRight: '┘',
  spanFrom: '├',
  spanTo: '┤',
  roundTopLeft: '╭',
  roundTopRight: '╮',
  roundLowLeft: '╰',
  roundLowRight: '╯',
  bar: '━',
}

const ASCII: Signs = {
  wall: '-',
  swept: '=',
  upright: '|',
  topLeft: '+',
  topRight: '+',
  lowLeft: '+',
  lowRight: '+',
  spanFrom: '|',
  spanTo: '|',
  roundTopLeft: '.',
  roundTopRight: '.',
  roundLowLeft: "'",
  roundLowRight: "'",
  bar: '=',
}

export function signs(ascii: boolean): Signs {
  return ascii ? ASCII : BOX
}

export interface Canvas {
  /** Writes text from a column on; what falls outside the grid is left out. */
  put(row: number, column: number, text: string): void
  /** Writes one sign on every column from `from` to `to`, both included. */
  run(row: number, from: number, to: number, sign: string): void
  at(row: number, column: number): string
  lines(): string[]
}

export function canvas(rows: number, width: number): Canvas {
  const grid = Array.from({ length: rows }, () => new Array<string>(width).fill(' '))
  const put = (row: number, column: number, text: string): void => {
    const line = grid[row]
    if (line === undefined) return
    for (let i = 0; i < text.length; i += 1) {
      if (column + i >= 0 && column + i < width) line[column + i] = text.charAt(i)
    }
  }
  return {
    put,
    run: (row, from, to, sign) => put(row, from, sign.repeat(Math.max(0, to - from + 1))),
    at: (row, column) => grid[row]?.[column] ?? ' ',
    lines: () => grid.map((line) => line.join('').trimEnd()),
  }
}

export function drawing(lines: readonly string[]): Drawing {
  const trimmed = lines.map((line) => line.trimEnd())
  return { lines: trimmed, width: Math.max(0, ...trimmed.map((line) => line.length)) }
}

/** Two drawings next to each other, the tops level. */
export function beside(left: Drawing, right: Drawing, gap: number): Drawing {
  const rows = Math.max(left.lines.length, right.lines.length)
  const pad = left.width + gap
  return drawing(
    Array.from({ length: rows }, (_, i) => (left.lines[i] ?? '').padEnd(pad) + (right.lines[i] ?? '')),
  )
}
