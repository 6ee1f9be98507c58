// Parts that a lead had worked on or renewed, and of which no verdict tells how they went back: nobody measured them again, or
// they were read again and held against no limit.
import { type Course, coursesOf, leftBehind, withoutVerdict } from '../../job/as-left.ts'
import type { Taken } from '../../job/changes.ts'
import type { PlacedStep } from '../../job/definitions.ts'
import { placeResult } from '../../job/places.ts'
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
    const again = readingsOf(look, course)
    return {
      kind: 'unmeasured',
      what: `${again.length === 0 ? 'NOT MEASURED AGAIN as left' : READ_AGAIN}: ${named(judge)}, found ${found}${decided === null ? '' : `, ${doneText(decided, again.length > 0)}`}`,
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
function readingsOf({ defs, state }: Look, { readAgain }: Course): ReadAgain[] {
  return readAgain.flatMap((change): ReadAgain[] => {
    const { of, left } = change
    if (left === null) return []
    const { readings } = placeResult(left.step, left.place, state)
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

/** `closed with REPLACE as found, MONITOR as left, and 1 not measured again: item 9`; the log only counts them, an older one all alike. */
export function unmeasuredNamed(
  standing: string,
  asLeft: string | null,
  found: readonly Exception[],
): string {
  const them = found.filter(({ kind }) => kind === 'unmeasured')
  if (them.length === 0 || asLeft === null) return standing
  const [word = ''] = /^[A-Z]+/.exec(asLeft) ?? []
  const isAlone = word === '' && them.length === 1
  const told = [false, true].flatMap((wasRead) => {
    const items = them.filter(({ what }) => what.startsWith(READ_AGAIN) === wasRead)
    if (items.length === 0) return []
    const count = isAlone ? '' : `${items.length} `
    const numbers = list(items.map(({ number }) => String(number)))
    return [`${count}${withoutVerdict(wasRead)}: ${items.length === 1 ? 'item' : 'items'} ${numbers}`]
  })
  const end = told.join('; ')
  return standing.replace(leftBehind(asLeft), word === '' ? `as left ${end}` : `${word} as left, and ${end}`)
}
