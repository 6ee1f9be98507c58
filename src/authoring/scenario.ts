// A practice scenario taken to the definitions of the job it is about.
import type { Definitions } from '../core/job/definitions.ts'
import { lintScenarioIn } from '../core/practice/lint-scenario.ts'
import type { GoodOf, TextFile } from './check.ts'
import { readDefinition } from './definition-file.ts'
import type { DefinitionsResult } from './definitions.ts'
import { type Diagnostic, tidy } from './diagnostic.ts'
import { locateFinding } from './locate.ts'

/** `kept`: that of a session that was opened before, which the list of faults of today does not hold back. */
export function withScenario(defs: Definitions, file: TextFile, of: 'new' | 'kept'): DefinitionsResult {
  const read = readDefinition(file.text, file.path)
  if (!read.ok) return read
  if (read.kind !== 'scenario') {
    const where = { file: file.path, line: 1, column: 1, endColumn: 2 }
    const message = `This file is of the kind '${read.kind}', and a file of the kind 'scenario' is needed.`
    return { ok: false, diagnostics: [{ ...where, code: 'other-kind', message, severity: 'error' }] }
  }
  const whole = { ...defs, scenario: read.value }
  if (of === 'kept') return { ok: true, defs: whole, warnings: [] }
  const found = scenarioProblems(defs, read)
  const warnings = [...read.warnings, ...found]
  return found.some((one) => one.severity === 'error')
    ? { ok: false, diagnostics: warnings }
    : { ok: true, defs: whole, warnings }
}

/** What is wrong between a scenario and its procedure, its machine and the list of faults, from top to bottom. */
export function scenarioProblems(defs: Definitions, { value, yaml }: GoodOf<'scenario'>): Diagnostic[] {
  const found = lintScenarioIn({ ...defs, scenario: value }, value)
  return tidy(found.map((one) => locateFinding(yaml, one)))
}
