// Steps that a whole leaves out of a part, since it has them already: nothing that stays may refer to one.
import { list, quote } from '../lib/wording.ts'
import { judgeReads } from './judge-reads.ts'
import type { Procedure, Step, StepOf } from './procedure.ts'

/** Why these steps cannot be left out of the procedure, in one sentence; null if they can. */
export function omittedFault(procedure: Procedure, omits: ReadonlySet<string>): string | null {
  for (const id of omits) {
    const [own = id, ...inner] = id.split('.')
    const step = procedure.steps.find((one) => one.id === own)
    if (step === undefined || (inner.length > 0 && (step.kind !== 'part' || omits.has(own))))
      return `${quote(id)} is no step of ${quote(procedure.procedure)}, so it cannot be left out.`
    // What refers to a step in a part stands in that part, where it is looked at.
    if (inner.length > 0) continue
    const users = procedure.steps.filter((step) => !omits.has(step.id) && refersTo(procedure, step, id))
    const test = procedure.over_time?.find((one) =>
      [one.from, one.stand, one.until, ...one.start, ...one.end].includes(id),
    )
    if (test !== undefined)
      return `${quote(id)} cannot be left out of ${quote(procedure.procedure)}: the test ${quote(test.id)} refers to it.`
    if (users.length > 0)
      return `${quote(id)} cannot be left out of ${quote(procedure.procedure)}: ${list(users.map((u) => quote(u.id)))} ${users.length === 1 ? 'refers' : 'refer'} to it.`
  }
  if (omits.size > 0 && procedure.steps.every((step) => omits.has(step.id)))
    return `Every step of ${quote(procedure.procedure)} would be left out.`
  return null
}

/** What is left out of a part: what its own step says, and what a whole around it says as `part.step`. */
export function omitsWithin(part: StepOf<'part'>, omits: ReadonlySet<string>): Set<string> {
  const before = `${part.id}.`
  const inner = [...omits].filter((id) => id.startsWith(before)).map((id) => id.slice(before.length))
  return new Set([...(part.omits ?? []), ...inner])
}

/** Values are looked through by their text: a name inside a longer one would only be refused needlessly, never missed. */
function refersTo(procedure: Procedure, step: Step, id: string): boolean {
  const texts = [
    step.when?.rule ?? '',
    ...(step.kind === 'judge' && step.compute === 'figures' ? step.figures.map(({ is }) => is) : []),
  ]
  const values = procedure.values ?? []
  const isNamed = (text: string): boolean =>
    names(text, id) || values.some((value) => names(text, value.id) && isNamed(value.is))
  if (texts.some(isNamed)) return true
  if (step.kind === 'decide') return step.about === id
  if (step.kind !== 'judge') return false
  const { needed, optional, observed } = judgeReads(step)
  return [...needed, ...optional, ...observed].includes(id)
}

/** Whether the text has the id as a word of its own. */
export function names(text: string, id: string): boolean {
  return new RegExp(`(?<![A-Za-z0-9_])${id}(?![A-Za-z0-9_])`).test(text)
}
