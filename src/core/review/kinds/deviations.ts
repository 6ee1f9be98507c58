// What a lead permitted beforehand to differ.
import { isOver, validityText } from '../../job/validity.ts'
import type { Found } from '../exception.ts'
import { entriesOf, type Look, namedById, sentence, when } from '../look.ts'

export function deviations(look: Look): Found[] {
  return entriesOf(look, 'deviation.permitted').map((e, i) => {
    // Running hours are not told from a clock; a day is over by the last entry's.
    const over = isOver(e.valid, look.state.lastAt)
    return {
      kind: 'deviation',
      what: `DP-${i + 1} ${namedById(look, e.step)}: ${e.what}${over ? '; LAPSED' : ''}`,
      sentences: [
        sentence(
          `Permitted by ${e.person}${e.by === undefined ? '' : `, keyed by ${e.by}`} ${when(look, e)}: ${e.why}`,
        ),
        `On the authority of ${e.authority}, ${validityText(e.valid)}.`,
        'It changes no limit, no verdict and no hold point.',
      ],
      entries: [e.seq],
      open: over,
      grave: over ? 0 : 1,
    }
  })
}
