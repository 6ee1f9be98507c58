// A picture told in words, for people who hear the sheet or cannot be shown a drawing: the same place, the same readings, in the same
// order.
import { axisText, SEEN_FROM } from './clock.ts'
import { hereIn } from './here.ts'
import type { DrawnPlace } from './place.ts'
import { NO_READING, type ProfileRow, profileCells } from './profile-cells.ts'
import type { DrawnStation } from './types.ts'

/** Which place it is of how many, how the instrument lies, and what is measured and to come beside it. */
export function tellPlace({ stations, here, axis }: DrawnPlace): string[] {
  const { current } = hereIn(stations, here)
  const order = [...stations].sort((a, b) => a.at - b.at)
  const clock = axis === undefined ? undefined : axisText(axis)
  const lies = clock === undefined ? [] : [`from ${clock}, ${SEEN_FROM}`]
  const nth = order.length < 2 ? [] : [`${order.indexOf(current) + 1} of ${order.length} along it`]
  if (nth.length === 0 && lies.length === 0) return []
  const others = order.filter((station) => station !== current)
  const measured = others.flatMap((s) => (s.value === undefined ? [] : [`${nameOf(s)} ${s.value}`]))
  const toCome = others.filter((s) => s.value === undefined).map(nameOf)
  return [
    `Where: ${[nameOf(current), ...nth, ...lies].join(', ')}.`,
    ...(measured.length === 0 ? [] : [`Measured: ${measured.join('; ')}.`]),
    ...(toCome.length === 0 ? [] : [`To come: ${toCome.join('; ')}.`]),
  ]
}

function nameOf({ words, label }: DrawnStation): string {
  return words ?? label
}

/** Each line of measurement with all its figures from the head end on; nothing until two stations have one. */
export function tellProfile(profile: {
  readonly stations: readonly DrawnStation[]
  readonly rows: readonly ProfileRow[]
  readonly unit: string
  readonly decimals: number
}): string[] {
  const { stations, rows } = profileCells(profile)
  const measured = stations.filter((_, i) => rows.some((row) => row.steps[i] !== undefined))
  if (measured.length < 2) return []
  return [
    `Along the bore (${profile.unit}):`,
    ...rows.map(({ label, figures }) => {
      const told = stations.map((name, i) => `${name} ${figures[i] === NO_READING ? 'to come' : figures[i]}`)
      return `${label}: ${told.join(', ')}.`
    }),
  ]
}
