// What leaves it doubtful at which machine the work was, or what else was open there.
import { otherTitle } from '../../job/elsewhere-words.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look } from '../look.ts'

export function machineDoubts(look: Look): Found[] {
  const plates = entriesOf(look, 'machine.mismatched').map(
    (e): Found => ({
      kind: 'machine',
      what: `WRONG PLATE read, ${byWhom(look, e)}: ${e.typed.trim()}`,
      sentences: [`This record is of ${look.defs.machine.machine}.`],
      entries: [e.seq],
      open: false,
    }),
  )
  const gone = entriesOf(look, 'elsewhere.gone').map(
    (e): Found => ({
      kind: 'machine',
      what: `Another job here vanished before it had ended, ${byWhom(look, e)}`,
      sentences: [`It was ${e.record} job ${e.job}: where is its log?`],
      entries: [e.seq],
      open: false,
    }),
  )
  const unread = entriesOf(look, 'elsewhere.seen').flatMap((e): Found[] =>
    e.unread === null
      ? []
      : [
          {
            kind: 'machine',
            what: `Another job here could not be read, ${byWhom(look, e)}: ${otherTitle(look.state, e)}`,
            sentences: [`${e.unread}.`, 'What it took off was unknown here.'],
            entries: [e.seq],
            open: false,
          },
        ],
  )
  return [...plates, ...gone, ...unread]
}
