// The lines of measurement of a bore by their names at the bench: what a file calls vertical is top to bottom everywhere.
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { oncePer } from '../lib/once.ts'

/** By id, in small letters: `vertical` is `top to bottom`. */
export const axisNames = oncePer((defs: Definitions): ReadonlyMap<string, string> => {
  const axes = defs.steps.flatMap((placed) => {
    const judge = asBoreJudge(placed)
    if (judge === null) return []
    return asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read').step.axes ?? []
  })
  return new Map(axes.map(({ id, label }) => [id, label.toLowerCase()]))
})

export function axisName(defs: Definitions, id: string): string {
  return axisNames(defs).get(id) ?? id.replaceAll('_', ' ')
}

/** A sentence of the judge, which knows axes by their ids, as the sheet says it. */
export function withAxisNames(defs: Definitions, text: string): string {
  let said = text
  for (const [id, name] of axisNames(defs))
    said = said.replace(new RegExp(`(?<![\\w-])${id}(?![\\w-])`, 'g'), name)
  return said
}
