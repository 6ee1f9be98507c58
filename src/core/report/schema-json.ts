// The published JSON Schema of a report, made from the shape itself: draft 2020-12, the newest that readers of JSON know.
import { z } from 'zod'
import { reportSchema } from './schema.ts'

/** The text of schemas/report.schema.json. */
export function reportSchemaText(): string {
  return `${JSON.stringify(z.toJSONSchema(reportSchema), null, 2)}\n`
}
