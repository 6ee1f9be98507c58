// Walks a procedure with its parts opened out: parts that are missing or stand inside themselves, and hazards that only a
// gate in a part holds. Needs the procedures alone, no machine.

import { list, nearest, quote } from '../lib/wording.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import { type JobFile, type JobFinding, within } from './lint-job-shape.ts'
import { lintMakeSafe } from './lint-make-safe.ts'
import { omitsWithin, omittedFault } from './omitted.ts'
import type { Procedure, Step, StepOf } from './procedure.ts'

/** Parts within parts can multiply; a job sheet of this many steps is a mistake. */
const MOST_STEPS = 2000

interface Walk {
  /** Procedures that `part` steps may use, by id. */
  readonly parts: ReadonlyMap<string, Procedure>
  /** Ids that a misspelled `use` may have meant. */
  readonly beside: readonly string[]
  readonly found: JobFinding[]
  /** What each hazard is called in the job so far, by its id. */
  readonly names: Map<string, string>
  /** The first step that faces each hazard, by the hazard's id. */
  readonly faced: Map<string, string>
  steps: number
}

/**
 * Findings about the steps as a person would walk them, each in the procedure or part it stands in. `beside` are the ids
 * of all procedures there are; `parts` may hold only those that are used, and a misspelled one is used by nobody.
 */
export function lintParts(
  procedure: Procedure,
  parts: ReadonlyMap<string, Procedure>,
  beside: readonly string[] = [...parts.keys()],
): JobFinding[] {
  const others = beside.filter((id) => id !== procedure.procedure)
  const walk: Walk = { parts, beside: others, found: [], names: new Map(), faced: new Map(), steps: 0 }
  walk.found.push(...within({ kind: 'procedure' }, lintMakeSafe(procedure)))
  for (const [id, part] of parts) walk.found.push(...within({ kind: 'part', id }, lintMakeSafe(part)))
  open(walk, procedure, { kind: 'procedure' }, [procedure.procedure], new Set())
  return walk.found
}

/** Returns the hazards held once this procedure has been walked; `held` are those held when it starts. */
function open(
  walk: Walk,
  procedure: Procedure,
  file: JobFile,
  inside: readonly string[],
  held: ReadonlySet<string>,
  omits: ReadonlySet<string> = new Set(),
): Set<string> {
  const now = new Set(held)
  walk.found.push(...within(file, lintNames(walk, procedure)))
  procedure.steps.forEach((step, index) => {
    if (omits.has(step.id)) return
    const path = ['steps', index]
    walk.steps += 1
    walk.found.push(...within(file, lintHeld(procedure, step, index, now, omits)))
    walk.found.push(...within(file, lintLate(walk, step, index)))
    if (step.kind === 'gate') for (const id of step.holds) now.add(id)
    if (step.kind !== 'part') return
    const used = usable(walk, step, file, path, inside)
    if (used === undefined) return
    const left = omitsWithin(step, omits)
    const fault = omittedFault(used, left)
    if (fault !== null) walk.found.push(...within(file, [finding([...path, 'omits'], 'part-omits', fault)]))
    const after = open(walk, used, { kind: 'part', id: step.use }, [...inside, step.use], now, left)
    // A part with a condition may be skipped, and its gates with it.
    if (step.when === undefined) for (const id of after) now.add(id)
  })
  return now
}

function usable(walk: Walk, step: StepOf<'part'>, file: JobFile, path: Path, inside: readonly string[]) {
  const where = [...path, 'use']
  const say = (code: string, message: string, hint?: string) => {
    walk.found.push(...within(file, [finding(where, code, message, hint)]))
    return undefined
  }
  if (inside.includes(step.use)) return say('part-loop', `${quote(step.use)} would stand inside itself.`)
  if (walk.steps > MOST_STEPS)
    return say('too-many-steps', `With ${quote(step.use)} the job has over ${MOST_STEPS} steps.`)
  const used = walk.parts.get(step.use)
  if (used !== undefined) return used
  const near = nearest(step.use, walk.beside)
  const others = `procedures beside this one: ${list(walk.beside.slice(0, 8))}`
  const hint = near === undefined ? others : `did you mean ${near}?`
  return say('unknown-part', `${quote(step.use)} is no procedure beside this one.`, hint)
}

/**
 * One id is one hazard in the whole job: a gate of a part that holds it holds it for all. So two things of one id would let
 * the gate against one of them stand for the other.
 */
function lintNames({ names }: Walk, { hazards }: Procedure): Finding[] {
  const plain = (name: string) => name.trim().toLowerCase()
  return hazards.flatMap(({ id, name }, n) => {
    const known = names.get(id)
    // The latest name stays, so that a part used twice is told once.
    names.set(id, name)
    if (known === undefined || plain(known) === plain(name)) return []
    const message = `${quote(id)} is ${quote(name)} here and ${quote(known)} elsewhere in the job, and one gate would hold both.`
    const hint = 'give one of the two an id of its own; if they are one hazard, give it one name'
    return [finding(['hazards', n, 'name'], 'two-hazards', message, hint)]
  })
}

/**
 * A step waits for every gate of the job that holds a hazard it faces, wherever the gate stands. One further down would be
 * asked before its turn.
 */
function lintLate({ faced }: Walk, step: Step, index: number): Finding[] {
  const late =
    step.kind !== 'gate'
      ? []
      : step.holds.flatMap((id, n) => {
          const first = faced.get(id)
          if (first === undefined) return []
          const message = `${quote(id)} is faced by ${quote(first)} already, which stands before this gate and would wait for it.`
          const hint = 'give what this gate holds an id and a name of its own, or move the gate up'
          return [finding(['steps', index, 'holds', n], 'late-gate', message, hint)]
        })
  for (const id of step.exposes ?? []) if (!faced.has(id)) faced.set(id, step.id)
  return late
}

/** Only what the check of the file itself left open: a hazard that a part standing earlier was trusted to hold. */
function lintHeld(
  procedure: Procedure,
  step: Step,
  index: number,
  held: ReadonlySet<string>,
  omits: ReadonlySet<string>,
): Finding[] {
  const seenHere = omits.size === 0 && !procedure.steps.slice(0, index).some((one) => one.kind === 'part')
  if (seenHere) return []
  return (step.exposes ?? []).flatMap((id, n) => {
    if (held.has(id)) return []
    const message = `${quote(id)} is held back by no gate before this step, in this file or in a part.`
    const hint = 'a gate inside a part with when does not count: the part may be skipped'
    return [finding(['steps', index, 'exposes', n], 'not-held', message, hint)]
  })
}
