// The load question on the two invented machines, walked by the lines that a crew would key.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { PocketVerdict } from '../../src/core/cycle/pocket-judge-input.ts'
import { asKind, type Definitions, stepById } from '../../src/core/job/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import type { PocketJudgeStep } from '../../src/core/job/pocket-step.ts'
import type { PocketVerdictRecord } from '../../src/core/job/verdict-record.ts'
import { ROOT, Walk } from './example.ts'

export type Site = 'rg-27' | 'tc-401'
export type Change = Partial<Record<FileCopy['role'], (text: string) => string>>

export function pocketFiles(site: Site, change: Change = {}): FileCopy[] {
  const read = (role: FileCopy['role'], path: string): FileCopy => {
    const text = readFileSync(join(ROOT, path), 'utf8')
    return { role, name: path.split('/').pop() ?? path, sha256: '', text: change[role]?.(text) ?? text }
  }
  return [
    read('procedure', 'procedures/pocket-load.yaml'),
    read('machine', `examples/${site}/machine.yaml`),
    read('instruments', `examples/${site}/instruments.yaml`),
    read('crew', `examples/${site}/crew.yaml`),
    read('limit-book', 'procedures/limits/handbook-1996.yaml'),
  ]
}

export function pocketDefs(site: Site, change: Change = {}): Definitions {
  const result = definitionsFrom(pocketFiles(site, change))
  if (!result.ok)
    throw new Error(result.diagnostics.map((d) => `${d.file}:${d.line} ${d.message}`).join('\n'))
  return result.defs
}

interface Readings {
  /** Hand-wheel in degrees; or the finding of a pocket that is open or shut. */
  readonly setting?: string
  readonly suction?: string
  readonly discharge?: string
  readonly gas?: readonly [string, string]
  readonly load?: string
}

/** What is keyed on RG-27 up to the verdict. */
export function rg27Lines(readings: Readings = {}): string[] {
  const {
    setting = '540',
    suction = '2.10',
    discharge = '22.75',
    gas = ['30', '40'],
    load = '222',
  } = readings
  return [
    ...['IM', 'RG-27-1', '', '1', '1', '1', setting, setting],
    ...['B-52', suction, suction, 'B-54', discharge, discharge],
    ...['1', gas[0], gas[1], '1', load, load],
  ]
}

/** RG-27, its hand-wheel a turn and a half open; overloaded unless said otherwise. */
export function rg27(readings: Readings = {}, defs = pocketDefs('rg-27')): Walk {
  return new Walk(defs).keys(...rg27Lines(readings))
}

/** What is keyed on TC-401 up to the verdict. `setting`: 1 shut, 2 open. */
export function tc401Lines(readings: Readings = {}): string[] {
  const { setting = '1', suction = '60', discharge = '520', gas = ['80', '110'], load = '250' } = readings
  return [
    ...['RO', 'TC-401-1', '', '2', setting],
    ...['P-6', suction, suction, 'P-8', discharge, discharge],
    ...['1', gas[0], gas[1], '1', load, load],
  ]
}

/** TC-401, its pocket shut; well inside its rating unless said otherwise. */
export function tc401(readings: Readings = {}, defs = pocketDefs('tc-401')): Walk {
  return new Walk(defs).keys(...tc401Lines(readings))
}

export function pocketVerdictOf(walk: Walk): PocketVerdictRecord {
  const record = walk.state.verdicts.judged?.verdict
  if (record?.compute !== 'pocket_setting')
    throw new Error(`not judged, at ${walk.prompt.kind}: ${walk.said.slice(-3).join(' / ')}`)
  return record
}

export function resultOf(walk: Walk): PocketVerdict {
  return pocketVerdictOf(walk).result
}

export function pocketJudgeOf(defs: Definitions): PocketJudgeStep {
  const placed = asKind(stepById(defs, 'judged'), 'judge')
  const { step } = placed
  if (step.compute !== 'pocket_setting') throw new Error('not a judge of the pocket')
  return { ...placed, step }
}
