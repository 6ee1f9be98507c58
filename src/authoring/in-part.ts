// A problem inside a part is said at both places: in the part's own file, and at each step that uses it.

import type { Procedure } from '../core/definition/procedure.ts'
import { quote } from '../core/lib/wording.ts'
import type { Diagnostic } from './diagnostic.ts'
import { locateFinding } from './locate.ts'
import type { YamlFile } from './read-yaml.ts'

export interface Using {
  readonly yaml: YamlFile
  readonly procedure: Procedure
  /** The file that a part of this id comes from, if it is there. */
  readonly fileOf: (id: string) => string | undefined
}

/** One more problem for each step of `users` whose part, or a part of that part, has an error in `found`. */
export function inParts(users: readonly Using[], found: readonly Diagnostic[]): Diagnostic[] {
  const more: Diagnostic[] = []
  const errors = new Map<string, Diagnostic[]>()
  const add = (one: Diagnostic) => errors.set(one.file, [...(errors.get(one.file) ?? []), one])
  for (const one of found) if (one.severity === 'error') add(one)
  // Each round carries errors one level up; a level that brings nothing new ends it.
  for (let before = -1; before !== more.length; ) {
    before = more.length
    for (const user of users) {
      for (const one of usesOf(user, errors)) {
        const isSaid = errors.get(one.file)?.some((other) => isSamePlace(one, other)) ?? false
        if (isSaid) continue
        add(one)
        more.push(one)
      }
    }
  }
  return more
}

function usesOf(user: Using, errors: ReadonlyMap<string, readonly Diagnostic[]>): Diagnostic[] {
  return user.procedure.steps.flatMap((step, index) => {
    if (step.kind !== 'part') return []
    const file = user.fileOf(step.use)
    const own = file === undefined ? [] : (errors.get(file) ?? [])
    const [first, ...others] = [...own].sort((a, b) => a.line - b.line || a.column - b.column)
    if (first === undefined || first.file === user.yaml.file) return []
    const count = others.length === 0 ? 'an error' : `${others.length + 1} errors`
    const message = `The part ${quote(step.use)} has ${count} of its own.`
    const hint = `see ${first.file}:${first.line}:${first.column}`
    return [locateFinding(user.yaml, { path: ['steps', index, 'use'], code: 'in-part', message, hint })]
  })
}

function isSamePlace(a: Diagnostic, b: Diagnostic): boolean {
  return a.line === b.line && a.column === b.column
}
