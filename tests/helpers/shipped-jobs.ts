// The procedures that are shipped, each put together with an example machine and the parts that it uses.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { ROOT } from './example.ts'
import { pocketFiles, type Site } from './pocket-job.ts'

const FOLDER = join(ROOT, 'procedures')
/** Names of the files. */
export const SHIPPED = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'))
const copy = (role: FileCopy['role'], name: string): FileCopy => ({
  role,
  name,
  sha256: '',
  text: readFileSync(join(FOLDER, name), 'utf8'),
})

export function shippedDefs(name: string, site: Site = 'tc-401'): Definitions {
  const result = definitionsFrom(shippedCopies(name, site))
  if (!result.ok)
    throw new Error(result.diagnostics.map((d) => `${d.file}:${d.line} ${d.message}`).join('\n'))
  return result.defs
}

export function shippedCopies(name: string, site: Site = 'tc-401'): readonly FileCopy[] {
  const rest = pocketFiles(site).filter((file) => file.role !== 'procedure')
  // Parts have parts, so all the others are at hand.
  const parts = SHIPPED.filter((other) => other !== name).map((other) => copy('part', other))
  return [copy('procedure', name), ...parts, ...rest]
}
