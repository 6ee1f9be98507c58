// Durations as a person writes them in an answers file: `40 s`, `12 min`, `1 h`.

/** Milliseconds, or null for anything that is not a plain duration above zero. */
export function durationMs(text: string): number | null {
  const m = /^(\d{1,5}(?:\.\d{1,3})?)\s*(s|min|h)$/.exec(text.trim())
  if (m === null) return null
  const per = { s: 1000, min: 60_000, h: 3_600_000 }[m[2] as 's' | 'min' | 'h']
  const ms = Math.round(Number(m[1]) * per)
  return ms > 0 ? ms : null
}

/** What is left of a time, rounded up so that it never says less: `7 min`, or `40 s` inside the last minute. */
export function leftWords(ms: number): string {
  if (!Number.isFinite(ms)) return 'no end'
  return ms > 60_000 ? `${Math.ceil(ms / 60_000)} min` : `${Math.max(0, Math.ceil(ms / 1000))} s`
}
