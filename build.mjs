// Bundles src/cli/main.ts into dist/barover.mjs: one file starts about twice as fast as the loose modules.
import { chmod, mkdir, readFile, rm } from 'node:fs/promises'
import { build } from 'esbuild'

const { version } = JSON.parse(await readFile(new URL('./package.json', import.meta.url), 'utf8'))
const banner = [
  '#!/usr/bin/env node',
  // Some bundled packages are CommonJS and ask for Node's own modules by require.
  "import { createRequire as __createRequire } from 'node:module';",
  'const require = __createRequire(import.meta.url);',
].join('\n')

await rm('dist', { recursive: true, force: true })
await mkdir('dist', { recursive: true })
await build({
  // The second is what a thread of a search runs (src/cli/search.ts).
  entryPoints: { barover: 'src/cli/main.ts', 'search-worker': 'src/cli/search-worker.ts' },
  outdir: 'dist',
  outExtension: { '.js': '.mjs' },
  bundle: true,
  splitting: true,
  chunkNames: 'part-[hash]',
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // Names stay as they are written: a report of a fault is to name them, and keeping them by hand is slow as it runs.
  minifyWhitespace: true,
  minifySyntax: true,
  // It finds its WebAssembly beside itself; like the fonts it cuts, it stands in node_modules.
  external: ['subset-font'],
  sourcemap: false,
  legalComments: 'linked',
  banner: { js: banner },
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.DEV': '"false"',
    BAROVER_VERSION: JSON.stringify(version),
  },
  plugins: [
    {
      name: 'no-devtools',
      setup(b) {
        // Ink asks for this only when DEV=true; marking it external would make the bundle fail at start.
        b.onResolve({ filter: /^react-devtools-core$/ }, () => ({
          path: 'react-devtools-core',
          namespace: 'empty',
        }))
        b.onLoad({ filter: /.*/, namespace: 'empty' }, () => ({
          contents: 'export default {}',
          loader: 'js',
        }))
      },
    },
  ],
})
await chmod('dist/barover.mjs', 0o755)
