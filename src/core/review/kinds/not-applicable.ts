// Places entered as n/a: why, and who signed for it.
import { placeName, placeNumber } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look, sentence } from '../look.ts'

export function notApplicable(look: Look): Found[] {
  const { defs, state } = look
  return entriesOf(look, 'reading.not-applicable').map((e) => {
    const stands = state.notApplicable[e.place] !== undefined
    const where = `${placeNumber(defs, e.step, e.place)} ${placeName(defs, e.step, e.place)}`
    return {
      kind: 'not-applicable',
      what: `${where}: n/a, ${e.why}${stands ? '' : '; not so any more'}`,
      sentences: [
        sentence(`Entered ${byWhom(look, e)}: ${e.why}`),
        e.person === undefined ? 'No lead was asked to sign for it.' : `${e.person} signed for it.`,
        ...(stands ? [] : ['It was taken back, or its branch was left, since.']),
      ],
      entries: [e.seq],
      open: false,
      grave: stands ? 0 : 1,
    }
  })
}
