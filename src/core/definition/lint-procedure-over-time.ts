// Cross-checks of tests over time: that what they name is there, in its order and behind the stand; and that none goes
// without: readings of one sort on both sides of a wait, which somebody sees or subtracts, say nothing where they are not tied.
import { list, quote } from '../lib/wording.ts'
import { type Finding, finding, type Path, repeatedIds, unknownId } from './lint-common.ts'
import { names } from './omitted.ts'
import type { OverTime, Procedure, Step, StepOf } from './procedure.ts'

export function lintOverTime(procedure: Procedure): Finding[] {
  const tests = procedure.over_time ?? []
  return [
    ...repeatedIds(['over_time'], tests, 'test'),
    ...tests.flatMap((test, n) => lintTest(procedure, test, ['over_time', n])),
    ...untied(procedure),
  ]
}

type Kind = Step['kind']
const BY_PEOPLE: readonly Kind[] = ['tell', 'confirm', 'observe', 'read']
const PLAIN: readonly Kind[] = ['tell', 'confirm', 'observe']

/** What a test names, where, and of which kind it has to be. */
function namedBy(test: OverTime): { id: string; at: Path; kinds: readonly Kind[] }[] {
  return [
    { id: test.from, at: ['from'], kinds: test.settles === undefined ? BY_PEOPLE : PLAIN },
    ...test.start.map((id, n) => ({ id, at: ['start', n], kinds: ['read'] as const })),
    { id: test.stand, at: ['stand'], kinds: ['gate'] },
    ...test.end.map((id, n) => ({ id, at: ['end', n], kinds: BY_PEOPLE })),
    ...(test.until === undefined ? [] : [{ id: test.until, at: ['until'], kinds: PLAIN }]),
  ]
}

function lintTest({ steps }: Procedure, test: OverTime, base: Path): Finding[] {
  const wrong = namedBy(test).flatMap(({ id, at, kinds }): Finding[] => {
    const step = steps.find((one) => one.id === id)
    if (step === undefined)
      return [
        unknownId(
          [...base, ...at],
          id,
          'step',
          steps.filter((s) => kinds.includes(s.kind)).map((s) => s.id),
        ),
      ]
    if (kinds.includes(step.kind)) return []
    const message = `${quote(id)} is of kind ${step.kind}, and ${list(kinds, 'or')} is needed here.`
    return [finding([...base, ...at], 'wrong-step', message)]
  })
  if (wrong.length > 0) return wrong
  return [...lintOrder(steps, test, base), ...lintStand(steps, test, base)]
}

function lintOrder(steps: readonly Step[], test: OverTime, base: Path): Finding[] {
  const at = (id: string) => steps.findIndex((step) => step.id === id)
  const starts = test.start.map(at)
  const early = test.end.flatMap((id, n) => (at(id) > Math.max(...starts) ? [] : [{ id, path: ['end', n] }]))
  const first = starts.some((n) => n < at(test.from)) ? [{ id: test.from, path: ['from'] }] : []
  const last = test.until !== undefined && test.end.some((id) => at(id) >= at(test.until ?? ''))
  const out = [...first, ...early, ...(last ? [{ id: test.until ?? '', path: ['until'] }] : [])]
  return out.map(({ id, path }) => {
    const message = `${quote(id)} does not stand in the order of a test: from, start, end, until.`
    return finding([...base, ...path], 'test-order', message, 'each of them is a step behind the one before')
  })
}

function lintStand(steps: readonly Step[], test: OverTime, base: Path): Finding[] {
  const gate = steps.find((step): step is StepOf<'gate'> => step.kind === 'gate' && step.id === test.stand)
  if (gate === undefined) return []
  if (!gate.evidence.some((one) => one.kind === 'wait')) {
    const message = `${quote(gate.id)} has no wait, so the time between start and end would be somebody's word.`
    return [finding([...base, 'stand'], 'no-wait', message, 'add evidence of kind wait to it')]
  }
  return test.end.flatMap((id, n): Finding[] => {
    const step = steps.find((one) => one.id === id)
    const path = [...base, 'end', n]
    if (!gate.holds.some((hazard) => step?.exposes?.includes(hazard) === true)) {
      const message = `${quote(id)} faces nothing that ${quote(gate.id)} holds, so it could be done before the wait is over.`
      return [
        finding(
          path,
          'not-behind-stand',
          message,
          `name ${list(gate.holds.map(quote), 'or')} in its exposes`,
        ),
      ]
    }
    const letsIn = step !== undefined && 'lets_in' in step ? (step.lets_in ?? []) : []
    if (!letsIn.some((hazard) => gate.holds.includes(hazard)) || test.until === undefined) return []
    const message = `${quote(id)} is read at the end and ends the test as well: read anew, there would be nothing to read.`
    return [finding(path, 'ends-itself', message, 'make gas off or pressure out a step of its own, in until')]
  })
}

/** Readings of one quantity in one seat on both sides of a wait, without a test that ties them. */
function untied(procedure: Procedure): Finding[] {
  const { steps } = procedure
  const ends = new Set((procedure.over_time ?? []).flatMap(({ end }) => end))
  const waits = steps.flatMap((step, at) =>
    step.kind === 'gate' && step.evidence.some((one) => one.kind === 'wait') ? [{ gate: step, at }] : [],
  )
  return steps.flatMap((end, n): Finding[] => {
    if (end.kind !== 'read' || ends.has(end.id)) return []
    for (const { gate, at } of waits.filter((one) => one.at < n)) {
      const isBehind = faces(end, gate.holds)
      const start = steps.slice(0, n).find((one, m) => {
        if (one.kind !== 'read' || one.quantity !== end.quantity || one.with !== end.with) return false
        if (isBehind && m < at && faces(one, end.exposes ?? [])) return true
        return (isBehind || m < at) && areCompared(procedure, one.id, end.id)
      })
      if (start === undefined) continue
      const message = `${quote(end.id)} is read after a wait, and ${quote(start.id)} before: nothing brings the wait and the end again when the start is read anew.`
      const hint = `tie them in over_time: from, start: [${start.id}], stand: ${gate.id}, end: [${end.id}], until`
      return [finding(['steps', n, 'id'], 'untied-test', message, hint)]
    }
    return []
  })
}

function faces({ exposes }: Step, hazards: readonly string[]): boolean {
  return exposes?.some((hazard) => hazards.includes(hazard)) === true
}

/** Whether one expression of a judge, a value or a rule names both. */
function areCompared({ steps, values = [] }: Procedure, a: string, b: string): boolean {
  const texts = steps.flatMap((step) => [
    step.when?.rule ?? '',
    ...(step.kind === 'judge' && step.compute === 'figures' ? step.figures.map(({ is }) => is) : []),
  ])
  const isNamed = (text: string, id: string): boolean =>
    names(text, id) || values.some((value) => names(text, value.id) && isNamed(value.is, id))
  return [...texts, ...values.map(({ is }) => is)].some((text) => isNamed(text, a) && isNamed(text, b))
}
