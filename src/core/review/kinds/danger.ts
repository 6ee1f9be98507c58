// What somebody put down of harm: of gas, of something that turned, of a lock or a block that was off. Words close no hold point, so
// whether a STOP was called on it is told with them.
import { tellsOfHarm } from '../../talk/safety-asked.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, entriesOf, type Look, namedById, when } from '../look.ts'

const WORK = ['reading.taken', 'reading.doubted', 'finding.observed', 'step.confirmed'] as const

/** What was keyed of the work after the note, until everybody was called out or the hold points fell. */
function workedAfter(look: Look, from: number, to: number) {
  const fell = entriesOf(look, 'gate.closed').find(({ seq }) => seq > from)
  const end = Math.min(to, fell?.seq ?? Number.POSITIVE_INFINITY)
  return WORK.flatMap((type) => entriesOf(look, type))
    .filter(({ seq }) => seq > from && seq < end)
    .sort((a, b) => a.seq - b.seq)
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
      const worked = workedAfter(look, entry.seq, stop?.seq ?? Number.POSITIVE_INFINITY)
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
