// The ruling of the sheet, as on paper: one rule between margin and words from top to bottom, and short strokes that set off what is
// asked. Nothing is joined to anything. The only place that names these signs.

/** Between margin and words, on every line. */
export function marginRule(ascii: boolean): string {
  return ascii ? '|' : '│'
}

/** Short, so that no resize breaks it in two. */
const STROKE = 24

/** Sets what is asked off from what is on record, above, and from the foot. */
export function stroke(ascii: boolean, most: number): string {
  return (ascii ? '-' : '─').repeat(Math.min(STROKE, most))
}
