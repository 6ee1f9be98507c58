// One file that a lead wrote, read whole: YAML, shape, cross-checks. Its first key tells what the file is.
import { isMap, isScalar, type Node } from 'yaml'
import type { z } from 'zod'
import { type Crew, crewSchema } from '../core/definition/crew.ts'
import { type Instruments, instrumentsSchema } from '../core/definition/instruments.ts'
import { type LimitBook, limitBookSchema } from '../core/definition/limit-book.ts'
import type { Finding } from '../core/definition/lint-common.ts'
import { lintCrew } from '../core/definition/lint-crew.ts'
import { lintInstruments } from '../core/definition/lint-instruments.ts'
import { lintLimitBook } from '../core/definition/lint-limit-book.ts'
import { lintMachine } from '../core/definition/lint-machine.ts'
import { lintProcedure } from '../core/definition/lint-procedure.ts'
import { lintScenario } from '../core/definition/lint-scenario.ts'
import { type Machine, machineSchema } from '../core/definition/machine.ts'
import { type Procedure, procedureSchema } from '../core/definition/procedure.ts'
import { type Scenario, scenarioSchema } from '../core/definition/scenario.ts'
import { assertNever } from '../core/lib/result.ts'
import { list, nearest, quote } from '../core/lib/wording.ts'
import { figuresInComments } from './crew-comments.ts'
import { type Diagnostic, tidy } from './diagnostic.ts'
import { locateFinding, locateIssues } from './locate.ts'
import { usefulSpan } from './node-at.ts'
import { readYaml, type YamlFile } from './read-yaml.ts'
import { place } from './span.ts'

/** The six kinds of file, by their first key. */
export const KINDS = ['procedure', 'machine', 'limit_book', 'instruments', 'crew', 'scenario'] as const
export type DefinitionKind = (typeof KINDS)[number]

export type Definition =
  | { readonly kind: 'procedure'; readonly value: Procedure }
  | { readonly kind: 'machine'; readonly value: Machine }
  | { readonly kind: 'limit_book'; readonly value: LimitBook }
  | { readonly kind: 'instruments'; readonly value: Instruments }
  | { readonly kind: 'crew'; readonly value: Crew }
  | { readonly kind: 'scenario'; readonly value: Scenario }

export type DefinitionResult =
  | (Definition & { readonly ok: true; readonly yaml: YamlFile; readonly warnings: readonly Diagnostic[] })
  | {
      readonly ok: false
      readonly kind?: DefinitionKind
      /** It is no YAML, or not of the shape of its kind: its cross-checks were not made. */
      readonly isShapeless: boolean
      readonly diagnostics: readonly Diagnostic[]
    }

/** As many files as a folder of procedures and a few machines have. */
const KEPT_FILES = 200
const readBefore = new Map<string, DefinitionResult>()

/**
 * Reads and checks one file; `file` is the name shown with its problems. Never throws on any text. The same text under the same
 * name comes to the same: each procedure of a folder is a part of others, and is read once for all of them.
 */
export function readDefinition(text: string, file: string): DefinitionResult {
  const key = `${file}\n${text}`
  const known = readBefore.get(key)
  if (known !== undefined) return known
  const result = readAnew(text, file)
  const [oldest] = readBefore.keys()
  if (readBefore.size >= KEPT_FILES && oldest !== undefined) readBefore.delete(oldest)
  readBefore.set(key, result)
  return result
}

function readAnew(text: string, file: string): DefinitionResult {
  const read = readYaml(text, file)
  if (!read.ok)
    return { ok: false, ...kindGuess(text), isShapeless: true, diagnostics: tidy(read.diagnostics) }
  const { yaml, warnings } = read
  const kind = kindOf(yaml)
  if (kind === undefined)
    return { ok: false, isShapeless: true, diagnostics: tidy([...warnings, unknownKind(yaml)]) }
  const parsed = parseKind(kind, yaml.value)
  if ('issues' in parsed) {
    return {
      ok: false,
      kind,
      isShapeless: true,
      diagnostics: tidy(withoutEchoes(warnings, locateIssues(yaml, parsed.schema, parsed.issues))),
    }
  }
  const linted = [
    ...lint(parsed).map((one) => locateFinding(yaml, one)),
    ...(parsed.kind === 'crew' ? figuresInComments(parsed.value, text, file) : []),
  ]
  const found = withoutEchoes(warnings, linted)
  if (found.some((one) => one.severity === 'error'))
    return { ok: false, kind, isShapeless: false, diagnostics: tidy(found) }
  return { ok: true, ...parsed, yaml, warnings: tidy(found) }
}

/** What YAML makes of a word matters only where nothing worse is said of the same word. */
function withoutEchoes(warnings: readonly Diagnostic[], found: readonly Diagnostic[]): Diagnostic[] {
  const at = (one: Diagnostic) => `${one.line}:${one.column}`
  const taken = new Set(found.map(at))
  return [...warnings.filter((one) => !taken.has(at(one))), ...found]
}

type Parsed = Definition | { readonly schema: z.ZodType; readonly issues: readonly z.core.$ZodIssue[] }

function parseKind(kind: DefinitionKind, value: unknown): Parsed {
  switch (kind) {
    case 'procedure':
      return parse(procedureSchema, value, (v) => ({ kind, value: v }))
    case 'machine':
      return parse(machineSchema, value, (v) => ({ kind, value: v }))
    case 'limit_book':
      return parse(limitBookSchema, value, (v) => ({ kind, value: v }))
    case 'instruments':
      return parse(instrumentsSchema, value, (v) => ({ kind, value: v }))
    case 'crew':
      return parse(crewSchema, value, (v) => ({ kind, value: v }))
    case 'scenario':
      return parse(scenarioSchema, value, (v) => ({ kind, value: v }))
    default:
      return assertNever(kind)
  }
}

function parse<S extends z.ZodType>(
  schema: S,
  value: unknown,
  make: (value: z.output<S>) => Definition,
): Parsed {
  const result = schema.safeParse(value)
  return result.success ? make(result.data) : { schema, issues: result.error.issues }
}

function lint(definition: Definition): Finding[] {
  switch (definition.kind) {
    case 'procedure':
      return lintProcedure(definition.value)
    case 'machine':
      return lintMachine(definition.value)
    case 'limit_book':
      return lintLimitBook(definition.value)
    case 'instruments':
      return lintInstruments(definition.value)
    case 'crew':
      return lintCrew(definition.value)
    case 'scenario':
      return lintScenario(definition.value)
    default:
      return assertNever(definition)
  }
}

function isKind(word: unknown): word is DefinitionKind {
  return KINDS.some((kind) => kind === word)
}

function kindOf(yaml: YamlFile): DefinitionKind | undefined {
  const root = yaml.doc.contents
  const key = isMap(root) ? root.items[0]?.key : undefined
  return isScalar(key) && isKind(key.value) ? key.value : undefined
}

/** For a file that is no YAML yet: the first word of a line without indent, comments and the mark of a document apart. */
function kindGuess(text: string): { kind?: DefinitionKind } {
  const word = /^(?!#|---|%)(?=\S)\ufeff?([a-z_]+):/m.exec(text)?.[1]
  return isKind(word) ? { kind: word } : {}
}

/** The id of a procedure, looked for in the text alone: its file may be too broken to be read. */
export function procedureIdIn(text: string): string | undefined {
  return /^procedure:[ \t]+["']?([a-z]\w*)/m.exec(text)?.[1]
}

function unknownKind(yaml: YamlFile): Diagnostic {
  const root = yaml.doc.contents as Node | null
  const first = isMap(root) && isScalar(root.items[0]?.key) ? String(root.items[0].key.value) : undefined
  const where = place(yaml.file, yaml.text, yaml.lines, usefulSpan({ node: root, key: null, depth: 0 }))
  const near = first === undefined ? undefined : nearest(first, KINDS)
  const choices = `the first key is ${list(KINDS, 'or')}`
  const hint = near === undefined ? choices : `did you mean ${near}? (${choices})`
  const message =
    first === undefined
      ? 'This file does not begin with a key.'
      : `${quote(first)} does not tell what this file is.`
  return { ...where, code: 'unknown-file', message, hint, severity: 'error' }
}
