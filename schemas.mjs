// Writes the published schemas: procedures/schemas/*.schema.json, which editors read, from the shapes in src/core/definition, and
// schemas/report.schema.json from that of a report.
import { mkdir, writeFile } from 'node:fs/promises'
import { bundled } from './bundled.mjs'

async function write(folder, files) {
  const at = new URL(folder, import.meta.url)
  await mkdir(at, { recursive: true })
  for (const [name, text] of files) {
    await writeFile(new URL(name, at), text)
    console.log(`${folder.slice(2)}${name}`)
  }
}

const { schemaFiles } = await bundled('src/authoring/json-schemas.ts')
const { reportSchemaText } = await bundled('src/core/report/schema-json.ts')
await write('./procedures/schemas/', schemaFiles())
await write('./schemas/', [['report.schema.json', reportSchemaText()]])
