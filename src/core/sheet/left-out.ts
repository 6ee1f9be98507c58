// What was not done because its rule said so: where the job passes it by, and at the close, so that nothing is left out without a word. A part
// that was left out as a whole is one line.
import { type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { applicability, isComplete } from '../job/next.ts'
import { ruleWords } from '../job/rule-words.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import type { RuleTerm } from '../rules/terms.ts'
import { byPart, numbersOf } from '../talk/left-out.ts'
import { type Row, row } from './block.ts'

export function leftOutRows(defs: Definitions, state: State): Row[] {
  const out = defs.steps.filter((placed) => applicability(defs, state, placed) === 'skip')
  return byPart(defs, state, out).map(({ by, steps }) =>
    row(`  left out: ${numbersOf(steps)} ${by.step.title} (only if ${ruleWords(defs, by)})`),
  )
}

/** An entry by which a step is done; of readings the last. */
const DOES: ReadonlySet<Entry['type']> = new Set([
  ...([
    'step.done',
    'step.confirmed',
    'finding.observed',
    'reading.taken',
    'reading.not-applicable',
  ] as const),
  ...(['doubt.settled', 'verdict.given', 'disposition.set'] as const),
])

/** What is passed by right behind the step that the entry completes: which answer left it out, and how that is changed. */
export function passedByRows(defs: Definitions, state: State, entry: Entry): Row[] {
  if (!DOES.has(entry.type) || state.paper !== null) return []
  const id = 'step' in entry ? entry.step : null
  if (id === null || id === undefined) return []
  const done = stepById(defs, id)
  if (!isComplete(state, done)) return []
  const after = defs.steps.slice(defs.steps.indexOf(done) + 1)
  const end = after.findIndex((placed) => applicability(defs, state, placed) !== 'skip')
  const whys = new Map<string, string[]>()
  for (const { by, steps } of byPart(defs, state, after.slice(0, end === -1 ? after.length : end))) {
    const found = foundAt(defs, by)
    const why =
      found === null
        ? `asked only if ${ruleWords(defs, by)}.`
        : `by the answer at ${found}; the word correct changes it.`
    whys.set(why, [...(whys.get(why) ?? []), numbersOf(steps)])
  }
  return [...whys].map(([why, numbers]) => row(`Left out: ${list(numbers)}, ${why}`))
}

/** The numbers of the observe steps that the rule goes by, where it goes by nothing else: what was found there is corrected by its word. */
function foundAt(defs: Definitions, { rule, scope }: PlacedStep): string | null {
  const names = rule === null ? [] : namesOf(rule.term())
  const steps = names.map((name) => defs.steps.find(({ id }) => id === scope + name))
  const numbers = steps.flatMap((one) => (one?.step.kind === 'observe' ? [String(one.number)] : []))
  return numbers.length === 0 || numbers.length < names.length ? null : list(numbers)
}

function namesOf(term: RuleTerm): string[] {
  const names =
    term.is === 'word' ? [term.name] : term.is === 'other' ? [...term.names] : term.of.flatMap(namesOf)
  return [...new Set(names)]
}
