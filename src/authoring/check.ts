// Checks texts: each file for itself, or the files of one job together. Reading them from disk is done elsewhere.

import { lintJob } from '../core/definition/lint-job.ts'
import type { JobFile, JobParts } from '../core/definition/lint-job-shape.ts'
import {
  type Definition,
  type DefinitionKind,
  type DefinitionResult,
  procedureIdIn,
  readDefinition,
} from './definition-file.ts'
import { type Diagnostic, tidy } from './diagnostic.ts'
import { inParts } from './in-part.ts'
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

/** A file that holds for itself. */
export type Good = Extract<DefinitionResult, { ok: true }>
export type GoodOf<K extends Definition['kind']> = Extract<Good, { kind: K }>

/** The files of one job, each of which holds for itself and is of the kind its place needs. */
export interface GoodJob {
  readonly procedure: GoodOf<'procedure'>
  readonly parts: readonly GoodOf<'procedure'>[]
  readonly machine: GoodOf<'machine'>
  readonly instruments: GoodOf<'instruments'>
  readonly crew: GoodOf<'crew'>
  readonly limitBooks: readonly GoodOf<'limit_book'>[]
  /** Ids of all procedures beside it, for hints. */
  readonly beside?: readonly string[]
}

/** Checks the files of one job: each for itself, then, if all of them hold, against each other; `without` some codes. */
export function checkJob(files: JobFiles, without: readonly string[] = []): JobChecked {
  const reading = new Reading()
  const procedure = reading.read(files.procedure, 'procedure')
  const parts = files.parts.map((file) => reading.read(file, 'procedure')).filter(isThere)
  const machine = reading.read(files.machine, 'machine')
  const instruments = reading.read(files.instruments, 'instruments')
  const crew = reading.read(files.crew, 'crew')
  const limitBooks = files.limitBooks.map((file) => reading.read(file, 'limit_book')).filter(isThere)
  const users = [procedure, ...parts].filter(isThere).map((one) => ({
    yaml: one.yaml,
    procedure: one.value,
    fileOf: (id: string) => files.parts.find(({ text }) => procedureIdIn(text) === id)?.path,
  }))
  const paths = [
    files.procedure,
    ...files.parts,
    files.machine,
    files.instruments,
    files.crew,
    ...files.limitBooks,
  ].map((file) => file.path)
  if (!procedure || !machine || !instruments || !crew || reading.hasFailed)
    return { ok: false, diagnostics: inOrder(paths, [...reading.found, ...inParts(users, reading.found)]) }
  const good = { procedure, parts, machine, instruments, crew, limitBooks }
  const found = [...reading.found, ...lintGoodJob(good)].filter((one) => !without.includes(one.code))
  const ordered = inOrder(paths, [...found, ...inParts(users, found)])
  if (ordered.some((one) => one.severity === 'error')) return { ok: false, diagnostics: ordered }
  return { ok: true, job: partsOf(good), warnings: ordered }
}

/** Problems between the files of a job, in no set order. */
export function lintGoodJob(job: GoodJob): Diagnostic[] {
  return lintJob(partsOf(job)).map((one) => locateFinding(yamlOf(job, one.in), one))
}

export function partsOf(job: GoodJob): JobParts {
  return {
    procedure: job.procedure.value,
    parts: new Map(job.parts.map((one) => [one.value.procedure, one.value])),
    machine: job.machine.value,
    instruments: job.instruments.value,
    crew: job.crew.value,
    limitBooks: job.limitBooks.map((one) => one.value),
    ...(job.beside !== undefined && { beside: job.beside }),
  }
}

function yamlOf(job: GoodJob, where: JobFile): YamlFile {
  if (where.kind === 'part')
    return (job.parts.find((one) => one.value.procedure === where.id) ?? job.procedure).yaml
  if (where.kind === 'limit_book')
    return (job.limitBooks.find((one) => one.value.limit_book === where.id) ?? job.machine).yaml
  return job[where.kind].yaml
}

/** File by file in the order given, and tidy within each. */
export function inOrder(paths: readonly string[], found: readonly Diagnostic[]): Diagnostic[] {
  return [...new Set(paths)].flatMap((path) => tidy(found.filter((one) => one.file === path)))
}

function isThere<T>(value: T | undefined): value is T {
  return value !== undefined
}

class Reading {
  readonly found: Diagnostic[] = []
  hasFailed = false

  /** The file if it holds and is of the kind wanted; what is wrong is kept. */
  read<K extends Definition['kind']>(file: TextFile, kind: K): GoodOf<K> | undefined {
    const result = readDefinition(file.text, file.path)
    if (!result.ok) {
      this.hasFailed = true
      this.found.push(...result.diagnostics)
      return undefined
    }
    this.found.push(...result.warnings)
    if (result.kind === kind) return result as GoodOf<K>
    this.hasFailed = true
    const message = `This file is of the kind '${result.kind}', and a file of the kind '${kind}' is needed.`
    const where = { file: file.path, line: 1, column: 1, endColumn: 2 }
    this.found.push({ ...where, code: 'other-kind', message, severity: 'error' })
    return undefined
  }
}
