// What somebody put down of harm: of gas, of something that turned, of a lock or a block that was off. Words close no hold point, so
// whether a STOP was called on it is told with them.
import type { Entry } from '../../job/entries.ts'
import { tellsOfHarm } from '../../talk/safety-asked.ts'
import { WORK } from '../behind.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, entriesOf, type Look, namedById, when } from '../look.ts'
import { namedAgain, partAgain } from '../named-again.ts'

type Answered = Extract<
  Entry,
  { type: 'reading.taken' | 'reading.doubted' | 'finding.observed' | 'step.confirmed' | 'step.done' }
>

/** An objection is words about the work, and none of it. */
const isWork = (entry: Entry): entry is Answered =>
  entry.type !== 'step.objected' && (WORK.includes(entry.type) || entry.type === 'reading.doubted')

/** What was keyed of the work after an entry, in the order of the log, until everybody was called out or a hold point fell. */
export function workedAfter(entries: readonly Entry[], from: number): readonly Answered[] {
  const end = entries.find(
    ({ seq, type }) =>
      seq > from && (type === 'stop.raised' || type === 'gate.closed' || type === 'people.clear'),
  )
  return entries
    .filter(isWork)
    .filter(({ seq }) => seq > from && seq < (end?.seq ?? Number.POSITIVE_INFINITY))
}

const wentOn = (often: number) =>
  often === 1
    ? 'WORK WENT ON after it, before anybody was called out: one answer, at'
    : `WORK WENT ON after it, before anybody was called out: ${often} answers, the first at`

export function dangers(look: Look): Found[] {
  return entriesOf(look, 'note.written')
    .filter(({ text }) => tellsOfHarm(text))
    .map((entry): Found => {
      const stop = entriesOf(look, 'stop.raised').find(({ seq }) => seq > entry.seq)
      const worked = workedAfter(look.entries, entry.seq)
      const [first] = worked
      return {
        kind: 'danger',
        what: `TOLD OF DANGER, ${byWhom(look, entry)}: ${clause(entry.text)}`,
        sentences: [
          stop === undefined
            ? 'No STOP was called after it: whatever hold point was complete stayed so.'
            : `STOP was called after it, ${byWhom(look, stop)}${stop.step === null ? '' : `, at ${namedById(look, stop.step)}`}.`,
          ...(first === undefined
            ? []
            : [`${wentOn(worked.length)} ${when(look, first)}, ${namedById(look, first.step)}.`]),
          ...namedAgain(look, entry.text, [entry]),
          ...partAgain(look, entry),
        ],
        entries: [
          entry.seq,
          ...(first === undefined ? [] : [first.seq]),
          ...(stop === undefined ? [] : [stop.seq]),
        ],
        open: false,
        grave: stop === undefined ? 0 : 1,
      }
    })
}
