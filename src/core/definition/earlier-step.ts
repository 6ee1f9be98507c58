// A step that another one names: it stands earlier, and is of the kind that is needed.
import { a, nearest, quote } from '../lib/wording.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import type { Procedure, Step } from './procedure.ts'

/** The step, or the finding at `path`. `index` is that of the step that names it. */
export function earlierStep(
  procedure: Procedure,
  id: string,
  index: number,
  path: Path,
  kind: Step['kind'],
): Step | Finding {
  const step = procedure.steps.slice(0, index).find((s) => s.id === id)
  if (step === undefined) {
    if (procedure.steps.some((s) => s.id === id)) {
      const message = `${quote(id)} does not stand before this step, so its outcome is not known yet.`
      return finding(path, 'used-too-early', message, 'move one of the two steps')
    }
    const known = procedure.steps.filter((s) => s.kind === kind).map((s) => s.id)
    const near = nearest(id, known)
    const hint = near === undefined ? `name an earlier ${kind} step` : `did you mean ${near}?`
    return finding(path, 'unknown-step', `${quote(id)} is not a step of this procedure.`, hint)
  }
  if (step.kind === kind) return step
  return finding(
    path,
    'wrong-step',
    `${quote(id)} is ${a(step.kind)} step, and ${a(kind)} step is needed here.`,
  )
}
