// Writes procedures/schemas/*.schema.json, the schemas that editors read, from the schemas in src/core/definition.
import { mkdir, writeFile } from 'node:fs/promises'
import { build } from 'esbuild'

// Node 20 reads no TypeScript, so the module is bundled in memory first.
const { outputFiles } = await build({
  entryPoints: ['src/authoring/json-schemas.ts'],
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  write: false,
})
const code = Buffer.from(outputFiles[0].contents).toString('base64')
const { schemaFiles } = await import(`data:text/javascript;base64,${code}`)

const folder = new URL('./procedures/schemas/', import.meta.url)
await mkdir(folder, { recursive: true })
for (const [name, text] of schemaFiles()) {
  await writeFile(new URL(name, folder), text)
  console.log(`procedures/schemas/${name}`)
}
