// What every cross-check of the definition files shares: the shape of a finding and a few ways to name things.
// A finding says where by path; turning a path into line and column is done where the text is known.

import { a, list, nearest, quote } from '../lib/wording.ts'

export type Path = readonly (string | number)[]

export interface Finding {
  readonly path: Path
  readonly code: string
  /** One sentence about the author's own word. */
  readonly message: string
  readonly hint?: string
  /** Point at the key of the path, not at its value. */
  readonly atKey?: true
  /** Start and end offset in the text at the path, where the problem is only a part of it. */
  readonly within?: { readonly start: number; readonly end: number }
  /** Left out for an error. */
  readonly severity?: 'warning'
}

export function finding(path: Path, code: string, message: string, hint?: string): Finding {
  return hint === undefined ? { path, code, message } : { path, code, message, hint }
}

export function warning(path: Path, code: string, message: string, hint?: string): Finding {
  return { ...finding(path, code, message, hint), severity: 'warning' }
}

/** Indices of items whose name an earlier item already has, each with the index of that first one. */
export function repeats(names: readonly string[]): { readonly at: number; readonly first: number }[] {
  const seen = new Map<string, number>()
  const found: { at: number; first: number }[] = []
  names.forEach((name, at) => {
    const first = seen.get(name)
    if (first === undefined) seen.set(name, at)
    else found.push({ at, first })
  })
  return found
}

/** One finding for each id in `items` that an earlier item has too; `base` is the path of the list. */
export function repeatedIds(base: Path, items: readonly { readonly id: string }[], what: string): Finding[] {
  return repeats(items.map((item) => item.id)).map(({ at, first }) => {
    const id = quote(items[at]?.id ?? '')
    const message = `${id} is already the id of ${what} ${first + 1} in this list.`
    return finding([...base, at, 'id'], 'repeated-id', message, `give each ${what} an id of its own`)
  })
}

/** A reference to something that is not there, with the nearest name that is. */
export function unknownId(path: Path, word: string, what: string, known: readonly string[]): Finding {
  const near = nearest(word, known)
  const others = known.length === 0 ? `no ${what} is declared` : `known here: ${list(known.slice(0, 8))}`
  const hint = near === undefined ? others : `did you mean ${near}?`
  return finding(
    path,
    `unknown-${what.replace(/ /g, '-')}`,
    `${quote(word)} is not ${a(what)} declared here.`,
    hint,
  )
}

/** A day, in seconds. Common practice, no source: what was tried or read on one day speaks of that day. */
const LONGEST_LIFE_S = 86_400

/** Evidence that would stand for longer than a day; mostly a slip in the unit. */
export function lintLongLife(life: { readonly text: string; readonly si: number }, path: Path): Finding[] {
  if (!(life.si > LONGEST_LIFE_S)) return []
  const message = `${quote(life.text)} is longer than a day, and what was seen then says little of today.`
  return [warning(path, 'long-life', message, 'say how long it may really be trusted')]
}
