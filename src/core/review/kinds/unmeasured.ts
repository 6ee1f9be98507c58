// Parts that a lead had worked on or renewed, and that nobody measured again: no verdict tells how they went back.
import { type Course, coursesOf } from '../../job/as-left.ts'
import { list } from '../../lib/wording.ts'
import { doneText } from '../../sheet/closing-rows.ts'
import type { Exception, Found } from '../exception.ts'
import { type Look, named } from '../look.ts'

export function unmeasured(look: Look): Found[] {
  if (look.state.closed === null) return []
  return unmeasuredIn(look).map(({ judge, found, decided }) => ({
    kind: 'unmeasured',
    what: `NOT MEASURED AGAIN as left: ${named(judge)}, found ${found}${decided === null ? '' : `, ${doneText(decided)}`}`,
    sentences: [
      'It was to be worked on or renewed, and no later verdict looks at all that this one was held against.',
      'How it went back is on no record: no verdict as left counts it in.',
    ],
    entries: [look.state.verdicts[judge.id]?.seq, decided?.seq].flatMap((seq) => seq ?? []),
    open: false,
  }))
}

function unmeasuredIn({ defs, state }: Look): Course[] {
  return coursesOf(defs, state).filter(({ again, left }) => again === null && left === null)
}

/** `closed with REPLACE as found, MONITOR as left, without 1 not measured again: item 9`; the log only counts them. */
export function unmeasuredNamed(standing: string, found: readonly Exception[]): string {
  const numbers = found.flatMap(({ kind, number }) => (kind === 'unmeasured' ? [String(number)] : []))
  if (numbers.length === 0) return standing
  const items = `${numbers.length === 1 ? 'item' : 'items'} ${list(numbers)}`
  return standing
    .replace(
      /, and \d+ not measured again as left/,
      ` as left, and ${numbers.length} not measured again: ${items}`,
    )
    .replace(/not measured again as left/, `not measured again as left: ${items}`)
}
