// barover check: are these files fit to be taken to a machine?
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { checkFiles, type TextFile } from '../../authoring/check.ts'
import { readTextFile } from '../../node/definition-files.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { renderAt } from '../open.ts'
import { print } from '../terminal.ts'

export const checkCommand: Command = {
  name: 'check',
  usage: 'barover check FILE…',
  summary:
    'Check procedures, machine records, limit books, instruments and crew; a folder means all YAML files in it.',
  options: { json: SHARED.json },
  positionals: { least: 1, most: 10_000 },
  run: async (values, paths) => {
    const files = paths.flatMap(yamlIn).map((path): TextFile => ({ path, text: readTextFile(path) }))
    if (files.length === 0) throw new UserError('There is no YAML file to check there.', EXIT.fileProblem)
    const { diagnostics, kinds } = checkFiles(files)
    const errors = diagnostics.filter((d) => d.severity === 'error').length
    if (values.json === true) print(JSON.stringify({ files: Object.fromEntries(kinds), diagnostics }))
    else {
      const texts = new Map(files.map((f) => [f.path, f.text]))
      for (const d of diagnostics) print(`${renderAt(d, texts.get(d.file) ?? '', d.file)}\n`)
      const warnings = diagnostics.length - errors
      print(
        `${files.length} ${files.length === 1 ? 'file' : 'files'} checked, ${errors} ${errors === 1 ? 'error' : 'errors'}, ${warnings} ${warnings === 1 ? 'warning' : 'warnings'}.`,
      )
    }
    return errors === 0 ? EXIT.done : EXIT.checkFailed
  },
}

function yamlIn(path: string): string[] {
  let isFolder: boolean
  try {
    isFolder = statSync(path).isDirectory()
  } catch {
    throw new UserError(`${path}: there is no such file.`, EXIT.fileProblem)
  }
  if (!isFolder) return [path]
  const inside = readdirSync(path, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
  return inside.flatMap((one) => {
    if (one.isDirectory() && !one.name.startsWith('.') && one.name !== 'node_modules')
      return yamlIn(join(path, one.name))
    return one.isFile() && /\.ya?ml$/.test(one.name) ? [join(path, one.name)] : []
  })
}
