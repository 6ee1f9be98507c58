// Schema issues and findings to diagnostics: the author's word, its line and its column.
import type { Scalar } from 'yaml'
import { isScalar } from 'yaml'
import type { z } from 'zod'
import type { Finding } from '../core/definition/lint-common.ts'
import { list, nearest, quote } from '../core/lib/wording.ts'
import type { Diagnostic } from './diagnostic.ts'
import { visible } from './diagnostic.ts'
import {
  asList,
  COMMA,
  type Issue,
  MISSING_CODES,
  type Subject,
  unionChoices,
  type Words,
  wordsFor,
} from './issue-words.ts'
import {
  type Found,
  isFlow,
  keyIsAlone,
  keySpan,
  nodeAt,
  ownerOfStray,
  ownKeySpan,
  partSpan,
  type Step,
  straysBehind,
  usefulSpan,
} from './node-at.ts'
import type { YamlFile } from './read-yaml.ts'
import { childOf, itemOf, keysOf, schemaAt, valueAt } from './schema-at.ts'
import { place, type Span } from './span.ts'
import { wantedAlternative } from './wanted-kind.ts'

/** Where a path is read: in one file, against one schema. */
interface Reading {
  readonly yaml: YamlFile
  readonly schema: z.ZodType
}

/** Diagnostics of all issues of one failed parse, in no set order. */
export function locateIssues(yaml: YamlFile, schema: z.ZodType, issues: readonly Issue[]): Diagnostic[] {
  const reading = { yaml, schema }
  const unknown = issues.filter((issue) => issue.code === 'unrecognized_keys')
  const misspelled = new Set<string>()
  const found = unknown.flatMap((issue) =>
    issue.keys.map((key) => unknownKey(reading, pathOf(issue), key, misspelled)),
  )
  const missing = new Map<string, Missing>()
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') continue
    const path = pathOf(issue)
    if (isMissing(yaml.value, path)) {
      const parent = path.slice(0, -1)
      // A misspelled key is not missing as well.
      if (misspelled.has(JSON.stringify(path))) continue
      const instead = issue.code === 'invalid_union' ? likeKey(yaml, parent, String(path.at(-1))) : undefined
      if (instead !== undefined) {
        found.push(notAKey(yaml, parent, instead, `did you mean ${path.at(-1)}?`))
        continue
      }
      const entry = missing.get(JSON.stringify(parent)) ?? { parent, keys: [], choices: choicesOf(issue) }
      entry.keys.push(String(path.at(-1)))
      missing.set(JSON.stringify(parent), entry)
    } else found.push(wrongValue(reading, issue, path))
  }
  for (const one of missing.values()) found.push(missingKeys(reading, one))
  return found
}

/** The diagnostic of one cross-check finding. */
export function locateFinding(yaml: YamlFile, one: Finding): Diagnostic {
  const found = nodeAt(yaml.doc, one.path)
  const isThere = found.depth === one.path.length
  const part = isThere && one.within ? partSpan(found, yaml.text, one.within) : undefined
  const span = part ?? (one.atKey ? ownKeySpan(found) : undefined) ?? usefulSpan(found)
  return diagnostic(yaml, span, one, hintOf(yaml, found, one.path.length, one.hint), one.severity)
}

function pathOf(issue: Issue): Step[] {
  return issue.path.map((step) => (typeof step === 'number' ? step : String(step)))
}

function isMissing(value: unknown, path: readonly Step[]): boolean {
  const last = path.at(-1)
  if (last === undefined) return false
  const parent = valueAt(value, path.slice(0, -1))
  return (
    typeof parent === 'object' && parent !== null && !Array.isArray(parent) && !Object.hasOwn(parent, last)
  )
}

function diagnostic(
  yaml: YamlFile,
  span: Span,
  words: Words,
  hint?: string,
  severity?: 'warning',
): Diagnostic {
  const where = place(yaml.file, yaml.text, yaml.lines, span)
  const tail = hint === undefined ? {} : { hint: visible(hint) }
  return {
    ...where,
    code: words.code,
    message: visible(words.message),
    ...tail,
    severity: severity ?? 'error',
  }
}

/** An alias is used in one place and written in another: the hint names the other. */
function hintOf(yaml: YamlFile, found: Found, depth: number, hint: string | undefined): string | undefined {
  const start = found.node?.range?.[0]
  if (found.use === undefined || start === undefined || found.depth !== depth) return hint
  const defined = `defined at line ${yaml.lines.linePos(start).line}`
  return hint === undefined ? defined : `${hint} (${defined})`
}

function unknownKey(reading: Reading, path: Step[], key: string, misspelled: Set<string>): Diagnostic {
  const { yaml, schema } = reading
  const known = keysOf(schemaAt(schema, yaml.value, path))
  const present = Object.keys((valueAt(yaml.value, path) ?? {}) as object)
  const absent = known.filter((one) => !present.includes(one))
  const near = nearest(key, absent)
  if (near !== undefined) misspelled.add(JSON.stringify([...path, near]))
  const hint = near === undefined ? unknownKeyHint(reading, path, key, absent) : `did you mean ${near}?`
  return notAKey(yaml, path, key, hint)
}

function notAKey(yaml: YamlFile, path: Step[], key: string, hint: string | undefined): Diagnostic {
  const found = nodeAt(yaml.doc, path)
  const owner = path.length === 0 ? 'this file' : ownerOf(yaml, path)
  const words = { code: 'unknown-key', message: `${quote(key)} is not a key of ${owner}.` }
  return diagnostic(yaml, keySpan(found, key) ?? usefulSpan(found), words, hint)
}

/** While the key that tells alternatives apart is missing, no key is known to be wrong; one spelled like it is. */
function likeKey(yaml: YamlFile, path: Step[], wanted: string): string | undefined {
  return Object.keys(valueAt(yaml.value, path) as object).find((key) => nearest(key, [wanted]) !== undefined)
}

/** `{ name: a, b }`: the comma ended the text, and what followed became a key without a value. */
function unknownKeyHint(
  { yaml, schema }: Reading,
  path: Step[],
  key: string,
  absent: readonly string[],
): string | undefined {
  const found = nodeAt(yaml.doc, path)
  if (isFlow(found) && keyIsAlone(found, key)) {
    const owner = ownerOfStray(found, key)
    const value = owner === undefined ? undefined : valueAt(yaml.value, [...path, owner])
    const isList = owner !== undefined && itemOf(schemaAt(schema, yaml.value, [...path, owner])) !== undefined
    if (!isList) return COMMA
    if (Array.isArray(value)) return `the list of ${owner} ends at its ]; put this inside it`
    return `write ${owner}: ${asList([String(value), ...straysBehind(found, owner)])}`
  }
  return absent.length === 0 ? undefined : `keys not yet used here: ${list(absent.slice(0, 10))}`
}

interface Missing {
  readonly parent: Step[]
  readonly keys: string[]
  readonly choices: readonly string[]
}

function choicesOf(issue: Issue): string[] {
  if (issue.code === 'invalid_value') return issue.values.map(String)
  return issue.code === 'invalid_union' ? unionChoices(issue).map(String) : []
}

function missingKeys(reading: Reading, { parent, keys, choices }: Missing): Diagnostic {
  const { yaml, schema } = reading
  const found = nodeAt(yaml.doc, parent)
  const verb = keys.length === 1 ? 'is' : 'are'
  const message = `${list(keys.map(quote))} ${verb} required here.`
  const [first = ''] = keys
  const described = schemaAt(schema, yaml.value, [...parent, first])?.description
  const choice = choices.length === 0 ? undefined : `one of ${list(choices, 'or')}`
  const only = keys.length === 1 ? (choice ?? described) : undefined
  return diagnostic(
    yaml,
    usefulSpan(found),
    { code: (keys.length === 1 ? MISSING_CODES.get(first) : undefined) ?? 'missing-key', message },
    hintOf(yaml, found, parent.length, only),
  )
}

function wrongValue(reading: Reading, issue: Issue, path: Step[]): Diagnostic {
  const { yaml, schema } = reading
  const found = nodeAt(yaml.doc, path)
  const value = valueAt(yaml.value, path)
  const key = [...path].reverse().find((step) => typeof step === 'string') ?? 'this file'
  const parent = nodeAt(yaml.doc, path.slice(0, -1))
  const subject: Subject = {
    value,
    word: wordOf(yaml, found, value),
    key: String(key),
    owner: ownerOf(yaml, path.slice(0, -1)),
    schema: schemaAt(schema, yaml.value, path),
    strays: straysBehind(parent, String(path.at(-1))),
    isAlone: isFlow(parent) && keyIsAlone(parent, String(path.at(-1))),
    wanted: wantedAlternative(yaml.value, path),
  }
  const words = wordsFor(issue, subject)
  return diagnostic(yaml, usefulSpan(found), words, hintOf(yaml, found, path.length, words.hint))
}

/** The value as its author spelled it: 3.0 stays 3.0, and text loses its quotes. */
function wordOf(yaml: YamlFile, found: Found, value: unknown): string {
  if (typeof value === 'string') return value
  const range = isScalar(found.node) ? (found.node as Scalar).range : undefined
  return range ? yaml.text.slice(range[0], range[1]) : String(value)
}

/** What an author calls the thing at `path`: its id, else the nearest key, else the file. */
function ownerOf(yaml: YamlFile, path: readonly Step[]): string {
  const id = childOf(valueAt(yaml.value, path), 'id')
  if (typeof id === 'string' && id !== '') return quote(id)
  const key = [...path].reverse().find((step) => typeof step === 'string')
  return key === undefined ? 'this file' : quote(String(key))
}
