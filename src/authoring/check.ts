// Checks texts: each file for itself, or the files of one job together. Reading them from disk is done elsewhere.

import { lintJob } from '../core/definition/lint-job.ts'
import type { JobFile, JobParts } from '../core/definition/lint-job-shape.ts'
import {
  type Definition,
  type DefinitionKind,
  type DefinitionResult,
  readDefinition,
} from './definition-file.ts'
import { type Diagnostic, tidy } from './diagnostic.ts'
import { locateFinding } from './locate.ts'
import type { YamlFile } from './read-yaml.ts'

export interface TextFile {
  readonly path: string
  readonly text: string
}

export interface Checked {
  /** In the order of the files, and within a file from top to bottom; at most 20 of each file. */
  readonly diagnostics: readonly Diagnostic[]
  /** What each file is, by its path, as far as it could be told. */
  readonly kinds: ReadonlyMap<string, DefinitionKind | undefined>
}

/** Checks each file for itself. */
export function checkFiles(files: readonly TextFile[]): Checked {
  const kinds = new Map<string, DefinitionKind | undefined>()
  const diagnostics = files.flatMap(({ path, text }) => {
    const result = readDefinition(text, path)
    kinds.set(path, result.kind)
    return result.ok ? result.warnings : result.diagnostics
  })
  return { diagnostics, kinds }
}

export interface JobFiles {
  readonly procedure: TextFile
  readonly parts: readonly TextFile[]
  readonly machine: TextFile
  readonly instruments: TextFile
  readonly crew: TextFile
  readonly limitBooks: readonly TextFile[]
}

export type JobChecked =
  | { readonly ok: true; readonly job: JobParts; readonly warnings: readonly Diagnostic[] }
  | { readonly ok: false; readonly diagnostics: readonly Diagnostic[] }

type Good = Extract<DefinitionResult, { ok: true }>

/** Checks the files of one job: each for itself, then, if all of them hold, against each other. */
export function checkJob(files: JobFiles): JobChecked {
  const reading = new Reading()
  const procedure = reading.read(files.procedure, 'procedure')
  const parts = files.parts.map((file) => reading.read(file, 'procedure'))
  const machine = reading.read(files.machine, 'machine')
  const instruments = reading.read(files.instruments, 'instruments')
  const crew = reading.read(files.crew, 'crew')
  const books = files.limitBooks.map((file) => reading.read(file, 'limit_book'))
  const goodParts = parts.filter((one) => one !== undefined)
  const goodBooks = books.filter((one) => one !== undefined)
  if (!procedure || !machine || !instruments || !crew || reading.hasFailed)
    return { ok: false, diagnostics: reading.found }
  const job: JobParts = {
    procedure: procedure.value,
    parts: new Map(goodParts.map((one) => [one.value.procedure, one.value])),
    machine: machine.value,
    instruments: instruments.value,
    crew: crew.value,
    limitBooks: goodBooks.map((one) => one.value),
  }
  const yamlOf = (where: JobFile): YamlFile => {
    const single = { procedure, machine, instruments, crew }
    if (where.kind === 'part')
      return goodParts.find((one) => one.value.procedure === where.id)?.yaml ?? procedure.yaml
    if (where.kind === 'limit_book')
      return goodBooks.find((one) => one.value.limit_book === where.id)?.yaml ?? machine.yaml
    return single[where.kind].yaml
  }
  const found = lintJob(job).map((one) => locateFinding(yamlOf(one.in), one))
  const paths = [
    files.procedure,
    ...files.parts,
    files.machine,
    files.instruments,
    files.crew,
    ...files.limitBooks,
  ]
  return judgeJob(
    job,
    [...reading.found, ...found],
    paths.map((file) => file.path),
  )
}

function judgeJob(job: JobParts, found: readonly Diagnostic[], paths: readonly string[]): JobChecked {
  const ordered = [...new Set(paths)].flatMap((path) => tidy(found.filter((one) => one.file === path)))
  if (ordered.some((one) => one.severity === 'error')) return { ok: false, diagnostics: ordered }
  return { ok: true, job, warnings: ordered }
}

class Reading {
  readonly found: Diagnostic[] = []
  hasFailed = false

  /** The file if it holds and is of the kind wanted; what is wrong is kept. */
  read<K extends Definition['kind']>(file: TextFile, kind: K): Extract<Good, { kind: K }> | undefined {
    const result = readDefinition(file.text, file.path)
    if (!result.ok) {
      this.hasFailed = true
      this.found.push(...result.diagnostics)
      return undefined
    }
    this.found.push(...result.warnings)
    if (result.kind === kind) return result as Extract<Good, { kind: K }>
    this.hasFailed = true
    const message = `This file is of the kind '${result.kind}', and a file of the kind '${kind}' is needed.`
    this.found.push({
      file: file.path,
      line: 1,
      column: 1,
      endColumn: 2,
      code: 'other-kind',
      message,
      severity: 'error',
    })
    return undefined
  }
}
