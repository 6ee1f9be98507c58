// Files outside, for tests that have none.
import type { FilesPort } from '../../src/app/ports.ts'
import { refuse } from '../../src/core/lib/result.ts'

const none = async () => refuse('no-file', 'There is no file.')

export const noFiles: FilesPort = {
  find: none,
  newest: none,
  keep: none,
  discard: async () => undefined,
  complete: async (text) => ({ text, fits: [] }),
}
