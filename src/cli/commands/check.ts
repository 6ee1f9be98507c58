// barover check: are these files fit to be taken to a machine?
import { readdirSync, statSync } from 'node:fs'
import { dirname, isAbsolute, join, normalize } from 'node:path'
import process from 'node:process'
import type { TextFile } from '../../authoring/check.ts'
import type { Disk } from '../../authoring/folder.ts'
import { type CheckedTogether, checkTogether } from '../../authoring/together.ts'
import { wrapWords } from '../../authoring/wrap-words.ts'
import { readTextFile } from '../../node/definition-files.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { renderAt } from '../open.ts'
import { columnsOf, print } from '../terminal.ts'

export const checkCommand: Command = {
  name: 'check',
  usage: 'barover check FILE...',
  summary:
    'Check procedures, machine records, limit books, instruments and crew; a folder means all YAML files in it. ' +
    'A machine record is also checked with the files it uses, and with every procedure given.',
  options: { json: SHARED.json },
  positionals: { least: 1, most: 10_000 },
  run: async (values, paths) => {
    const wanted = [...new Set(paths.map((path) => normalize(path)).flatMap(yamlIn))]
    const files = wanted.map((path): TextFile => ({ path, text: readTextFile(path) }))
    if (files.length === 0) throw new UserError('There is no YAML file to check there.', EXIT.fileProblem)
    const checked = checkTogether(files, disk)
    if (values.json === true) print(asJson(checked))
    else for (const text of asText(checked, columnsOf(process.stdout))) print(text)
    const isClean = checked.diagnostics.every((d) => d.severity !== 'error')
    return isClean ? EXIT.done : EXIT.checkFailed
  },
}

const disk: Disk = {
  read: (path) => {
    try {
      return readTextFile(path)
    } catch (error) {
      if (error instanceof UserError) return undefined
      throw error
    }
  },
  resolve: (from, name) => (isAbsolute(name) ? normalize(name) : join(dirname(from), name)),
  beside: (path) => {
    try {
      return namesIn(dirname(path))
        .filter((one) => one.isFile() && isYaml(one.name))
        .map((one) => join(dirname(path), one.name))
    } catch {
      return []
    }
  },
}

function asJson({ kinds, diagnostics, jobs, refusals }: CheckedTogether): string {
  return JSON.stringify({ files: Object.fromEntries(kinds), jobs, refusals, diagnostics })
}

function asText(checked: CheckedTogether, columns: number): string[] {
  const { files, diagnostics, jobs, waiting, refusals, isStoppedEarly } = checked
  const sentence = (text: string) => wrapWords(text, columns, 2)
  const texts = new Map(files.map((f) => [f.path, f.text]))
  const errors = diagnostics.filter((d) => d.severity === 'error').length
  const warnings = diagnostics.length - errors
  return [
    ...diagnostics.map((d) => `${renderAt(d, texts.get(d.file) ?? '', d.file)}\n`),
    ...refusals.map(sentence),
    ...[...new Set(jobs.map((job) => job.machine))].map((machine) => {
      const own = jobs.filter((job) => job.machine === machine).map((job) => job.procedure)
      return sentence(`Checked as a job on the machine ${machine}: ${own.join(', ')}.`)
    }),
    ...(waiting.length === 0 ? [] : [sentence(`Not yet as a job: ${waiting.join(', ')}; errors above.`)]),
    `${count(files.length, 'file')} checked, ${count(errors, 'error')}, ${count(warnings, 'warning')}.`,
    ...(isStoppedEarly ? ['More may show once these are right.'] : []),
  ]
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`
}

function namesIn(folder: string) {
  return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
}

function isYaml(name: string): boolean {
  return /\.ya?ml$/.test(name)
}

function yamlIn(path: string): string[] {
  let isFolder: boolean
  try {
    isFolder = statSync(path).isDirectory()
  } catch {
    throw new UserError(`${path}: there is no such file.`, EXIT.fileProblem)
  }
  if (!isFolder) return [path]
  return namesIn(path).flatMap((one) => {
    if (one.isDirectory() && !one.name.startsWith('.') && one.name !== 'node_modules')
      return yamlIn(join(path, one.name))
    return one.isFile() && isYaml(one.name) ? [join(path, one.name)] : []
  })
}
