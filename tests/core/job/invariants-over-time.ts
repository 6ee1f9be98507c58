// The part of the invariants that is about tests over time and words that every finding is decided, read off the entries.
import type { Definitions, PlacedTest } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { next } from '../../../src/core/job/next.ts'
import { readStamp } from '../../../src/core/lib/instant.ts'
import type { Moment } from './invariants.ts'
import { countedNow } from './invariants-quality.ts'

/** While nobody works nothing is put right, as nothing is asked. */
const PAUSED = ['stop-cause', 'stopped', 'sign-on', 'tag', 'closed']

// --- What is read at the end counts only behind a stand that really lasted, and that began after the start was read. ----

export function testAmiss({ defs, entries, state }: Moment): string[] {
  if (state.left || PAUSED.includes(next(defs, state).kind)) return []
  return defs.overTime.flatMap((test) => endsAmiss(defs, entries, test))
}

function endsAmiss(defs: Definitions, entries: readonly Entry[], test: PlacedTest): string[] {
  const counted = [...countedNow(entries)]
  const seqs = (steps: readonly string[]) =>
    counted.filter(([, reading]) => steps.includes(reading.step)).map(([seq]) => seq)
  const start = Math.max(...seqs(test.start), Number.NEGATIVE_INFINITY)
  const ends = seqs(test.end)
  const isOff = test.until !== null && standsAsDone(entries, test.until)
  const amiss = isOff && ends.length === 0 ? [`${test.until} is done, and nothing was read before it`] : []
  return [
    ...amiss,
    ...ends.flatMap((end) => {
      if (!Number.isFinite(start)) return [`${test.id}: an end counts and no start does`]
      return stoodBetween(defs, entries, test, start, end)
        ? []
        : [`${test.id}: nothing stood before entry ${end}`]
    }),
  ]
}

function stoodBetween(
  defs: Definitions,
  entries: readonly Entry[],
  { stand }: PlacedTest,
  start: number,
  end: number,
): boolean {
  const gate = defs.steps.find(({ id }) => id === stand)?.step
  const lines = gate?.kind === 'gate' ? gate.evidence.filter((one) => one.kind === 'wait') : []
  const between = entries.filter(({ seq }) => seq > start && seq < end)
  const msOf = (e: Entry | undefined) => readStamp(e?.at ?? '')?.ms ?? Number.NaN
  return lines.every(({ id, lasts }) => {
    const given = between.findLast((e) => e.type === 'evidence.given' && e.step === stand && e.item === id)
    const begun = between.findLast(
      (e) => e.type === 'wait.begun' && e.step === stand && e.item === id && e.seq < (given?.seq ?? 0),
    )
    return msOf(given) - msOf(begun) >= lasts.si * 1000
  })
}

function standsAsDone(entries: readonly Entry[], id: string): boolean {
  const last = entries.findLastIndex(
    (e) =>
      (e.type === 'step.confirmed' || e.type === 'step.done' || e.type === 'finding.observed') &&
      e.step === id,
  )
  const undone = (e: Entry) =>
    (e.type === 'step.reopened' && e.step === id) || ('voids' in e && e.voids.includes(id))
  return last >= 0 && !entries.slice(last + 1).some(undone)
}

// --- A gate that asks for it opens only where a lead has decided on everything that did not conform, and holds nothing. ----

export function findingPassedBy({ defs, entries }: Moment): string[] {
  const asking = defs.steps.flatMap(({ id, step }) =>
    step.kind === 'gate' && step.evidence.some((one) => one.kind === 'words' && one.findings === 'decided')
      ? [id]
      : [],
  )
  if (asking.length === 0) return []
  return entries.flatMap((e, n) =>
    e.type === 'gate.opened' && asking.includes(e.step)
      ? undecidedIn(defs, entries.slice(0, n)).map((id) => `${e.step} opens, and nobody decided on ${id}`)
      : [],
  )
}

function undecidedIn(defs: Definitions, entries: readonly Entry[]): string[] {
  const found = new Set<string>()
  const decided = new Map<string, { about: string; counts: boolean }>()
  for (const e of entries) {
    if ('voids' in e)
      for (const id of e.voids) {
        found.delete(id)
        decided.delete(id)
      }
    if (e.type === 'step.reopened') found.delete(e.step)
    const word = conditionOf(e)
    if (word !== null && 'step' in e && e.step !== null) {
      found.delete(e.step)
      for (const [id, { about }] of decided) if (about === e.step) decided.delete(id)
      if (conformsNot(defs, e.step, word)) found.add(e.step)
    }
    if (e.type === 'disposition.set') {
      for (const [id, { about }] of decided) if (about === e.about) decided.delete(id)
      decided.set(e.step, { about: e.about, counts: e.choice !== 'hold' && e.radio === undefined })
    }
    if (e.type === 'disposition.countersigned') {
      const one = decided.get(e.step)
      if (e.agrees && one !== undefined) decided.set(e.step, { ...one, counts: true })
      else decided.delete(e.step)
    }
  }
  return [...found].filter((id) => ![...decided.values()].some(({ about, counts }) => about === id && counts))
}

function conditionOf(e: Entry): string | null {
  if (e.type === 'finding.observed' || e.type === 'finding.corrected') return e.condition
  return e.type === 'verdict.given' ? e.verdict.result.verdict : null
}

function conformsNot(defs: Definitions, id: string, word: string): boolean {
  const step = defs.steps.find((one) => one.id === id)?.step
  if (step?.kind === 'judge') return word !== 'ACCEPT'
  return step?.kind === 'observe' && step.conditions.some((c) => c.id === word && c.finding === true)
}
