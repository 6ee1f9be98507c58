// Findings as the search takes them: none is marked as one, so that no job waits at its end for a lead to decide. There
// nobody is sent anywhere, and what is keyed there only ends the job; going back from there is going back from the last step,
// which is searched. That a job does wait has tests of its own (tests/core/job/findings.test.ts), and what can happen while it does is
// tried in random schedules (tests/core/job/safety.test.ts).
import type { Step } from '../definition/procedure.ts'
import type { Definitions } from '../job/definitions.ts'

export function withoutFinding(step: Step): Step {
  if (step.kind !== 'observe') return step
  return { ...step, conditions: step.conditions.map(({ finding: _finding, ...condition }) => condition) }
}

export function withoutFindings(whole: Definitions): Definitions {
  const steps = whole.steps.map((placed) => ({ ...placed, step: withoutFinding(placed.step) }))
  return { ...whole, steps }
}
