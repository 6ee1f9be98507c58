// What came with the last line, where its beginning would be pushed off the screen by the question under it: it is held back from the
// transcript and read on sides of its own, and goes up with the next line.
import { useRef } from 'react'
import type { Shown } from '../app/session.ts'

export interface ToReadInput {
  readonly shown: readonly Shown[]
  /** Of the transcript, the first that came with the last line. */
  readonly came: number
  /** The line is still being taken: more may come with it. */
  readonly isPending: boolean
  /** Rows above the question. */
  readonly room: number
  /** The job ends: everything goes up. */
  readonly isOver: boolean
  readonly heightOf: (one: Shown) => number
  /** Nobody may miss how it begins. Of other entries it is enough that they are on record. */
  readonly isToRead: (one: Shown) => boolean
}

/** From where on the transcript is held back; its length where nothing is. */
export function useToRead(input: ToReadInput): number {
  const { shown, came, isPending, isOver } = input
  const held = useRef<{ readonly from: number; readonly to: number } | null>(null)
  /** What went up is up for good. */
  const up = useRef(0)
  const { length } = shown
  const at = held.current
  // Whatever comes of itself, as a lapse, is in sight at once.
  if (at !== null && (at.from < came || isOver || (length > at.to && !isPending))) {
    held.current = null
    // What came with the next line may be here already: it is not up yet.
    up.current = at.from < came ? came : length
  }
  if (!isOver) {
    const from = held.current?.from ?? firstCutOff(input, Math.max(came, up.current))
    held.current = from === null ? null : { from, to: length }
  }
  up.current = Math.max(up.current, held.current?.from ?? length)
  return held.current?.from ?? length
}

/** The first from `start` on that has to be read and would begin above the screen; null for none. */
function firstCutOff({ shown, room, heightOf, isToRead }: ToReadInput, start: number): number | null {
  let rows = 0
  let found: number | null = null
  for (let i = shown.length - 1; i >= start; i--) {
    const one = shown[i]
    if (one === undefined) continue
    rows += heightOf(one)
    if (rows > room && isToRead(one)) found = i
  }
  return found
}
