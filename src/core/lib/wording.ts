// Small pieces of sentences about a word that somebody wrote: quoted, listed, and the nearest one that would be right.

/** The author's own word in a sentence, on one line, not too long for one, and with nothing in it that cannot be seen. */
export function quote(word: string): string {
  const flat = word
    .replace(/\s+/g, ' ')
    .replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '?')
    .trim()
  return `'${flat.length > 40 ? `${flat.slice(0, 37)}...` : flat}'`
}

/** With a capital in front. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
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

/** The choice closest to a misspelled word, if one is close enough to be meant: about one slip in three letters. */
export function nearest(word: string, choices: readonly string[]): string | undefined {
  const wanted = plain(word).slice(0, 80)
  let best: { choice: string; slips: number } | undefined
  for (const choice of choices) {
    const slips = slipsApart(wanted, plain(choice))
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
export function slipsApart(from: string, to: string): number {
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
