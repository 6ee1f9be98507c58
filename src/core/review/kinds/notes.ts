// What was noted into the log in somebody's own words: those of a lead first. It is no exception by itself; whoever was not there
// reads it nowhere else. What tells of harm stands further up, in kinds/danger.ts.
import { personById } from '../../job/definitions.ts'
import { tellsOfHarm } from '../../talk/safety-asked.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, entriesOf, type Look } from '../look.ts'
import { namedAgain } from '../named-again.ts'

export function notes(look: Look): Found[] {
  const notes = entriesOf(look, 'note.written').filter(({ text }) => !tellsOfHarm(text))
  return notes.map((entry): Found => {
    const isLead = entry.by !== undefined && personById(look.defs, entry.by)?.role === 'lead'
    return {
      kind: 'note',
      what: `${isLead ? 'A lead’s note' : 'Note'}, ${byWhom(look, entry)}: ${clause(entry.text)}`,
      sentences: namedAgain(look, entry.text, [entry]),
      entries: [entry.seq],
      open: false,
      grave: isLead ? 0 : 1,
    }
  })
}
