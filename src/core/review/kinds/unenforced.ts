// What keeps a record from showing that hold points were kept by people at the machine.
import type { Found } from '../exception.ts'
import { entriesOf, type Look } from '../look.ts'

export function notEnforced(look: Look): Found[] {
  return entriesOf(look, 'job.opened').flatMap((opened): Found[] => {
    const { answers, clock, seq } = opened
    const base = { kind: 'unenforced', entries: [seq], open: false } as const
    return [
      ...(answers === 'script'
        ? [
            {
              ...base,
              what: 'Answers from a file or a pipe: gates not enforced by Barover',
              sentences: [
                'Nobody was asked at the machine: it shows that the answers fit together, and not that anything was so.',
              ],
            },
          ]
        : []),
      ...(clock === 'set'
        ? [
            {
              ...base,
              what: 'Clock set by hand: no time in it tells when anything was done',
              sentences: [`It was set to ${opened.at.slice(0, 16).replace('T', ' ')} when it was opened.`],
            },
          ]
        : []),
    ]
  })
}
