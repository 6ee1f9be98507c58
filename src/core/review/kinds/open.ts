// What somebody still has to do: words by radio, inspection points, things placed, readings that wait, the job itself.
import { asKind } from '../../job/definitions.ts'
import { type GateStep, gateState, gatesOf } from '../../job/gate.ts'
import { applicability, isComplete, next } from '../../job/next.ts'
import { openWords } from '../../job/open-words.ts'
import { outOnSheet } from '../../job/paper-register.ts'
import { pendingPoint } from '../../job/point.ts'
import { openThings, thingText } from '../../job/register.ts'
import { list } from '../../lib/wording.ts'
import { takenUp } from '../../talk/desk-words.ts'
import { placeName, placeNumber } from '../../talk/names.ts'
import { POINT_NAMES } from '../../talk/points.ts'
import { wordLine } from '../../talk/radio-words.ts'
import { toClose } from '../../talk/to-close.ts'
import type { Found } from '../exception.ts'
import { byWhom, count, entriesOf, type Look, named, namedById, sentence } from '../look.ts'

export function stillOpen(look: Look): Found[] {
  return [...notClosed(look), ...radio(look), ...points(look), ...waiting(look), ...things(look)]
}

/** Which word does it; a closed job takes none of them any more. */
function bySaying(look: Look, word: string): string {
  return look.state.closed === null
    ? `It is done where the job is taken up (barover resume), with: ${word}.`
    : 'The job is closed and takes it no more: put it right on paper beside this record.'
}

function notClosed(look: Look): Found[] {
  const { defs, state } = look
  if (state.closed !== null) return []
  const asked = defs.steps.filter((s) => applicability(defs, state, s) !== 'skip')
  const done = asked.filter((s) => isComplete(state, s)).length
  // Behind a break in the log its end may stand.
  const isCut = (look.beside.log.broken ?? null) !== null
  const prompt = next(defs, state)
  const at = 'step' in prompt ? prompt.step : 'before' in prompt ? prompt.before : null
  const inside = mayBeIn(look)
  const people =
    inside.length === 0
      ? ''
      : `, PEOPLE MAY BE IN at ${inside.length > MOST_NAMED ? count(inside.length, 'hold point') : `hold point ${list(inside.map(({ number }) => String(number)))}`}`
  return [
    {
      kind: 'open',
      what: `${isCut ? 'NOT KNOWN whether it closed' : 'NOT CLOSED'}${people}: ${done} of ${count(asked.length, 'step')} done${at === null ? '' : `, at ${named(at)}`}`,
      sentences: [
        `Last entry ${byWhom(look, look.entries[look.entries.length - 1] ?? { at: state.lastAt })}.`,
        ...stillComplete(look, inside),
        ...toClose(defs, takenUp(state)),
      ],
      entries: [state.seq],
      open: true,
      grave: 0,
    },
  ]
}

/** More hold points than these are only counted in the line of the list. */
const MOST_NAMED = 3

/** Hold points that people may be behind by the record: it fell with them in, or it was complete and nobody keyed them out. */
function mayBeIn({ defs, state }: Look): GateStep[] {
  if (state.paper !== null) return []
  const then = takenUp(state)
  return gatesOf(defs).filter(({ id }) => gateState(then, id).mustClear)
}

/** That they have not fallen yet says of nobody that they are out. */
function stillComplete({ state }: Look, inside: readonly GateStep[]): string[] {
  const gates = inside.filter(({ id }) => !gateState(state, id).mustClear)
  const [first] = gates
  if (first === undefined) return []
  const which =
    gates.length === 1
      ? `hold point ${named(first)}: it was`
      : `hold points ${list(gates.map(({ number }) => String(number)))}: they were`
  return [
    `PEOPLE MAY BE IN behind ${which} complete at the last entry, and nobody keyed that they came out. That is asked first where the job is taken up.`,
  ]
}

function radio(look: Look): Found[] {
  const { defs, state } = look
  const open = openWords(state).map((word): Found => {
    const seq = state.dispositions[word.step]?.seq
    return {
      kind: 'open',
      what: `NOT COUNTERSIGNED: ${wordLine(defs, state, word)}`,
      sentences: [`${word.lead} has not signed for it.`, bySaying(look, 'countersign')],
      entries: seq === undefined ? [] : [seq],
      open: true,
      grave: 1,
    }
  })
  const denied = entriesOf(look, 'disposition.countersigned').flatMap((e): Found[] => {
    if (e.agrees) return []
    const spoken = entriesOf(look, 'disposition.set').filter((d) => d.step === e.step && d.seq < e.seq)
    return [
      {
        kind: 'denied',
        what: `${e.person} says it was NOT said by radio: ${namedById(look, e.step)}`,
        sentences: [
          'It is void with what hung on it.',
          ...spoken.slice(-1).map((d) => sentence(`It had been keyed as: ${d.why}`)),
        ],
        entries: [...spoken.slice(-1).map((d) => d.seq), e.seq],
        open: false,
        grave: 1,
      },
    ]
  })
  return [...open, ...denied]
}

function points(look: Look): Found[] {
  const { defs, state } = look
  const pending = defs.steps.flatMap((placed): Found[] => {
    const point = pendingPoint(state, placed)
    // What stands on a sheet for it is told in paper.ts.
    if (state.paper !== null) return []
    if (point === null || !isComplete(state, placed) || applicability(defs, state, placed) !== 'do') return []
    return [
      {
        kind: 'open',
        what: `${named(placed)}: its ${POINT_NAMES[point.kind].toLowerCase()} is NOT SIGNED`,
        sentences: [bySaying(look, 'the initials of who may sign, where it is asked')],
        entries: [],
        open: true,
        grave: 2,
      },
    ]
  })
  const unattended = entriesOf(look, 'point.not-attended').map(
    (e): Found => ({
      kind: 'open',
      what: `${namedById(look, e.step)}: witness point NOT ATTENDED, ${byWhom(look, e)}`,
      sentences: [sentence(`Notice was given to ${e.whom}`)],
      entries: [e.notice, e.seq],
      open: false,
      grave: 4,
    }),
  )
  return [...pending, ...unattended]
}

function waiting(look: Look): Found[] {
  const { defs, state } = look
  return [state.doubt, state.late].flatMap((one): Found[] => {
    if (one === null) return []
    const placed = asKind(defs.steps.find((s) => s.id === one.step) ?? missing(one.step), 'read')
    return [
      {
        kind: 'open',
        what: `${placeNumber(defs, placed.id, one.place)} ${placeName(defs, placed.id, one.place)}: ${one.typed.trim()} waits and counts for nothing`,
        sentences: [bySaying(look, 'an answer, where it is asked')],
        entries: [one.seq],
        open: true,
        grave: 3,
      },
    ]
  })
}

function missing(id: string): never {
  throw new Error(`no step ${id} in the procedure`)
}

function things(look: Look): Found[] {
  const { defs, state } = look
  const leaves = defs.procedure.leaves ?? []
  const handed = entriesOf(look, 'things.handed-on')
  return openThings(state).map((thing) => {
    const isMeant = thing.place !== null && leaves.includes(thing.place)
    const how =
      thing.handedOnBy !== null
        ? `handed on by ${thing.handedOnBy}`
        : isMeant
          ? 'left in place by this procedure'
          : 'NOT ACCOUNTED FOR'
    return {
      kind: 'open',
      what: `Placed: ${thingText(thing)}; ${how}`,
      sentences: [
        `Placed by ${thing.by ?? 'nobody signed on'}.`,
        ...(thing.seenBy === null
          ? []
          : [`One of two has signed that it is accounted for: ${thing.seenBy}.`]),
        ...(state.paper === null ? [] : [outOnSheet(state.paper, thing)]),
        ...(thing.handedOnBy !== null || isMeant || state.paper !== null ? [] : [bySaying(look, 'taken')]),
      ],
      entries: [thing.seq, ...handed.flatMap((e) => (e.of.includes(thing.seq) ? [e.seq] : []))],
      open: !isMeant && thing.handedOnBy === null,
      grave: isMeant ? 6 : thing.handedOnBy === null ? 2 : 5,
    }
  })
}
