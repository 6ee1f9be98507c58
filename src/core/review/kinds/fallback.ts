// Verdicts that rest on a limit which is not the machine's own.

import { limitSource } from '../../sheet/limit-source.ts'
import { becauseRows } from '../../sheet/verdict-block.ts'
import type { Found } from '../exception.ts'
import { judgedIn } from '../judged.ts'
import { count, type Look, named, sentence } from '../look.ts'

export function byFallback(look: Look): Found[] {
  const { defs, state } = look
  const on = defs.steps.flatMap((placed) => {
    const stands = state.verdicts[placed.id]
    if (stands === undefined || stands.void) return []
    const limits = judgedIn(stands.verdict).filter(({ limit }) => limit?.from === 'fallback')
    return limits.length === 0 ? [] : [{ placed, seq: stands.seq, verdict: stands.verdict, limits }]
  })
  if (on.length === 0) return []
  return [
    {
      kind: 'fallback',
      what: `${count(on.length, 'verdict')} by fall-back limits: maker's manual comes first`,
      sentences: [
        ...on.map(({ placed, verdict, limits }) => {
          const sources = [
            ...new Set(limits.flatMap(({ limit }) => (limit === null ? [] : limitSource(limit)))),
          ]
          const governs = becauseRows(defs, verdict)[0]?.text.trim() ?? verdict.result.verdict
          return sentence(
            `${named(placed)}: ${governs}${sources.every((one) => governs.includes(one)) ? '' : `; ${sources.join('; ')}`}`,
          )
        }),
        'The machine record and its books hold no limit of their own for these.',
      ],
      entries: on.map(({ seq }) => seq),
      open: false,
    },
  ]
}
