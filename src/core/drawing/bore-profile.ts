// Wear along the bore, one line of bars for each line of measurement, with the figures.

import { drawing, signs } from './canvas.ts'
import { type Cells, type ProfileRow, profileCells } from './profile-cells.ts'
import type { Drawing, DrawnStation, DrawOptions } from './types.ts'
import { nameForms, wrap } from './words.ts'

export interface BoreProfile {
  readonly stations: readonly DrawnStation[]
  /** Readings by line of measurement, in the order of `stations`. */
  readonly rows: readonly ProfileRow[]
  readonly unit: string
  /** Decimals the readings are kept to, 0 to 10; bars and figures both go by the reading at this resolution. */
  readonly decimals: number
}

export const PROFILE_LINES = 8
const MOST_WIDTH = 66
const LEAST_BAR = 3

/**
 * At most 8 lines of 66 columns; no lines at all until two stations have a reading. A missing or non-finite reading is
 * `-` without a bar. Bars start at the smallest reading of all rows, so equal figures have equal bars. Throws when
 * `decimals` is no whole number from 0 to 10, which is a bug of the caller.
 *
 * One line for each reading, grouped by axis, where that fits; else one column for each station; else, with no room
 * for bars, the smallest and the largest of each axis in words.
 */
export function drawBoreProfile(profile: BoreProfile, options: DrawOptions): Drawing {
  const width = Math.min(MOST_WIDTH, Math.floor(options.width))
  const height = Math.min(PROFILE_LINES, options.height ?? PROFILE_LINES)
  const cells = profileCells(profile)
  const measured = cells.stations.filter((_, i) => cells.rows.some((row) => row.steps[i] !== undefined))
  if (measured.length < 2 || width < 1) return drawing([])
  const lines =
    listed(cells, width, height, options.ascii) ??
    tabled(cells, width, height, options.ascii) ??
    told(cells, width, height)
  return drawing(lines)
}

/** Bar lengths are shares of the spread; a reading above the smallest shows at least one sign. */
function barOf(steps: number, cells: Cells, room: number, ascii: boolean): string {
  const sign = signs(ascii)
  const length = steps === 0 ? 0 : Math.max(1, Math.round((steps / cells.spread) * room))
  return sign.upright + sign.bar.repeat(length)
}

function listed(cells: Cells, width: number, height: number, ascii: boolean): string[] | undefined {
  const names = cells.rows.map((row) => row.label)
  const longest = (texts: readonly string[]): number => Math.max(0, ...texts.map((text) => text.length))
  const places = longest(cells.stations)
  const figures = longest(cells.rows.flatMap((row) => row.figures))
  const rest = places + 1 + figures + 2 + 1 + LEAST_BAR + 1
  const shown = shortNames(names, width - rest)
  if (shown === undefined) return undefined
  const before = longest(shown) + 1
  const room = width - before - (places + 1 + figures + 2 + 1)
  const note = noteOf(cells, width, height - cells.rows.length * cells.stations.length)
  if (note === undefined) return undefined
  const body = cells.rows.flatMap((row, r) =>
    cells.stations.map((station, i) => {
      const steps = row.steps[i]
      const bar = steps === undefined ? '' : `  ${barOf(steps, cells, room, ascii)}`
      const name = (i === 0 ? (shown[r] as string) : '').padEnd(before)
      return `${name}${station.padEnd(places)} ${(row.figures[i] as string).padEnd(figures)}${bar}`
    }),
  )
  return [...body, ...note]
}

/** One column for each station. With no room for whole figures, the last decimals above the smallest reading. */
function tabled(cells: Cells, width: number, height: number, ascii: boolean): string[] | undefined {
  const above = (steps: number | undefined): string => (steps === undefined ? '-' : `+${steps}`)
  return (
    table(cells, { figures: cells.rows.map((row) => row.figures), says: '' }, width, height, ascii) ??
    table(
      cells,
      {
        figures: cells.rows.map((row) => row.steps.map(above)),
        says: `+1 is ${cells.step} above ${cells.smallest}, `,
      },
      width,
      height,
      ascii,
    )
  )
}

interface Figures {
  readonly figures: readonly (readonly string[])[]
  /** What the note must say about the figures. */
  readonly says: string
}

function table(
  cells: Cells,
  { figures, says }: Figures,
  width: number,
  height: number,
  ascii: boolean,
): string[] | undefined {
  const count = cells.stations.length
  const least = Math.max(LEAST_BAR + 1, ...figures.flat().map((figure) => figure.length)) + 1
  const names = cells.rows.map((row) => row.label)
  const shown = shortNames(names, width - count * least - 1)
  if (shown === undefined) return undefined
  const before = Math.max(...shown.map((name) => name.length)) + 1
  const cell = Math.min(16, Math.floor((width - before) / count))
  const cut = shortNames(cells.stations, cell - 1)
  const heads = cut ?? cells.stations.map((_, i) => `${i + 1}`)
  const order = cut === undefined ? `1 to ${count} from HE to CE, ` : ''
  const note = noteOf(cells, width, height - 1 - 2 * cells.rows.length, order + says)
  if (note === undefined) return undefined
  const line = (name: string, texts: readonly string[]): string =>
    name.padEnd(before) + texts.map((text) => text.padEnd(cell)).join('')
  const bar = (steps: number | undefined): string =>
    steps === undefined ? '' : barOf(steps, cells, cell - 2, ascii)
  const body = cells.rows.flatMap((row, r) => [
    line(shown[r] as string, figures[r] as string[]),
    line('', row.steps.map(bar)),
  ])
  return [line('', heads), ...body, ...note]
}

/** Words alone: each axis's smallest and largest reading. What has no room is counted, never left out in silence. */
function told(cells: Cells, width: number, height: number): string[] {
  const lines = cells.rows.map((row) => {
    const have = row.steps.flatMap((steps, i) => (steps === undefined ? [] : [{ steps, i }]))
    if (have.length === 0) return `${row.label} -`
    const figure = (steps: number): string =>
      row.figures[have.find((one) => one.steps === steps)?.i ?? 0] as string
    const all = have.map((one) => one.steps)
    const [least, most] = [Math.min(...all), Math.max(...all)]
    if (least === most) return `${row.label} ${figure(least)}`
    // How many places lie in it, where that has room: it is no band of a single one.
    const band = `${figure(least)} to ${figure(most)}`
    const counted = `${row.label}, ${have.length} places: ${band}`
    return counted.length <= width ? counted : `${row.label} ${band}`
  })
  const fits = (line: string): boolean => line.length <= width
  if (lines.length <= height && lines.every(fits)) return lines
  const kept = lines.filter(fits).slice(0, Math.max(0, height - 1))
  const left = `+${lines.length - kept.length} more, no room`
  return height >= 1 && left.length <= width ? [...kept, left] : []
}

/** Names cut to a width, still told apart; undefined when that can't be. */
function shortNames(names: readonly string[], width: number): string[] | undefined {
  const short = names.map((name) =>
    name === '' ? '' : nameForms(name, names).find((form) => form.length <= width),
  )
  return width > 0 && short.every((name): name is string => name !== undefined) ? short : undefined
}

/** What the bars and figures mean, in at most `lines` lines. */
function noteOf(cells: Cells, width: number, lines: number, first = ''): string[] | undefined {
  const { unit } = cells
  const bars =
    cells.spread === 0
      ? ['all readings the same, no bars']
      : ['not to scale, bars from the smallest reading', 'not to scale, bars from smallest reading']
  const texts = bars.map((text) => (unit === '' ? first + text : `[${unit}] ${first}${text}`))
  return texts.map((text) => wrap(text, width)).find((wrapped) => wrapped.length <= lines)
}
