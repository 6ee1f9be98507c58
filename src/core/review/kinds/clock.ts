// Where the clock jumped, and where times run backwards without the log saying why.
import { readStamp } from '../../lib/instant.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look } from '../look.ts'

export function clockJumps(look: Look): Found[] {
  const moved = entriesOf(look, 'clock.moved').map(
    (e): Found => ({
      kind: 'clock',
      what: `The clock moved by ${e.seconds} s, ${byWhom(look, e)}`,
      sentences: ['Every hold point fell by it, and times on either side of it are not to be compared.'],
      entries: [e.seq],
      open: false,
    }),
  )
  const back = look.entries.flatMap((entry, i): Found[] => {
    const before = look.entries[i - 1]
    if (before === undefined || entry.type === 'clock.moved') return []
    const [from, to] = [readStamp(before.at)?.ms, readStamp(entry.at)?.ms]
    if (from !== undefined && to !== undefined && to >= from) return []
    return [
      {
        kind: 'clock',
        what: `Entry ${entry.seq} is older than the one before it, and the log does not say why`,
        sentences: [`${before.at} is followed by ${entry.at}.`],
        entries: [before.seq, entry.seq],
        open: true,
        grave: -1,
      },
    ]
  })
  return [...moved, ...back]
}
