// Parts that a lead had worked on or renewed, and of which no verdict tells how they went back: nobody measured them again, or
// they were read again and held against no limit.
import { type Course, coursesOf } from '../../job/as-left.ts'
import { type Change, changesOf, type Taken } from '../../job/changes.ts'
import type { PlacedStep } from '../../job/definitions.ts'
import { placeResult } from '../../job/places.ts'
import { refersTo } from '../../job/values.ts'
import { list } from '../../lib/wording.ts'
import { doneText } from '../../sheet/closing-rows.ts'
import { changeFigures } from '../../talk/changes.ts'
import { placeShort } from '../../talk/names.ts'
import type { Exception, Found } from '../exception.ts'
import { byWhom, type Look, named } from '../look.ts'

const READ_AGAIN = 'READ AGAIN as left, NOT JUDGED'

export function unmeasured(look: Look): Found[] {
  if (look.state.closed === null) return []
  return unmeasuredIn(look).map((course) => {
    const { judge, found, decided } = course
    const again = readAgain(look, course)
    return {
      kind: 'unmeasured',
      what: `${again.length === 0 ? 'NOT MEASURED AGAIN as left' : READ_AGAIN}: ${named(judge)}, found ${found}${decided === null ? '' : `, ${doneText(decided)}`}`,
      sentences: [
        'It was to be worked on or renewed, and no later verdict looks at all that this one was held against.',
        ...(again.length === 0
          ? ['How it went back is on no record: no verdict as left counts it in.']
          : [
              `As it went back it reads: ${again.map(({ text }) => text).join('; ')}. No verdict counts that in.`,
              ...signedWith(look, again).map(({ says }) => says),
            ]),
      ],
      entries: [
        ...[look.state.verdicts[judge.id]?.seq, decided?.seq].flatMap((seq) => seq ?? []),
        ...again.flatMap(({ seqs }) => seqs),
        ...signedWith(look, again).map(({ seq }) => seq),
      ],
      open: false,
    }
  })
}

function unmeasuredIn({ defs, state }: Look): Course[] {
  return coursesOf(defs, state).filter(({ again, left }) => again === null && left === null)
}

interface ReadAgain {
  readonly left: Taken
  /** `ring end gap, LEAST: 7.000 mm`. */
  readonly text: string
  readonly seqs: readonly number[]
}

/** What was read as left, after the decision, of the things that its judge looked at. */
function readAgain({ defs, state }: Look, { judge, decided }: Course): ReadAgain[] {
  const looked = new Set(refersTo(defs, judge))
  const changes = changesOf(defs, state)
  const things = new Set(
    changes.flatMap(({ of, found }) => (found !== null && looked.has(found.step.id) ? [of] : [])),
  )
  return changes.flatMap((change: Change): ReadAgain[] => {
    const { of, left } = change
    if (left === null || looked.has(left.step.id) || !things.has(of)) return []
    const { readings } = placeResult(left.step, left.place, state)
    if (readings.some(({ seq }) => seq < (decided?.seq ?? 0))) return []
    const figures = changeFigures(defs, change)
    const text = `${of}, ${placeShort(defs, left.step.id, left.place.key)}: ${figures?.left ?? '?'} ${figures?.unit ?? ''}`
    return [{ left, text: text.trimEnd(), seqs: readings.map(({ seq }) => seq) }]
  })
}

/** The step right behind those readings whose inspection point somebody signed: no verdict, and a word. Behind other work it is of that. */
function signedWith(look: Look, again: readonly ReadAgain[]): { says: string; seq: number }[] {
  const { defs, state } = look
  const signed = defs.steps.flatMap((placed) => {
    const point = state.points[placed.id]
    const isBehind = again.some(({ left }) => isRightBehind(look, left.step, placed))
    const entry = look.entries[point?.seq ?? -1]
    if (!isBehind || point === undefined || point.void || point.how !== 'signed' || entry === undefined)
      return []
    return [{ says: `${named(placed)}: signed by ${byWhom(look, entry)}.`, seq: point.seq }]
  })
  return signed.slice(0, 1)
}

function isRightBehind({ defs }: Look, read: PlacedStep, placed: PlacedStep): boolean {
  return (
    read.scope === placed.scope &&
    read.number < placed.number &&
    !defs.steps.some(
      ({ number, step: { kind } }) =>
        number > read.number && number < placed.number && (kind === 'read' || kind === 'tell'),
    )
  )
}

/** `closed with REPLACE as found, MONITOR as left, without 1 not measured again: item 9`; the log only counts them. */
export function unmeasuredNamed(standing: string, found: readonly Exception[]): string {
  const them = found.filter(({ kind }) => kind === 'unmeasured')
  if (them.length === 0) return standing
  const items = `${them.length === 1 ? 'item' : 'items'} ${list(them.map(({ number }) => String(number)))}`
  // The log counts what no verdict was given of; what was read again all the same is called so.
  const none = them.some(({ what }) => what.startsWith(READ_AGAIN))
    ? 'not judged again'
    : 'not measured again'
  return standing
    .replace(/, and \d+ not measured again as left/, ` as left, and ${them.length} ${none}: ${items}`)
    .replace(/not measured again as left/, `${none} as left: ${items}`)
}
