// What is asked, folded to fit: where a terminal is too low for the whole of it, it stands on several sides that are turned over one
// by one. Hazard, what to do in trouble and the words come first and whole; then the question, under as much of the hazard as there is
// room for. Nothing is left out but what is drawn.
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
  /** Lines of what was just taken, above: as many of the hazard as that wants give way to it, but for one. */
  readonly taken?: number
}

export function fold({ must, text, ask, room, taken = 0 }: ToFold): Folded {
  const front = looser([...must, ...text], room, taken)
  // The hazard begins with what it is: so much of it as there is room for, and one line at the least, stays over the question.
  const back = packed(ask, must.length === 0 ? room : room - 1)
  const under = back.length === 0 ? [[]] : back
  const hazards = must.flat()
  const question = under.map((side) => {
    const left = Math.max(0, room - side.length)
    return [...hazards.slice(0, Math.min(left, Math.max(1, left - taken))), ...side]
  })
  return { sides: [...front, ...question], front: front.length }
}

/** Lower sides leave what was taken in sight, where they are no more of them. */
function looser(rows: readonly (readonly Line[])[], room: number, taken: number): Line[][] {
  const sides = packed(rows, room)
  const lower = packed(rows, Math.max(1, room - taken))
  return lower.length === sides.length ? lower : sides
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
