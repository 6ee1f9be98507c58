// What can be said of a scenario by itself; against its procedure and machine it is held in core/practice/lint-scenario.ts.
import { type Finding, finding, repeats } from './lint-common.ts'
import type { Scenario } from './scenario.ts'

export function lintScenario({ level, faults, hints = [], expect = {} }: Scenario): Finding[] {
  return [
    ...oneOf(level, faults),
    ...twice(['faults'], faults ?? []),
    ...twice(
      ['hints'],
      hints.map(({ at }) => at),
      'at',
    ),
    ...twice(
      ['expect', 'findings'],
      (expect.findings ?? []).map(({ step }) => step),
      'step',
    ),
    ...twice(
      ['expect', 'verdicts'],
      (expect.verdicts ?? []).map(({ step }) => step),
      'step',
    ),
  ]
}

function oneOf(level: Scenario['level'], faults: Scenario['faults']): Finding[] {
  if (level === undefined && faults === undefined)
    return [
      finding(
        [],
        'nothing-chosen',
        'Neither level nor faults says what is hidden.',
        'level: 2 draws it by the seed, faults: [taper] names it, faults: [] hides nothing',
      ),
    ]
  if (level === undefined || faults === undefined) return []
  const message = 'What is hidden is drawn by level or named by faults, not both.'
  return [{ ...finding(['level'], 'level-and-faults', message, 'leave one of them out'), atKey: true }]
}

function twice(path: readonly string[], names: readonly string[], key?: string): Finding[] {
  return repeats(names).map(({ at, first }) =>
    finding(
      [...path, at, ...(key === undefined ? [] : [key])],
      'repeated',
      `'${names[at] ?? ''}' stands here already, as number ${first + 1} of this list.`,
      'name each once',
    ),
  )
}
