// A module of TypeScript for the scripts of this folder: Node 20 reads none, so it is bundled in memory first.
import { join } from 'node:path'
import { build } from 'esbuild'

/** What the module at `path`, seen from this folder, exports. */
export async function bundled(path) {
  const { outputFiles } = await build({
    entryPoints: [join(import.meta.dirname, path)],
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    write: false,
  })
  const code = Buffer.from(outputFiles[0].contents).toString('base64')
  return import(`data:text/javascript;base64,${code}`)
}
