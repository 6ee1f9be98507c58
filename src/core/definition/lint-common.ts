// What every cross-check of the definition files shares: the shape of a finding and a few ways to name things.
// A finding says where by path; turning a path into line and column is done where the text is known.

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

/** The author's own word in a sentence, on one line, not too long for one, and with nothing in it that cannot be seen. */
export function quote(word: string): string {
  const flat = word
    .replace(/\s+/g, ' ')
    .replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '?')
    .trim()
  return `'${flat.length > 40 ? `${flat.slice(0, 37)}...` : flat}'`
}

/** The word with `a` or `an` in front. */
export function a(word: string): string {
  return `${/^[aeiou]/i.test(word) ? 'an' : 'a'} ${word}`
}

/** `a`, `a and b`, `a, b and c`. */
export function list(words: readonly string[], join: 'and' | 'or' = 'and'): string {
  if (words.length < 2) return words[0] ?? 'none'
  return `${words.slice(0, -1).join(', ')} ${join} ${words[words.length - 1]}`
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

/** The choice closest to a misspelled word, if one is close enough to be meant: about one slip in three letters. */
export function nearest(word: string, choices: readonly string[]): string | undefined {
  const wanted = plain(word).slice(0, 80)
  let best: { choice: string; slips: number } | undefined
  for (const choice of choices) {
    const slips = distance(wanted, plain(choice))
    const most = Math.max(1, Math.floor(Math.max(wanted.length, choice.length) / 3))
    if (slips <= most && slips < choice.length && (best === undefined || slips < best.slips))
      best = { choice, slips }
  }
  return best?.choice
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[-\s]/g, '_')
}

/** Letters to insert, drop, change or swap with their neighbour to get from one word to the other. */
function distance(from: string, to: string): number {
  let before: number[] = []
  let last = Array.from({ length: to.length + 1 }, (_, j) => j)
  for (let i = 1; i <= from.length; i++) {
    const row = [i]
    for (let j = 1; j <= to.length; j++) {
      const change = at(last, j - 1) + (from[i - 1] === to[j - 1] ? 0 : 1)
      let cost = Math.min(at(last, j) + 1, at(row, j - 1) + 1, change)
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]
      if (swapped) cost = Math.min(cost, at(before, j - 2) + 1)
      row.push(cost)
    }
    before = last
    last = row
  }
  return at(last, to.length)
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.POSITIVE_INFINITY
}
