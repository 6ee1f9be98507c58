// What is asked, folded to fit: where a terminal is too low for the whole of it, it stands on several sides that are turned over one
// by one. Hazard, what to do in trouble and the words come first and whole; then the question, under the hazard where that has room as a
// whole, and else under a line that says where it stands. Nothing is left out, and no hazard is ever cut.
import type { Line } from './block.ts'

export interface Folded {
  /** What stands on each side, under the title. */
  readonly sides: readonly (readonly Line[])[]
  /** How many of them come before the question. */
  readonly front: number
}

export interface ToFold {
  /** Each row in its lines, as all three. */
  readonly must: readonly (readonly Line[])[]
  readonly text: readonly (readonly Line[])[]
  /** The question and its numbered answers. */
  readonly ask: readonly (readonly Line[])[]
  /** Lines that a side has. */
  readonly room: number
  /** Stands over the question in place of a hazard that has no room there: where it is read whole. */
  readonly pointer: readonly Line[]
  /** Lines of what was just taken, above: what to do in trouble gives way to them, and the hazard to the last of them. */
  readonly taken?: number
  /** Lines of a refusal over the question: the hazard gives way to all of them. */
  readonly over?: number
  /** The lowest picture in the lines that are left over a question, and beside what was taken one line of it. */
  readonly strip?: (free: number) => readonly Line[]
}

export function fold({ must, text, ask, room, pointer, taken = 0, over = 0, strip }: ToFold): Folded {
  const front = looser([...must, ...text], room, taken)
  const back = packedUp(ask, must.length === 0 ? room : room - pointer.length)
  const under = back.length === 0 ? [[]] : back
  const question = under.map((side) => {
    const shown = hazards(must, pointer, room - side.length - over, taken)
    const free = room - shown.length - side.length - over
    return [...shown, ...(strip?.(Math.max(free - taken, Math.min(1, free))) ?? []), ...side]
  })
  return { sides: [...front, ...question], front: front.length }
}

/** Lines of a side under its title: fewer are no help to anybody. */
export const LEAST = 4

/**
 * The sides beside a refusal or a notice of so many lines. Where the last one, on which is answered, has room for it, all are parted as
 * they were, whichever is up: parted otherwise by the side, a line of the question would stand on none. Else all of them are lower.
 */
export function besideSides(
  foldTo: (lines: number, over: number) => Folded,
  up: { readonly of: string; readonly n: number },
  beside: number,
  most: number,
  said: number,
): Folded & { readonly at: number } {
  const at = ({ sides, front }: Folded) => Math.min(up.of === 'front' ? up.n : front + up.n, sides.length - 1)
  const fits = (side: readonly Line[] | undefined) => (side?.length ?? 0) + beside <= most
  const low = () => foldTo(Math.max(LEAST, most - said), 0)
  const asWas = foldTo(most, beside)
  if (beside === 0 || !fits(asWas.sides.at(-1))) {
    const lower = low()
    return { ...lower, at: at(lower) }
  }
  return { ...asWas, at: at(asWas) }
}

/** What has to be seen, over a question that leaves it `left` lines: each row whole or not at all. */
function hazards(
  must: readonly (readonly Line[])[],
  pointer: readonly Line[],
  left: number,
  taken: number,
): readonly Line[] {
  const [hazard, ...others] = must
  if (hazard === undefined) return []
  if (hazard.length > left - Math.min(1, taken)) return pointer
  const shown = [...hazard]
  for (const lines of others) {
    if (shown.length + lines.length > left - taken) break
    shown.push(...lines)
  }
  return shown
}

/** Lower sides leave what was taken in sight, where they are no more of them. */
function looser(rows: readonly (readonly Line[])[], room: number, taken: number): Line[][] {
  const sides = packed(rows, room)
  const lower = packed(rows, Math.max(1, room - taken))
  return lower.length === sides.length ? lower : sides
}

/**
 * Rows on as few sides as will do, filled from the last one up: what is chosen from stands with the question, as only there it is
 * answered.
 */
function packedUp(rows: readonly (readonly Line[])[], room: number): Line[][] {
  const sides = packed(rows, room)
  if (rows.some((lines) => lines.length > room)) return sides
  const up: (readonly Line[])[][] = [[]]
  for (const lines of rows.toReversed()) {
    const [side = []] = up
    if (side.length > 0 && side.flat().length + lines.length > room) up.unshift([lines])
    else side.unshift(lines)
  }
  return up.length === sides.length ? up.map((side) => side.flat()) : sides
}

/** Rows in order on as few sides as will do; a row is parted only where it is longer than a side. */
function packed(rows: readonly (readonly Line[])[], room: number): Line[][] {
  const sides: Line[][] = []
  let side: Line[] = []
  for (const lines of rows) {
    if (side.length > 0 && side.length + lines.length > room) {
      sides.push(side)
      side = []
    }
    side.push(...lines)
    while (side.length > room) sides.push(side.splice(0, room))
  }
  if (side.length > 0) sides.push(side)
  return sides
}
