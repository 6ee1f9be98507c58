// A list cut to the rows there are: nothing is left out, what does not fit is counted by its kind, the least grave first.
import type { Exception, Kind } from './exception.ts'

export type Listed =
  | { readonly is: 'one'; readonly one: Exception }
  | { readonly is: 'many'; readonly kind: Kind; readonly of: readonly Exception[] }
  /** Kinds that did not fit even counted; only on a screen of a few rows. */
  | { readonly is: 'rest'; readonly of: readonly Exception[] }

/** Each always on a line of its own: a word that was denied is what changed last, and undoes what stands above it. */
const NEVER_FOLDED: readonly Kind[] = ['denied']

const isKept = ({ kind }: Exception) => NEVER_FOLDED.includes(kind)

/** `heightOf`: rows that one takes when it is told in full. */
export function foldTo(
  exceptions: readonly Exception[],
  rows: number,
  heightOf: (one: Exception) => number = () => 1,
): Listed[] {
  const groups: { kind: Kind; of: Exception[]; isFolded: boolean }[] = []
  for (const one of exceptions) {
    const last = groups[groups.length - 1]
    if (last?.kind === one.kind) last.of.push(one)
    else groups.push({ kind: one.kind, of: [one], isFolded: false })
  }
  const whole = (of: readonly Exception[]) => of.reduce((sum, one) => sum + heightOf(one), 0)
  const taken = () => groups.reduce((sum, g) => sum + (g.isFolded ? 1 : whole(g.of)), 0)
  for (const group of [...groups].reverse()) {
    if (taken() <= rows) break
    group.isFolded = group.of.length > 1 && !group.of.some(isKept)
  }
  // Folding a long kind may leave room for a short one after all: the worst first.
  for (const group of groups) {
    if (group.isFolded && taken() + whole(group.of) - 1 <= rows) group.isFolded = false
  }
  const listed = groups.flatMap(({ kind, of, isFolded }): Listed[] =>
    isFolded ? [{ is: 'many', kind, of }] : of.map((one): Listed => ({ is: 'one', one })),
  )
  if (listed.length <= rows) return listed
  const kept = listed.filter((l) => l.is === 'one' && isKept(l.one)).slice(0, Math.max(0, rows - 1))
  const others = listed.filter((l) => !kept.includes(l))
  const shown = others.slice(0, Math.max(0, rows - 1 - kept.length))
  const rest = others.slice(shown.length).flatMap((l) => (l.is === 'one' ? [l.one] : l.of))
  return [...[...shown, ...kept].sort((a, b) => firstOf(a) - firstOf(b)), { is: 'rest', of: rest }]
}

const firstOf = (listed: Listed) => (listed.is === 'one' ? listed.one : listed.of[0])?.number ?? 0
