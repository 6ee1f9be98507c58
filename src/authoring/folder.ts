// The files of a check, each read once: those given, and those that they name and that are fetched through a port.
import type { Good, GoodOf, TextFile } from './check.ts'
import {
  type DefinitionKind,
  type DefinitionResult,
  procedureIdIn,
  readDefinition,
} from './definition-file.ts'
import type { Diagnostic } from './diagnostic.ts'

/** What lies on disk, as far as a check needs it. Paths are compared as text, so one file has one path. */
export interface Disk {
  /** Text of a file, or undefined if it is not there or no text. */
  readonly read: (path: string) => string | undefined
  /** The path of `name` as the file at `from` means it. */
  readonly resolve: (from: string, name: string) => string
  /** Paths of the YAML files in the folder of `path`. */
  readonly beside: (path: string) => readonly string[]
  /** The path of what is shipped under a name: a procedure, or the machine record of an example. Left out: nothing is. */
  readonly shipped?: (kind: 'procedure' | 'machine', name: string) => string | undefined
}

export interface Entry {
  readonly text: string
  readonly result: DefinitionResult
}

/** Every file looked at so far, read once. */
export class Folder {
  readonly #entries = new Map<string, Entry>()
  readonly #disk: Disk

  constructor(given: readonly TextFile[], disk: Disk) {
    this.#disk = disk
    for (const { path, text } of given) this.#add(path, text)
    // A part may name further parts; the list grows while it is walked.
    for (const [path, { result }] of this.#entries) {
      if (!result.ok || result.kind !== 'procedure') continue
      for (const step of result.value.steps) if (step.kind === 'part') this.partFile(path, step.use)
    }
  }

  #add(path: string, text: string): Entry {
    const entry = { text, result: readDefinition(text, path) }
    this.#entries.set(path, entry)
    return entry
  }

  at(path: string): Entry | undefined {
    const known = this.#entries.get(path)
    if (known !== undefined) return known
    const text = this.#disk.read(path)
    return text === undefined ? undefined : this.#add(path, text)
  }

  resolve(from: string, name: string): string {
    return this.#disk.resolve(from, name)
  }

  /** The file that a scenario means: one beside it, else what is shipped under that name. */
  named(kind: 'procedure' | 'machine', from: string, name: string): Entry | undefined {
    const shipped = this.#disk.shipped?.(kind, name)
    return this.at(this.resolve(from, name)) ?? (shipped === undefined ? undefined : this.at(shipped))
  }

  beside(path: string): readonly string[] {
    return this.#disk.beside(path)
  }

  /** Parts are looked for where a job looks for them: beside the procedure. */
  partFile(from: string, id: string): string | undefined {
    const path = this.beside(from).find((one) => {
      const text = this.#textOf(one)
      return text !== undefined && procedureIdIn(text) === id
    })
    return path !== undefined && this.at(path) !== undefined ? path : undefined
  }

  /** Ids of the procedures in the folder of `from`, that file apart. */
  procedureIdsBeside(from: string): string[] {
    return this.beside(from).flatMap((one) => {
      const text = this.#textOf(one)
      const id = one === from || text === undefined ? undefined : procedureIdIn(text)
      return id === undefined ? [] : [id]
    })
  }

  #textOf(path: string): string | undefined {
    return this.#entries.get(path)?.text ?? this.#disk.read(path)
  }

  /** True if a file does not hold, so that checks further in were never made: of itself, or of the job it is in. */
  isStoppedEarly(): boolean {
    const results = [...this.#entries.values()].map(({ result }) => result)
    const isJob = results.some((result) => result.kind === 'machine')
    return results.some((result) => !result.ok && (result.isShapeless || isJob))
  }

  /** Every part that the procedure comes to use, or undefined if one of them does not hold for itself. */
  partsOf(procedure: GoodOf<'procedure'>): GoodOf<'procedure'>[] | undefined {
    const parts = new Map<string, GoodOf<'procedure'>>()
    const open = [procedure]
    for (const one of open) {
      for (const step of one.value.steps) {
        if (step.kind !== 'part' || parts.has(step.use)) continue
        const path = this.partFile(procedure.yaml.file, step.use)
        const result = path === undefined ? undefined : this.at(path)?.result
        if (result === undefined) continue
        if (!result.ok || result.kind !== 'procedure') return undefined
        parts.set(step.use, result)
        open.push(result)
      }
    }
    return [...parts.values()]
  }

  goodOf<K extends Good['kind']>(kind: K): GoodOf<K>[] {
    const good = [...this.#entries.values()].flatMap(({ result }) => (result.ok ? [result] : []))
    return good.filter((result): result is GoodOf<K> => result.kind === kind)
  }

  ownProblems(): Diagnostic[] {
    return [...this.#entries.values()].flatMap(({ result }) =>
      result.ok ? result.warnings : result.diagnostics,
    )
  }

  files(): TextFile[] {
    return [...this.#entries].map(([path, { text }]) => ({ path, text }))
  }

  kinds(): Map<string, DefinitionKind | undefined> {
    return new Map([...this.#entries].map(([path, { result }]) => [path, result.kind]))
  }
}
