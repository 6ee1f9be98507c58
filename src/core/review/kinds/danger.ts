// What somebody put down of harm: of gas, of something that turned, of a lock or a block that was off. Words close no hold point, so
// whether a STOP was called on it is told with them.
import { tellsOfHarm } from '../../talk/safety-asked.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, entriesOf, type Look, namedById } from '../look.ts'

export function dangers(look: Look): Found[] {
  return entriesOf(look, 'note.written')
    .filter(({ text }) => tellsOfHarm(text))
    .map((entry): Found => {
      const stop = entriesOf(look, 'stop.raised').find(({ seq }) => seq > entry.seq)
      return {
        kind: 'danger',
        what: `TOLD OF DANGER, ${byWhom(look, entry)}: ${clause(entry.text)}`,
        sentences: [
          stop === undefined
            ? 'No STOP was called after it: whatever hold point was complete stayed so.'
            : `STOP was called after it, ${byWhom(look, stop)}${stop.step === null ? '' : `, at ${namedById(look, stop.step)}`}.`,
        ],
        entries: [entry.seq, ...(stop === undefined ? [] : [stop.seq])],
        open: false,
        grave: stop === undefined ? 0 : 1,
      }
    })
}
