// Attached files that are not as they were when they were attached.
import type { Found } from '../exception.ts'
import { type Look, sentence } from '../look.ts'

export function changedFiles({ beside, state }: Look): Found[] {
  return beside.files
    .filter((file) => !file.isAsAttached)
    .map(({ seq, name, what }) => {
      const caption = state.files.find((file) => file.seq === seq)?.caption ?? ''
      return {
        kind: 'file',
        what: `Attached ${name}: ${what}`,
        sentences: [
          sentence(`It was attached as: ${caption}`),
          'The log holds its size and SHA-256 from that moment.',
        ],
        entries: [seq],
        open: true,
      }
    })
}
