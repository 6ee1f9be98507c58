// What may import what, what the core may not touch, and how long a file may be. Reads the source with the compiler's
// own parser, so that comments and strings count for nothing and type imports count like all others.
import { readdirSync, readFileSync } from 'node:fs'
import { join, posix, relative, sep } from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { ROOT } from './helpers/example.ts'

interface Import {
  readonly from: string
  readonly to: string
  readonly dynamic: boolean
  /** Only types: gone when the program runs. */
  readonly typesOnly: boolean
}

interface Source {
  readonly path: string
  readonly lines: number
  readonly tree: ts.SourceFile
  readonly imports: readonly Import[]
}

/**
 * Folders of the core in layers: each imports only its own layer and those before it. Folders that share a layer import
 * each other; that is meant for none of them, and a layer is to be split as soon as its folders no longer do.
 */
const CORE_LAYERS: readonly (readonly string[])[] = [
  ['lib'],
  ['units'],
  ['drawing'],
  ['statistics'],
  ['metrology'],
  ['bore'],
  ['rings'],
  ['wear', 'piston', 'rod', 'fastening', 'end-clearance', 'cycle'],
  ['compute'],
  // Rules take the shapes of the files from definition; definition has rules checked.
  ['rules', 'definition'],
  ['job'],
  ['kit'],
  ['proof'],
  ['practice'],
  ['papers'],
  ['talk'],
  ['sheet'],
  ['blank'],
  ['review'],
  ['report'],
  ['history'],
  ['aloud'],
]
const CORE_FOLDERS = CORE_LAYERS.flat()
const layerOf = (path: string) => CORE_LAYERS.findIndex((l) => l.includes(path.split('/')[2] ?? ''))

/** Outside packages of the core, and the only files that may use them. */
const CORE_PACKAGES: Readonly<Record<string, RegExp>> = {
  zod: /^src\/core\/(definition\/|job\/entry-schema\.ts$|report\/schema)/,
  '@marcbachmann/cel-js': /^src\/core\/rules\//,
  // Questions in plain words are looked up in an index in memory: nothing leaves the core, and it stays pure.
  minisearch: /^src\/core\/papers\/find\.ts$/,
  // Chance that is the same for the same seed: sums, and no source of chance outside.
  'pure-rand/distribution/uniformFloat64': /^src\/core\/practice\/chance\.ts$/,
  'pure-rand/generator/xoroshiro128plus': /^src\/core\/practice\/chance\.ts$/,
  // Scales and lines of plots: sums and strings, no page they would need.
  'd3-scale': /^src\/core\/report\/plot\//,
  'd3-shape': /^src\/core\/report\/plot\//,
  'string-width': /^src\/core\/lib\/text\.ts$/,
}

/** What each folder beside the core may import: own folders, then packages. */
const OTHERS: Readonly<Record<string, readonly RegExp[]>> = {
  authoring: [/^src\/(core|authoring)\//, /^(yaml|zod)$/],
  app: [/^src\/(core|app)\//],
  node: [/^src\/(core|node)\//, /^src\/app\/ports\.ts$/, /^node:/, /^yaml$/],
  plain: [/^src\/(core|app|plain)\//],
  report: [/^src\/(core|report)\//, /^(pdfkit|subset-font|node:fs|node:module)$/],
  ui: [/^src\/(core|app|ui)\//, /^(ink|react|node:process)$/],
  cli: [/^src\/(core|authoring|app|node|plain|cli)\//, /^node:/],
}

function filesUnder(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && /\.tsx?$/.test(one.name))
    .map((one) => relative(ROOT, join(one.parentPath, one.name)).split(sep).join('/'))
    .sort()
}

function each(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node)
  node.forEachChild((child) => each(child, visit))
}

function isTypesOnly(node: ts.Node): boolean {
  if (ts.isImportTypeNode(node)) return true
  if (ts.isExportDeclaration(node)) return node.isTypeOnly
  if (!ts.isImportDeclaration(node) || node.importClause === undefined) return false
  const { isTypeOnly, name, namedBindings } = node.importClause
  if (isTypeOnly) return true
  if (name !== undefined || namedBindings === undefined || !ts.isNamedImports(namedBindings)) return false
  return namedBindings.elements.every((one) => one.isTypeOnly)
}

function importOf(path: string, node: ts.Node): Import | null {
  const dynamic = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword
  const named = dynamic
    ? node.arguments[0]
    : ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
      ? node.moduleSpecifier
      : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
        ? node.argument.literal
        : undefined
  if (named === undefined) return null
  if (!ts.isStringLiteral(named)) throw new Error(`${path} imports by a name that is worked out`)
  const to = named.text.startsWith('.') ? posix.join(posix.dirname(path), named.text) : named.text
  return { from: path, to, dynamic, typesOnly: isTypesOnly(node) }
}

function read(path: string): Source {
  const text = readFileSync(join(ROOT, path), 'utf8')
  const tree = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true)
  const imports: Import[] = []
  each(tree, (node) => {
    const found = importOf(path, node)
    if (found !== null) imports.push(found)
  })
  return { path, tree, imports, lines: text.split('\n').length - 1 }
}

/** Rings of imports that run, each told once as its files in turn. */
function rings(files: readonly Source[]): string[] {
  const next = new Map(
    files.map((f) => [f.path, f.imports.filter((i) => !i.typesOnly && !i.dynamic).map((i) => i.to)]),
  )
  const done = new Set<string>()
  const found: string[] = []
  const walk = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path)
    if (at >= 0) found.push([...trail.slice(at), path].join(' > '))
    if (at >= 0 || done.has(path)) return
    for (const to of next.get(path) ?? []) walk(to, [...trail, path])
    done.add(path)
  }
  for (const path of next.keys()) walk(path, [])
  return found
}

const sources = filesUnder('src').map(read)
const tests = filesUnder('tests').map(read)
const inside = (folder: string) => sources.filter((s) => s.path.startsWith(`src/${folder}/`))
const importsOf = (folder: string) => inside(folder).flatMap((s) => s.imports)
const told = ({ from, to }: Import) => `${from} imports ${to}`

describe('imports', () => {
  it('are read at all', () => {
    expect(sources.length).toBeGreaterThan(100)
    expect(importsOf('cli').filter((i) => i.dynamic).length).toBeGreaterThan(1)
  })

  it('of the core stay in the core, but for a few packages in their places', () => {
    const wrong = importsOf('core').filter(
      ({ from, to }) => !to.startsWith('src/core/') && CORE_PACKAGES[to]?.test(from) !== true,
    )
    expect(wrong.map(told)).toEqual([])
  })

  it('within the core go one way', () => {
    const wrong = importsOf('core').filter(
      ({ from, to }) => to.startsWith('src/core/') && (layerOf(to) < 0 || layerOf(to) > layerOf(from)),
    )
    expect(wrong.map(told)).toEqual([])
  })

  it('of values never run in a ring from file to file', () => {
    expect(rings(sources)).toEqual([])
  })

  it.each(Object.keys(OTHERS))('of %s are what it may use', (folder) => {
    const wrong = importsOf(folder).filter(
      ({ to, dynamic }) =>
        !(OTHERS[folder] ?? []).some((allowed) => allowed.test(to)) &&
        // Slow to load: the command line reaches them only when it is to draw, or to write a PDF.
        !(folder === 'cli' && dynamic && /^src\/(?:ui|report)\//.test(to)),
    )
    expect(wrong.map(told)).toEqual([])
  })

  it('know every folder', () => {
    const folders = new Set(sources.map((s) => s.path.split('/')[1] ?? ''))
    expect([...folders].filter((f) => f !== 'core' && OTHERS[f] === undefined)).toEqual([])
    const core = new Set(inside('core').map((s) => s.path.split('/')[2] ?? ''))
    expect([...core].filter((f) => !CORE_FOLDERS.includes(f))).toEqual([])
  })

  it('name files that are there, with their ending', () => {
    const all = new Set(sources.map((s) => s.path))
    const missing = sources.flatMap((s) => s.imports).filter((i) => i.to.startsWith('src/') && !all.has(i.to))
    expect(missing.map(told)).toEqual([])
  })
})

/** Names that stand for the time, chance, the process or a terminal. */
const IMPURE = [
  'Date',
  'process',
  'console',
  'performance',
  'setTimeout',
  'setInterval',
  'globalThis',
  'fetch',
]

function impureUses({ path, tree }: Source): string[] {
  const found: string[] = []
  each(tree, (node) => {
    if (!ts.isIdentifier(node)) return
    const { parent } = node
    const isMember = ts.isPropertyAccessExpression(parent) && parent.name === node
    const isKey = (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node
    if (IMPURE.includes(node.text) && !isMember && !isKey) found.push(`${path}: ${node.text}`)
    if (isMember && node.text === 'random' && parent.expression.getText() === 'Math')
      found.push(`${path}: Math.random`)
  })
  return found
}

describe('the core', () => {
  it('knows no clock, no chance, no process and no terminal', () => {
    expect(inside('core').flatMap(impureUses)).toEqual([])
  })
})

describe('files', () => {
  it('are short: 400 lines of source, 500 of a test', () => {
    const long = [...sources.filter((s) => s.lines > 400), ...tests.filter((s) => s.lines > 500)]
    expect(long.map((s) => `${s.path}: ${s.lines} lines`)).toEqual([])
  })

  it('open with what they are for', () => {
    const bare = sources.filter((s) => !/^(#!.*\n)?(\/\/|\/\*\*)/.test(s.tree.getFullText()))
    expect(bare.map((s) => s.path)).toEqual([])
  })

  it('export nothing as default', () => {
    const wrong = sources.filter((s) => s.tree.statements.some(ts.isExportAssignment))
    expect(wrong.map((s) => s.path)).toEqual([])
  })
})

describe('tests', () => {
  it('are all run: none is left out or alone', () => {
    const marked = tests.flatMap((s) => {
      const found: string[] = []
      each(s.tree, (node) => {
        if (!ts.isPropertyAccessExpression(node)) return
        const on = node.expression.getText()
        if (/^(it|test|describe)\b/.test(on) && /^(only|skip|todo|fails)$/.test(node.name.text))
          found.push(`${s.path}: ${on}.${node.name.text}`)
      })
      return found
    })
    expect(marked).toEqual([])
  })
})
