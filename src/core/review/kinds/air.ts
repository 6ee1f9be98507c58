// Oxygen that nobody can breathe inside an opening that was worked in: it passes there, as nobody is to put a head in, and a lead asks
// whether nobody did.
import { asKind, gasLimitById, stepById } from '../../job/definitions.ts'
import { evidenceByKey } from '../../job/gate.ts'
import { keyLabel } from '../../job/item-label.ts'
import { isLittleOxygen } from '../../job/little-oxygen.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look } from '../look.ts'

export function littleOxygen(look: Look): Found[] {
  const { defs } = look
  return entriesOf(look, 'evidence.given').flatMap((one): Found[] => {
    if (one.reading === undefined) return []
    const gate = asKind(stepById(defs, one.step), 'gate')
    const evidence = evidenceByKey(gate, one.item)
    const limit = evidence?.kind === 'gas' ? gasLimitById(defs, evidence.limit) : undefined
    if (limit === undefined || !isLittleOxygen(defs, limit, one.reading.si)) return []
    return [
      {
        kind: 'air',
        open: false,
        what: `${gate.number} ${keyLabel(defs, gate, one.item)}: ${one.shown}, nobody breathes there`,
        sentences: [
          `Keyed ${byWhom(look, one)}. It passes its limit, as nobody is to breathe there or to put a head in.`,
          'What drove the air out, and did nobody put a head in? The record does not tell.',
        ],
        entries: [one.seq],
      },
    ]
  })
}
