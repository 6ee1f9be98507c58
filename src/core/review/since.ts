// What the log of a job took after its close: told apart from the job, which ended with it.
import type { Entry } from '../job/entries.ts'
import { byWhom, closeOf, count, type Look } from './look.ts'

export function addedSince(look: Look): string[] {
  const close = closeOf(look)
  if (close === null) return []
  const after = look.entries.filter(({ seq }) => seq > close.seq)
  const missed = after.filter(({ type }) => type === 'pin.missed').length
  return [
    ...after.flatMap((entry) => {
      const what = nameOf(entry)
      return what === null ? [] : [`${what}, ${byWhom(look, entry)}`]
    }),
    ...(missed === 0 ? [] : [`${count(missed, 'wrong PIN')}`]),
  ]
}

function nameOf(entry: Entry): string | null {
  switch (entry.type) {
    case 'instrument.doubted':
      return `${entry.instrument} out of calibration`
    case 'left.adopted':
      return 'adopted as the next baseline'
    case 'remark.made':
      return 'a lead’s words'
    default:
      return null
  }
}
