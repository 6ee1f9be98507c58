// JSON Schemas for editors, one for each kind of file: completion, hover text and marks while an author types. Made from
// the schemas that `check` uses, so they cannot say otherwise; cross-checks (ids, order, gates) are beyond them.
import { z } from 'zod'
import { crewSchema } from '../core/definition/crew.ts'
import { instrumentsSchema } from '../core/definition/instruments.ts'
import { limitBookSchema } from '../core/definition/limit-book.ts'
import { machineSchema } from '../core/definition/machine.ts'
import { procedureSchema } from '../core/definition/procedure.ts'
import type { DefinitionKind } from './definition-file.ts'

const SCHEMAS: Readonly<Record<DefinitionKind, z.ZodType>> = {
  procedure: procedureSchema,
  machine: machineSchema,
  limit_book: limitBookSchema,
  instruments: instrumentsSchema,
  crew: crewSchema,
}

/** Name of the schema file of one kind, in procedures/schemas. */
export function schemaFileName(kind: DefinitionKind): string {
  return `${kind.replace('_', '-')}.schema.json`
}

/** The text of every schema file by its name. Draft 7, the newest that the common YAML editors read. */
export function schemaFiles(): ReadonlyMap<string, string> {
  const kinds = Object.keys(SCHEMAS) as DefinitionKind[]
  return new Map(
    kinds.map((kind) => {
      // What an author writes, before quantities become figures.
      const schema = z.toJSONSchema(SCHEMAS[kind], { target: 'draft-7', io: 'input' })
      return [schemaFileName(kind), `${JSON.stringify(schema, null, 2)}\n`]
    }),
  )
}
