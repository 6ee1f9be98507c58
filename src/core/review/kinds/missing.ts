// What a closed job lacks: steps not done, places without a figure, steps left out because nobody knew whether they were needed.
import { asKind, type PlacedStep } from '../../job/definitions.ts'
import { applicability, isComplete } from '../../job/next.ts'
import { ruleWords } from '../../job/rule-words.ts'
import { unsettledPlaces } from '../../job/unsettled.ts'
import { valuesForRules } from '../../job/values.ts'
import { isVoidSince } from '../../job/voids.ts'
import { list } from '../../lib/wording.ts'
import { alikeWithin } from '../../talk/alike-within.ts'
import { isLeftOut } from '../../talk/left-out.ts'
import { placeName, placeNumber } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { count, type Look, named } from '../look.ts'

export function missing(look: Look): Found[] {
  return [...notDone(look), ...unsettled(look), ...leftOutUnknown(look)]
}

/** Runs of steps beside each other are one; of a job that is open the next ones are not missing yet. */
function notDone(look: Look): Found[] {
  const { defs, state } = look
  if (state.closed === null) return []
  const runs: { readonly isVoid: boolean; readonly run: PlacedStep[] }[] = []
  let last = -1
  const asked = defs.steps.filter((placed) => applicability(defs, state, placed) !== 'skip')
  for (const [i, placed] of asked.entries()) {
    // Of a sheet a hold point is told line by line (paper.ts): none of it is ever complete.
    if (isComplete(state, placed) || (state.paper !== null && placed.step.kind === 'gate')) continue
    const isVoid = isVoidSince(state, placed)
    const before = runs[runs.length - 1]
    if (last === i - 1 && before?.isVoid === isVoid) before.run.push(placed)
    else runs.push({ isVoid, run: [placed] })
    last = i
  }
  return runs.map(({ isVoid, run }) => {
    const [first, end] = [run[0], run[run.length - 1]]
    const where =
      first === undefined || end === undefined
        ? ''
        : first === end
          ? named(first)
          : `${first.number} to ${end.number}, from ${first.step.title} to ${end.step.title}`
    return {
      kind: 'missing',
      what: `${isVoid ? 'DONE, AND VOID SINCE' : 'NOT DONE'}: ${where}`,
      sentences: run.map((placed) => `${named(placed)}: ${whyNot(look, placed)}.`),
      // What a step lost its outcome by stands in the entries of that; here is only what was never done.
      entries: [],
      open: true,
      grave: 0,
    }
  })
}

function whyNot({ defs, state }: Look, placed: PlacedStep): string {
  if (applicability(defs, state, placed) === 'hold')
    return `whether it is needed cannot be told: ${placed.rule === null ? 'its part hangs on what is not known' : `only if ${ruleWords(defs, placed)}`}`
  return isVoidSince(state, placed) ? 'what it came to is void, and it was not done again' : 'not done'
}

function unsettled(look: Look): Found[] {
  const { defs, state } = look
  return unsettledPlaces(defs, state).map(({ step, place, count: taken }) => {
    const { within } = asKind(defs.steps.find((s) => s.id === step) ?? none(step), 'read').step.repeats
    return {
      kind: 'missing',
      what: `HOLD: ${placeNumber(defs, step, place.key)} ${placeName(defs, step, place.key)}, ${count(taken, 'reading')} never agreed`,
      sentences: [
        `They were to lie within ${alikeWithin(defs, within)} of each other, so this place has no figure.`,
      ],
      entries: (state.readings[place.key] ?? []).map((r) => r.seq),
      open: true,
      grave: 1,
    }
  })
}

function none(id: string): never {
  throw new Error(`no step ${id} in the procedure`)
}

/**
 * A rule that came to false left a step out for a reason, and so did one about a step that was itself left out. One that wanted
 * to know what should have been told, and was not, left it out for want of it.
 */
function leftOutUnknown(look: Look): Found[] {
  const { defs, state } = look
  const by = new Map<PlacedStep, PlacedStep[]>()
  for (const placed of defs.steps) {
    if (!isLeftOut(defs, state, placed)) continue
    const rule = [...placed.inside, placed].find((one) => applicability(defs, state, one) === 'skip')
    if (rule !== undefined && untold(look, rule).length > 0) by.set(rule, [...(by.get(rule) ?? []), placed])
  }
  return [...by].map(([rule, steps]) => {
    const [first, end] = [steps[0]?.number, steps[steps.length - 1]?.number]
    return {
      kind: 'missing',
      what: `Left out, not known whether needed: ${first === end ? first : `${first} to ${end}`} ${rule.step.title}`,
      sentences: [
        `It is done only if ${ruleWords(defs, rule)}.`,
        `Not told: ${list(untold(look, rule).map((name) => toldOf(look, rule, name)))}.`,
      ],
      entries: [],
      open: false,
      grave: 2,
    }
  })
}

/** By its step where it is the outcome of one. */
function toldOf({ defs }: Look, rule: PlacedStep, name: string): string {
  const step = defs.steps.find(({ id }) => id === rule.scope + name)
  return step === undefined ? name.replaceAll('_', ' ') : named(step)
}

/** Names of its rule that should have a value and have none; nothing where the rule is known. */
function untold({ defs, state }: Look, placed: PlacedStep): string[] {
  const isDone = (other: PlacedStep) => applicability(defs, state, other) === 'do'
  const values = valuesForRules(defs, state, placed, isDone)
  if (placed.rule === null || placed.rule.evaluate(values) !== 'unknown') return []
  return placed.rule.names.filter((name) => {
    const step = defs.steps.find((one) => one.id === placed.scope + name)
    return !values.has(name) && (step === undefined || applicability(defs, state, step) !== 'skip')
  })
}
