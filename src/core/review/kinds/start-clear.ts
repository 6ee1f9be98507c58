// A start behind hold points that had fallen and where nobody keyed clear: told once, with all of them.
import { list } from '../../lib/wording.ts'
import { clearBefore, lastFallBefore } from '../clear-before.ts'
import type { Found } from '../exception.ts'
import { byWhom, count, type Look, named, sentence, when } from '../look.ts'
import { lastStart } from '../starts.ts'

export function startClear(look: Look): Found[] {
  const start = lastStart(look)
  if (start === null) return []
  const { said, seq, silent } = clearBefore(look, start.move)
  if (silent.length === 0) return []
  const falls = silent.flatMap((gate) => {
    const fall = lastFallBefore(look, gate, start.move)
    return fall === null ? [] : [{ gate, fall }]
  })
  const numbers = list(silent.map(({ number }) => String(number)))
  return [
    {
      // Nobody keyed clear of anything: nothing on record says that people were out.
      kind: said === null ? 'started' : 'start-clear',
      what: `STARTED ${byWhom(look, start.move.entry)}${said === null ? ', clear ON NO RECORD' : ', clear not keyed'} at ${count(silent.length, 'hold point')} that fell before it: ${numbers}`,
      sentences: [
        said === null
          ? 'Nor was clear keyed anywhere else before it.'
          : sentence(`Last on record before it was ${said}`),
        ...falls.map(
          ({ gate, fall }) => `${named(gate)}: fell ${when(look, fall.entry)}, nobody keyed clear since.`,
        ),
        'Ask those who were there: the record does not tell whether anybody was behind these when it was started.',
      ],
      entries: [
        ...falls.map(({ fall }) => fall.entry.seq),
        ...(seq === null ? [] : [seq]),
        start.move.entry.seq,
      ],
      open: false,
      grave: 1,
    },
  ]
}
