// The station that is being measured, and the words that stand for a picture where there is no room for one.
import { drawing } from './canvas.ts'
import type { Drawing, DrawnStation } from './types.ts'
import { plain } from './words.ts'

/** What stands for the place being measured where nothing is measured any more: a place of no station. */
const NOWHERE = -1

/** Null: none is being measured. Throws when no station has the id, which is a bug of the caller. */
export function hereIn(
  stations: readonly DrawnStation[],
  id: string | null,
): { readonly here: number; readonly current: DrawnStation } {
  const [first] = stations
  if (id === null && first !== undefined) return { here: NOWHERE, current: first }
  const here = stations.findIndex((station) => station.id === id)
  const current = stations[here]
  if (current === undefined) throw new Error(`no station '${id ?? ''}' to draw`)
  return { here, current }
}

/** Whether an instrument is drawn at all. */
export function isAnywhere(here: number): boolean {
  return here !== NOWHERE
}

export function inWords({ label }: DrawnStation, width: number): Drawing {
  return drawing([`HERE ${plain(label)}`.slice(0, Math.max(0, Math.floor(width)))])
}
