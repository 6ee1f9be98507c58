// Diagnosing: what was found by eye, and what was named as hidden on the machine.
import { CHANGES_IT } from '../job/as-left.ts'
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { allOf, labelsOf } from '../job/seen.ts'
import { hiddenMachine, truthOf } from './ask.ts'
import { faultById } from './faults.ts'
import { FROM_WHERE, isForm } from './form-told.ts'
import { alarmLesson, faultAt, MISSING, SAID, unsafe } from './lesson-gate.ts'
import { type Lesson, right, type Scene, wrong } from './marks.ts'
import type { Truth } from './tell.ts'
import { DECIDED } from './tell-pocket.ts'

type Of<T extends Entry['type']> = Extract<Entry, { type: T }>

/** The answer is on record, and is not looked at again: only the next one can be. */
const UNSEEN = 'Wrong: nobody looked. At the next one the word look comes first, then the answer.'
const BY_LUCK = 'What was keyed is what is there, by luck.'

type Seen = Extract<Truth, { kind: 'eye' }>

const isUnsafeSaid = ({ unsafe: hurts }: Seen, entry: Of<'finding.observed' | 'finding.corrected'>) =>
  allOf(entry).some((one) => hurts?.includes(one))

export function findingLesson(scene: Scene, entry: Of<'finding.observed'>): Lesson | null {
  const { defs, practice, asked } = scene
  if (asked?.alarm === true) return alarmLesson(scene)
  const placed = stepById(defs, entry.step)
  const truth = truthOf(defs, practice, placed, {}, Number.NaN)
  if (truth?.kind !== 'eye') return null
  const fault = faultAt(scene, placed.step.id)
  const there = `It is: ${labelsOf(defs, entry.step, truth.conditions)}. ${truth.seen}`
  // Who did not look is no safer than who looked and said it all the same.
  if (isUnsafeSaid(truth, entry)) return unsafe(asked === null ? MISSING : SAID, fault, there)
  if (asked === null && !DECIDED.includes(placed.step.id))
    return marked(wrong('diagnosing'), UNSEEN, same(allOf(entry), truth.conditions) ? BY_LUCK : there)
  const taught = fault === null ? [] : [fault.teaches, `Source: ${fault.source}.`]
  if (same(allOf(entry), truth.conditions))
    return {
      marks: [right('diagnosing')],
      isUnsafe: false,
      says: ['Right: that is what is there.', ...taught],
    }
  return {
    marks: [wrong('diagnosing')],
    isUnsafe: false,
    says: [
      `Wrong. It is: ${labelsOf(defs, entry.step, truth.conditions)}.`,
      `What was there: ${truth.seen}`,
      ...taught,
    ],
  }
}

/** What is put right afterwards is marked no more; but nobody is let past by it on what would hurt them. */
export function correctedLesson(scene: Scene, entry: Of<'finding.corrected'>): Lesson | null {
  const { defs, practice } = scene
  const placed = stepById(defs, entry.step)
  const truth = truthOf(defs, practice, placed, {}, Number.NaN)
  if (truth?.kind !== 'eye') return null
  if (!isUnsafeSaid(truth, entry))
    return same(allOf(entry), truth.conditions)
      ? {
          marks: [],
          isUnsafe: false,
          isPutRight: true,
          says: ['Now it stands as it is there. The mark stays lost: what is there was told.'],
        }
      : null
  const there = `It is: ${labelsOf(defs, entry.step, truth.conditions)}. ${truth.seen}`
  return unsafe(SAID, faultAt(scene, placed.step.id), there)
}

/** A step that was seen to be so, or said not to be; null where nothing is to be seen at it. */
export function confirmLesson(scene: Scene, entry: Of<'step.confirmed' | 'step.objected'>): Lesson | null {
  const { defs, practice, asked } = scene
  if (asked?.alarm === true) return alarmLesson(scene)
  const placed = stepById(defs, entry.step)
  const truth = truthOf(defs, practice, placed, {}, Number.NaN)
  if (truth?.kind !== 'done') return null
  const fault = faultAt(scene, placed.step.id)
  const taught = fault === null ? [] : [fault.teaches, `Source: ${fault.source}.`]
  const isSaidSo = entry.type === 'step.confirmed'
  if (isSaidSo && !truth.isSo && fault?.shows === 'stop')
    return unsafe(asked === null ? MISSING : SAID, fault, `What was there: ${truth.seen}`)
  if (asked === null)
    return marked(
      wrong('diagnosing'),
      UNSEEN,
      isSaidSo === truth.isSo ? BY_LUCK : `What was there: ${truth.seen}`,
    )
  if (isSaidSo === truth.isSo) return marked(right('diagnosing'), 'Right: that is what is there.', ...taught)
  return marked(wrong('diagnosing'), `Wrong. What was there: ${truth.seen}`, ...taught)
}

/** What a lead decides is not graded; but a record that something was put right where nothing was is no decision. */
export function decisionLesson({ defs }: Scene, { about, choice }: Of<'disposition.set'>): Lesson {
  const isFinding = stepById(defs, about).step.kind === 'observe'
  return isFinding && CHANGES_IT.includes(choice)
    ? marked(wrong('recording'), UNTOUCHED)
    : { marks: [], isUnsafe: false, says: ['Not marked: what is done about it is for a lead to decide.'] }
}

const UNTOUCHED =
  'Wrong: the record says now that it was put right in this job, and nothing was done to it here. It stands as it was found: hold, or a concession, says so.'

function marked(mark: Lesson['marks'][number], ...says: readonly string[]): Lesson {
  return { marks: [mark], isUnsafe: false, says }
}

export function namingLesson({ defs, practice }: Scene, entry: Of<'practice.named'>): Lesson {
  const { faults } = hiddenMachine(defs, practice)
  const there = faults.map(faultById)
  const missed = there.filter(({ id }) => !entry.faults.includes(id))
  const extra = entry.faults.filter((id) => !faults.includes(id)).map(faultById)
  const found = there.filter(({ id }) => entry.faults.includes(id))
  const isRight = missed.length === 0 && extra.length === 0
  return {
    marks: [isRight ? right('diagnosing') : wrong('diagnosing')],
    isUnsafe: false,
    says: [
      isRight
        ? there.length === 0
          ? 'Right: nothing was hidden on this machine.'
          : 'Right: that is all that was hidden.'
        : found.length === 0
          ? 'Wrong.'
          : 'Wrong, though not all of it.',
      ...(isRight ? [] : found.map(({ name }) => `Right: ${name}.`)),
      ...missed.flatMap(({ name, teaches, source }) => [
        `Not named: ${name}.`,
        teaches,
        `Source: ${source}.`,
      ]),
      ...extra.map(({ name }) => `Not hidden on this machine: ${name}.`),
      ...(extra.some(isForm) ? [FROM_WHERE] : []),
    ],
  }
}

function same(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((one) => b.includes(one))
}
