// Verdicts whose figure lies no farther from its limit than it may be off, a step of the gauge included: one step more, or the
// gauge off to the other side, and the word would be another.
import type { Found } from '../exception.ts'
import { type Judged, judgedIn, shareText } from '../judged.ts'
import { type Look, named } from '../look.ts'

/** Floating noise, as a share of the error: 0.4 and 0.6 beside 1.0 are on the edge, not past it. */
const NOISE = 1e-9

export function closeCalls(look: Look): Found[] {
  const { defs, state } = look
  return defs.steps.flatMap((placed) => {
    const stands = state.verdicts[placed.id]
    if (stands === undefined || stands.void) return []
    return judgedIn(stands.verdict)
      .filter(isClose)
      .map((one): Found => {
        const { name, value, limit, expandedU, resolution, text, error } = one
        const say = (si: number | null) => (si === null ? 'unknown' : text(defs, si))
        const off = expandedU === null ? 'unknown' : error(defs, expandedU)
        const apart = value === null || limit === null ? null : Math.abs(limit.value - value)
        return {
          kind: 'close',
          what: `NEAR LIMIT: ${named(placed)}, ${name} ${say(value)} with U ${off}, limit ${limit?.bound === 'at-least' ? 'at least ' : ''}${say(limit?.value ?? null)}; ${one.verdict}`,
          sentences: [
            ...(shareText(defs, one) === null ? [] : [`Figure and limit: ${shareText(defs, one)}.`]),
            `It stands here as it lies ${say(apart)} from its limit, no farther than its measuring error, ${off}, and a step of the gauge, ${say(resolution)}, together.`,
            'A step more, or a better gauge, could give another word. The verdict stands by its rule.',
          ],
          entries: [stands.seq, ...stands.verdict.readings],
          open: false,
        }
      })
  })
}

function isClose({ value, limit, expandedU, resolution }: Judged): boolean {
  if (value === null || limit === null || expandedU === null) return false
  const apart = Math.abs(limit.value - value)
  return apart <= (expandedU + (resolution ?? 0)) * (1 + NOISE)
}
