// Durations as a person writes them in an answers file: `40 s`, `12 min`, `1 h`.

/** Milliseconds, or null for anything that is not a plain duration above zero. */
export function durationMs(text: string): number | null {
  const m = /^(\d{1,5}(?:\.\d{1,3})?)\s*(s|min|h)$/.exec(text.trim())
  if (m === null) return null
  const per = { s: 1000, min: 60_000, h: 3_600_000 }[m[2] as 's' | 'min' | 'h']
  const ms = Math.round(Number(m[1]) * per)
  return ms > 0 ? ms : null
}
