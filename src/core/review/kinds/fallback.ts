// Verdicts that rest on a limit which is not the machine's own.

import { list } from '../../lib/wording.ts'
import { becauseRows } from '../../sheet/verdict-block.ts'
import type { Found } from '../exception.ts'
import { type Judged, judgedIn } from '../judged.ts'
import { clause, count, type Look, named, sentence } from '../look.ts'

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
          const governs = clause(becauseRows(defs, verdict)[0]?.text.trim() ?? verdict.result.verdict)
          return sentence([`${named(placed)}: ${governs}`, ...othersBySource(limits, governs)].join('; '))
        }),
        // Limits take precedence for each characteristic: what governs above may be the machine's own.
        `The machine record and its books hold no limit of their own for ${list(namesIn(on.flatMap(({ limits }) => limits)))}.`,
      ],
      entries: on.map(({ seq }) => seq),
      open: false,
    },
  ]
}

/** `by fall-back: taper and spread, THE SOURCE`, for each source that is not told with what governs. */
function othersBySource(limits: readonly Judged[], governs: string): string[] {
  const sources = new Set(limits.flatMap(({ limit }) => (limit === null ? [] : [limit.source])))
  return [...sources].flatMap((source) => {
    if (governs.includes(source)) return []
    const from = limits.filter(({ limit }) => limit?.source === source)
    return [`by fall-back: ${list(namesIn(from))}, ${source}`]
  })
}

function namesIn(limits: readonly Judged[]): string[] {
  return [...new Set(limits.map(({ name }) => name))]
}
