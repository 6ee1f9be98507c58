// Steps where somebody said that it is not as the step wants it.
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look, namedById, sentence } from '../look.ts'

export function objections(look: Look): Found[] {
  return entriesOf(look, 'step.objected').map((e) => ({
    kind: 'objection',
    what: `${namedById(look, e.step)}: not so, ${byWhom(look, e)}`,
    sentences: [
      sentence(`${e.by ?? 'Nobody signed on'} said: ${e.remark}`),
      look.state.done[e.step] === undefined ? 'It was never confirmed.' : 'It was confirmed since.',
    ],
    entries: [
      e.seq,
      ...entriesOf(look, 'step.confirmed').flatMap((c) =>
        c.step === e.step && c.seq > e.seq ? [c.seq] : [],
      ),
    ],
    open: look.state.done[e.step] === undefined,
  }))
}
