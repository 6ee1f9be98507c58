// A time as a report tells it: `40 s`, `12 min`, `8 h 5 min`. Rounded up, so that nothing is told younger than it was.

export function durationText(seconds: number): string {
  const whole = Math.ceil(seconds)
  if (whole < 120) return `${whole} s`
  const minutes = Math.ceil(whole / 60)
  if (minutes < 120) return `${minutes} min`
  const rest = minutes % 60
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`
}
