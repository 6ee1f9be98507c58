// The page of a source, as the source itself names it.

/** `p. 259`, `sheet 12`, as the source itself names it; null where it names none. */
export function pageIn(source: string): string | null {
  const found =
    /\b(?:pp?\.|pages?|sheets?|tables?|clauses?|sections?|drawing)\s*[\w./-]*\d[\w./-]*(?:\s*(?:-|to|and)\s*\d[\d-]*)?/i.exec(
      source,
    )
  return found === null ? null : found[0].replace(/[.,;)]+$/, '')
}
