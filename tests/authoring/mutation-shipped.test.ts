// Every shipped file with any one node spoiled: never a crash, every complaint inside the file, and what is let through is
// truly still valid, as decided by others than the checker: the JSON Schema, read by a reader of our own, and the engine,
// which must be able to open a job on it. MUTATIONS=all runs every one, MUTATIONS=5 every
// fifth; otherwise every 661st.
import { describe, expect, it } from 'vitest'
import { isMap, parse, parseDocument } from 'yaml'
import { checkFiles } from '../../src/authoring/check.ts'
import { type DefinitionKind, KINDS } from '../../src/authoring/definition-file.ts'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import { type Diagnostic, renderDiagnostic, sourceLine } from '../../src/authoring/diagnostic.ts'
import { schemaFileName, schemaFiles } from '../../src/authoring/json-schemas.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { opening } from '../../src/core/job/fold.ts'
import { next } from '../../src/core/job/next.ts'
import { openJob } from '../../src/core/job/open-job.ts'
import { stamp } from '../../src/core/lib/instant.ts'
import { fileCopies, START } from '../helpers/example.ts'
import { SHIPPED } from '../helpers/shipped.ts'
import { misfitsOf } from './json-schema-reader.ts'
import { hasAliases, type Mutated, misspelled, mutationsOf } from './mutations.ts'

const STRIDE = process.env.MUTATIONS === 'all' ? 1 : Number(process.env.MUTATIONS ?? 661)

const ROLE: Readonly<Record<DefinitionKind, FileCopy['role']>> = {
  procedure: 'procedure',
  machine: 'machine',
  limit_book: 'limit-book',
  instruments: 'instruments',
  crew: 'crew',
  scenario: 'scenario',
}

const SCHEMAS = Object.fromEntries(
  KINDS.map((kind) => [kind, JSON.parse(schemaFiles().get(schemaFileName(kind)) ?? '{}')]),
)

/** Keys whose text names something that stands elsewhere, or is one of a few words: a slip in it is never valid. */
const NAMING =
  /\/(with|limit|oxygen|about|use|compute|drawing|quantity|kind|characteristic|beyond|of_book|role|gas|place|unit|flammable_sensor|rings|orientation|acting|jacket|unknown)$|\/(exposes|holds|against|choices|roles|kinds|part_temperature|instrument_temperature)\/\d+$|\/inputs\/[a-z_]+$|\/fallback\/book$/

/** Free words that happen to stand under such a key. */
const FREE = /\/lel_basis\/gas$|\/service\/gas$|\/site\/gas$/

/** True where it is words that are spoiled: a gas limit is for one of a few places, a measured value says where in words. */
function isInWords({ path, text }: Mutated): boolean {
  const [, around = '', key] = /^(.*)\/([^/]*)$/.exec(path) ?? []
  const owner: unknown = parseDocument(text).getIn(around.split('/').slice(1))
  return FREE.test(path) || (key === 'place' && isMap(owner) && owner.get('kind') === 'measured')
}

function isInside(text: string, one: Diagnostic): boolean {
  const line = sourceLine(text, one.line)
  return (
    one.line >= 1 &&
    one.line <= text.split('\n').length &&
    one.column >= 1 &&
    one.column <= line.length + 1 &&
    one.endColumn > one.column &&
    one.endColumn <= Math.max(line.length + 1, one.column + 1) &&
    /^\S[^\n]*\S$/.test(one.message) &&
    !/undefined|\[object|NaN/.test(renderDiagnostic(one, line))
  )
}

function markOf(text: string, one: Diagnostic): string {
  return sourceLine(text, one.line).slice(one.column - 1, one.endColumn - 1)
}

/** Opens a job on the file and the rest of the example, and asks for its first prompt; problems must lie in a file. */
function jobWith(kind: DefinitionKind, text: string): 'opened' | 'refused' | string {
  const files = fileCopies({ [ROLE[kind]]: () => text })
  const result = definitionsFrom(files)
  if (!result.ok) {
    const isLocated = result.diagnostics.every((one) => {
      return isInside(files.find((file) => file.name === one.file)?.text ?? '', one)
    })
    return isLocated && result.diagnostics.length > 0 ? 'refused' : 'not located'
  }
  const opened = openJob(result.defs, {
    ...{ record: 'EXAMPLE', job: 'test', version: 'test', zone: 'UTC', clock: 'set', answers: 'script' },
    files,
  })
  if (!opened.ok) return 'refused'
  const prompt = next(result.defs, opening({ ...opened.value, seq: 0, at: stamp(START) }))
  return prompt.kind === 'sign-on' ? 'opened' : `began with ${prompt.kind}`
}

interface Tally {
  refused: number
  refusedInJob: number
  valid: number
  opened: number
}

function judge(kind: DefinitionKind, one: Mutated, tally: Tally): string | undefined {
  const { diagnostics } = checkFiles([{ path: 'f.yaml', text: one.text }])
  const stray = diagnostics.find((d) => !isInside(one.text, d))
  if (stray !== undefined) return `not located: ${JSON.stringify(stray)}`
  const key = one.mutation === 'misspell-key' ? misspelled(one.path.split('/').pop() ?? '') : undefined
  if (key !== undefined && !diagnostics.some((d) => markOf(one.text, d) === key))
    return `nothing points at ${key}`
  if (diagnostics.some((d) => d.severity === 'error')) {
    tally.refused += 1
    return undefined
  }
  if (one.mutation === 'twice' && Number.isNaN(Number(one.path.split('/').pop())))
    return 'a key stands there twice'
  if (key !== undefined) return 'a misspelled key was taken'
  const misfits = misfitsOf(SCHEMAS[kind], parse(one.text))
  if (misfits.length > 0) return `the schema does not take it: ${misfits.join(', ')}`
  const job = jobWith(kind, one.text)
  if (job !== 'opened' && job !== 'refused') return job
  if (job === 'refused') tally.refusedInJob += 1
  else {
    tally.opened += 1
    const isName = one.mutation === 'misspell-text' && NAMING.test(one.path)
    if (isName && !isInWords(one)) return 'a misspelled name was taken'
  }
  tally.valid += 1
  return undefined
}

/** A scenario is in no job, so what is spoiled in one is told by its own table: scenario.test.ts. */
const OF_JOBS = SHIPPED.filter(({ text }) => Object.keys(parse(text))[0] !== 'scenario')

describe('every shipped file with one node spoiled', () => {
  it.each(OF_JOBS.map((one) => [one.path, one.text] as const))(
    '%s',
    { timeout: 1_800_000 },
    async (path, text) => {
      expect(hasAliases(text)).toBe(false)
      const kind = Object.keys(parse(text))[0] as DefinitionKind
      const tally: Tally = { refused: 0, refusedInJob: 0, valid: 0, opened: 0 }
      const wrong: string[] = []
      for (const one of mutationsOf(text, STRIDE, path.length)) {
        const problem = judge(kind, one, tally)
        if (problem !== undefined)
          wrong.push(`${one.mutation} ${one.path} ${JSON.stringify(one.value) ?? ''}: ${problem}`)
      }
      if (process.env.MUTATIONS_TO !== undefined) {
        const { appendFileSync } = await import('node:fs')
        appendFileSync(process.env.MUTATIONS_TO, `${path} ${JSON.stringify(tally)}\n${wrong.join('\n')}\n`)
      }
      expect(wrong).toEqual([])
      expect(tally.refused).toBeGreaterThan(tally.valid)
    },
  )
})
