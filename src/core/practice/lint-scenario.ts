// A scenario against its procedure, its machine and the list of faults: what it hides can be hidden there, where its hints and
// expectations point is there, and what the instructor expects is what the machine would show.
import { type Finding, finding, unknownId, warning } from '../definition/lint-common.ts'
import type { Scenario } from '../definition/scenario.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gatesOf, itemsFor } from '../job/gate.ts'
import { LEVELS, type Level, PLATE, type Practised } from '../job/practice.ts'
import { list, quote } from '../lib/wording.ts'
import { whyNotTogether } from './draw.ts'
import { EDITION } from './edition.ts'
import { type Expected, expectedOf } from './expected.ts'
import { factsOf } from './facts.ts'
import { FAULTS, faultById, faultsFor, isFault } from './faults.ts'
import { uncovered } from './truth.ts'

/** Its seed, and its level: that of the hardest of the faults it names. */
export function practisedBy({ seed, level, faults = [] }: Scenario): Practised {
  const hardest = Math.max(1, ...faults.filter(isFault).map((id): number => faultById(id).level))
  const own: Level = LEVELS.find((one) => one === (level ?? hardest)) ?? 1
  return { seed, level: own, edition: EDITION }
}

/** `defs` are those of its procedure and machine, with the scenario in them. */
export function lintScenarioIn(defs: Definitions, scenario: Scenario): Finding[] {
  const found = [...placesIn(defs, scenario), ...namesIn(defs, scenario)]
  const facts = factsOf(defs)
  if (!facts.ok) return [...found, finding(['procedure'], 'no-practice', facts.error.say)]
  const [open, ...more] = uncovered(defs)
  if (open !== undefined) {
    const others = more.length === 0 ? '' : ` and ${more.length} more`
    const message = `Practice does not know every step of ${defs.procedure.title}: step ${open}${others}.`
    return [...found, finding(['procedure'], 'no-practice', message)]
  }
  const wrong = faultsIn(defs, scenario)
  if (found.length + wrong.length > 0) return [...found, ...wrong]
  try {
    return expectedIn(defs, scenario, expectedOf(defs, practisedBy(scenario)))
  } catch (error) {
    // A fault that no machine of these sizes can have.
    const why = error instanceof Error ? error.message : String(error)
    return [finding(['faults'], 'no-such-machine', `No machine can be made of this: ${why}.`)]
  }
}

function faultsIn(defs: Definitions, { faults = [] }: Scenario): Finding[] {
  const met = faultsFor(defs)
  const found = faults.flatMap((id, at): Finding[] => {
    const path = ['faults', at]
    if (!isFault(id))
      return [
        unknownId(
          path,
          id,
          'fault',
          FAULTS.map((one) => one.id),
        ),
      ]
    if (met.some((one) => one.id === id)) return []
    const message = `${quote(id)} is never met in ${defs.procedure.procedure}.`
    return [finding(path, 'not-met', message, `it is in ${list(faultById(id).procedures, 'or')}`)]
  })
  if (found.length > 0) return found
  return faults.flatMap((id, at) =>
    faults.slice(0, at).flatMap((first): Finding[] => {
      const why = whyNotTogether(faultById(first), faultById(id))
      if (why === null) return []
      const message = `${quote(id)} cannot be hidden together with ${quote(first)}: ${why}.`
      return [finding(['faults', at], 'not-together', message, 'write two scenarios')]
    }),
  )
}

/** Every place that a hint may be for, as `hint` knows them. */
function placesOf(defs: Definitions): readonly string[] {
  const lines = gatesOf(defs).flatMap((gate) =>
    itemsFor(defs, gate, []).map(({ evidence }) => `${gate.step.id}/${evidence.id}`),
  )
  return [...new Set([PLATE, ...defs.steps.map(({ step }) => step.id), ...lines])]
}

function placesIn(defs: Definitions, { hints = [], expect = {} }: Scenario): Finding[] {
  const known = placesOf(defs)
  const steps = (kind: 'observe' | 'judge') => defs.steps.filter(({ step }) => step.kind === kind)
  const at = (path: readonly (string | number)[], where: string) =>
    known.includes(where) ? [] : [unknownId(path, where, 'place', near(where, known))]
  const stepAt = (key: string, n: number, id: string, kind: 'observe' | 'judge') =>
    findStep(defs, id)?.step.kind === kind
      ? []
      : [
          unknownId(
            ['expect', key, n, 'step'],
            id,
            `${kind} step`,
            steps(kind).map((one) => one.id),
          ),
        ]
  return [
    ...hints.flatMap((hint, n) => at(['hints', n, 'at'], hint.at)),
    ...(expect.stops_at === undefined ? [] : at(['expect', 'stops_at'], expect.stops_at)),
    ...(expect.findings ?? []).flatMap(({ step }, n) => stepAt('findings', n, step, 'observe')),
    ...(expect.verdicts ?? []).flatMap(({ step }, n) => stepAt('verdicts', n, step, 'judge')),
    ...(expect.findings ?? []).flatMap(({ step, is }, n) => {
      const conditions = conditionsOf(findStep(defs, step))
      if (conditions.length === 0) return []
      return is.flatMap((one, m) =>
        conditions.includes(one)
          ? []
          : [unknownId(['expect', 'findings', n, 'is', m], one, 'condition', conditions)],
      )
    }),
  ]
}

/** Of a hold point's line the others of its hold point. */
function near(where: string, known: readonly string[]): readonly string[] {
  const [gate] = where.split('/')
  const own = known.filter((one) => where.includes('/') && one.startsWith(`${gate}/`))
  return own.length > 0 ? own : known
}

function conditionsOf(placed: PlacedStep | undefined): readonly string[] {
  return placed?.step.kind === 'observe' ? placed.step.conditions.map(({ id }) => id) : []
}

/** By its id in the whole job, or in its own procedure. */
export function findStep(defs: Definitions, id: string): PlacedStep | undefined {
  return defs.steps.find((one) => one.id === id) ?? defs.steps.find(({ step }) => step.id === id)
}

/** Of a crew file that is not invented nobody is told of in a scenario. */
function namesIn(defs: Definitions, scenario: Scenario): Finding[] {
  if (defs.crew.invented === true) return []
  const texts: readonly (readonly [readonly (string | number)[], string])[] = [
    [['title'], scenario.title],
    ...scenario.briefing.map((text, n) => [['briefing', n], text] as const),
    ...(scenario.hints ?? []).map(({ says }, n) => [['hints', n, 'says'], says] as const),
  ]
  return texts.flatMap(([path, text]) =>
    defs.crew.crew.flatMap(({ id, name }): Finding[] => {
      const isNamed = name.split(/\s+/).some((word) => word.length > 2 && hasWord(text, word))
      if (!isNamed) return []
      const message = `This names ${id} of the crew file, who is not marked invented.`
      return [finding(path, 'real-name', message, 'tell it of nobody, or of somebody made up')]
    }),
  )
}

function hasWord(text: string, word: string): boolean {
  const words = text.toLowerCase().split(/[^\p{L}\p{N}]+/u)
  return words.includes(word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ''))
}

function expectedIn(defs: Definitions, { expect = {} }: Scenario, expected: Expected): Finding[] {
  const { stop } = expected
  const { stops_at: stopsAt, findings = [], verdicts = [] } = expect
  if (stop !== null) return stoppedIn(expect, stop)
  const early =
    stopsAt === undefined
      ? []
      : [
          finding(
            ['expect', 'stops_at'],
            'not-shown',
            'Nothing on this machine stops the work: it goes to its end.',
            'leave stops_at out',
          ),
        ]
  return [
    ...early,
    ...findings.flatMap(({ step, is }, n): Finding[] => {
      const placed = findStep(defs, step)
      if (placed === undefined || placed.step.kind !== 'observe') return []
      const shown = expected.findings.get(placed.id)
      const path = ['expect', 'findings', n, 'is']
      if (shown === undefined) return [untold(path, step)]
      if (shown.length === is.length && shown.every((one) => is.includes(one))) return []
      return [
        finding(path, 'not-shown', `This machine does not show that at ${step}.`, `it shows ${list(shown)}`),
      ]
    }),
    ...verdicts.flatMap(({ step, is, governs }, n): Finding[] => {
      const placed = findStep(defs, step)
      if (placed === undefined || placed.step.kind !== 'judge') return []
      const worth = expected.verdicts.get(placed.id)
      const path = ['expect', 'verdicts', n]
      if (worth === undefined) return [untold([...path, 'is'], step)]
      if (worth.verdict !== is)
        return [
          finding(
            [...path, 'is'],
            'not-shown',
            `In truth this machine is worth ${worth.verdict} there, not ${is}.`,
          ),
        ]
      if (governs === undefined || worth.governs.includes(governs)) return []
      const hint = worth.governs.length === 0 ? 'no limit governs there' : `it is ${list(worth.governs)}`
      return [finding([...path, 'governs'], 'not-shown', `${quote(governs)} does not govern there.`, hint)]
    }),
  ]
}

function stoppedIn(
  { stops_at: stopsAt, findings = [], verdicts = [] }: NonNullable<Scenario['expect']>,
  { fault, at }: NonNullable<Expected['stop']>,
): Finding[] {
  const late = [...findings.map((_, n) => ['findings', n]), ...verdicts.map((_, n) => ['verdicts', n])]
  const message = `${quote(fault)} stops the work before anybody comes to this.`
  return [
    ...late.map((path) => finding(['expect', ...path], 'not-reached', message, 'leave it out')),
    ...(stopsAt === undefined || at.includes(stopsAt)
      ? []
      : [
          finding(
            ['expect', 'stops_at'],
            'not-shown',
            `${quote(fault)} does not stop the work there.`,
            `it is met at ${list(at, 'or')}`,
          ),
        ]),
  ]
}

function untold(path: readonly (string | number)[], step: string): Finding {
  return warning(
    path,
    'not-told',
    `Whether ${step} comes up on this machine is not known before it is worked.`,
    'work it once and look',
  )
}
