// Two of the list that would read the same are told apart: by whom and when, or by the entry.
import type { Exception } from './exception.ts'
import { byWhom, type Look } from './look.ts'

export function toldApart(look: Look, all: readonly Exception[]): Exception[] {
  const sameAs = (one: Exception) => all.filter(({ what }) => what === one.what)
  return all.map((one) => {
    const same = sameAs(one)
    if (same.length < 2) return one
    const times = same.map((other) => timeOf(look, other))
    const mine = timeOf(look, one)
    const isAlone = mine !== null && times.filter((time) => time === mine).length === 1
    const [entry] = one.entries
    const by = isAlone ? mine : entry === undefined ? mine : `${mine ?? ''} entry ${entry}`.trim()
    return by === null ? one : { ...one, what: `${one.what}, ${by}` }
  })
}

function timeOf(look: Look, { entries: [seq] }: Exception): string | null {
  const entry = seq === undefined ? undefined : look.entries[seq]
  return entry === undefined ? null : byWhom(look, entry)
}
