// JSON Schemas for editors, one for each kind of file: completion, hover text and marks while an author types. Made from
// the schemas that `check` uses, so they cannot say otherwise; cross-checks (ids, order, gates) are beyond them.
import { z } from 'zod'
import { crewSchema } from '../core/definition/crew.ts'
import { instrumentsSchema } from '../core/definition/instruments.ts'
import { limitBookSchema } from '../core/definition/limit-book.ts'
import { machineSchema } from '../core/definition/machine.ts'
import { procedureSchema } from '../core/definition/procedure.ts'
import { scenarioSchema } from '../core/definition/scenario.ts'
import type { DefinitionKind } from './definition-file.ts'

const SCHEMAS: Readonly<Record<DefinitionKind, z.ZodType>> = {
  procedure: procedureSchema,
  machine: machineSchema,
  limit_book: limitBookSchema,
  instruments: instrumentsSchema,
  crew: crewSchema,
  scenario: scenarioSchema,
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
      const schema = flat(z.toJSONSchema(SCHEMAS[kind], { target: 'draft-7', io: 'input' }))
      return [schemaFileName(kind), `${JSON.stringify(schema, null, 2)}\n`]
    }),
  )
}

/** Alternatives within alternatives stand in one list: an editor then offers the keys of the one that is meant. */
function flat(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(flat)
  if (typeof schema !== 'object' || schema === null) return schema
  return Object.fromEntries(
    Object.entries(schema).map(([key, inner]) => {
      const here = flat(inner)
      return [key, key === 'oneOf' && Array.isArray(here) ? here.flatMap(alternatives) : here]
    }),
  )
}

function alternatives(one: unknown): unknown[] {
  const isList = typeof one === 'object' && one !== null && Object.keys(one).join() === 'oneOf'
  return isList ? (one as { oneOf: unknown[] }).oneOf : [one]
}
