// What an instructor expected to be found, and whether the trainee found it. It is told on the sheet; the marks come from the machine alone.
import type { Definitions } from '../job/definitions.ts'
import { PLATE, type PracticeState } from '../job/practice.ts'
import { labelsOf } from '../job/seen.ts'
import { governsText } from './governable.ts'
import { findStep } from './lint-scenario.ts'

export interface ExpectedFound {
  readonly says: string
  readonly isFound: boolean
}

/** `seen`: what stands as found at each observe step. `isStopped`: something that was seen stopped the work, and it was right. */
export function expectedFound(
  defs: Definitions,
  practice: PracticeState,
  seen: ReadonlyMap<string, readonly string[]>,
  isStopped: boolean,
): ExpectedFound[] {
  const { stops_at: stopsAt, findings = [], verdicts = [] } = defs.scenario?.expect ?? {}
  const titleOf = (id: string) => findStep(defs, id)?.step.title ?? id
  return [
    ...(stopsAt === undefined
      ? []
      : [{ says: `The work stops at ${placeText(defs, stopsAt)}`, isFound: isStopped }]),
    ...findings.map(({ step, is }) => {
      const id = findStep(defs, step)?.id ?? step
      const there = seen.get(id) ?? []
      return {
        says: `${titleOf(step)}: ${labelsOf(defs, id, is)}`,
        isFound: there.length === is.length && is.every((one) => there.includes(one)),
      }
    }),
    ...verdicts.map(({ step, is, governs }) => {
      const called = practice.called[findStep(defs, step)?.id ?? step]
      const by = governs === undefined ? '' : `, ${governsText(governs)} governs`
      const isGoverned = governs === undefined || called?.governs.includes(governs) === true
      return { says: `${titleOf(step)}: ${is}${by}`, isFound: called?.verdict === is && isGoverned }
    }),
  ]
}

function placeText(defs: Definitions, where: string): string {
  if (where === PLATE) return 'the plate'
  const [gate = where, line] = where.split('/')
  const title = findStep(defs, gate)?.step.title ?? gate
  return line === undefined ? title : `${title}, ${line.replaceAll('_', ' ')}`
}
