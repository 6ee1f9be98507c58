// What was let run on until so many running hours, on a counter that no sheet of this job read. What it showed may have been keyed with
// the decision: then that is told, by whom and where. Where nothing was keyed either, nobody can tell when those hours are over.
import { hoursRead, lastOverhaul } from '../../job/changes.ts'
import type { Entry } from '../../job/entries.ts'
import { type Validity, validityText } from '../../job/validity.ts'
import { formatNumber } from '../../lib/decimal.ts'
import { deadlineNamed } from '../../lib/hours-named.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look, namedById, sentence } from '../look.ts'

/** After these the part runs on as it is. */
const RUNS_ON: readonly string[] = ['accept', 'concession']

export function deadlines(look: Look): Found[] {
  const { defs, state } = look
  if (hoursRead(defs, state) !== null) return []
  const last = lastOverhaul(defs)
  const before =
    last === null
      ? 'No overhaul is on record either.'
      : `The last on record is ${formatNumber(last.hours, 0)} h at the overhaul of ${last.day}.`
  return [
    ...entriesOf(look, 'disposition.set')
      .filter((d) => RUNS_ON.includes(d.choice) && stands(look, d))
      .flatMap((d) => told(look, d, namedById(look, d.about), endOf(d), before)),
    ...entriesOf(look, 'deviation.permitted').flatMap((d) =>
      told(look, d, namedById(look, d.step), endOf(d), before),
    ),
  ]
}

type Ends = Pick<Extract<Entry, { type: 'disposition.set' }>, 'valid' | 'why'>

/** Null: no running hours are named. */
function endOf({ valid, why }: Ends): string | null {
  if (valid !== undefined && 'hours' in valid) return validityText(valid)
  const named = deadlineNamed(why)
  return named === null ? null : `"${named}" in its words`
}

function stands({ state }: Look, d: Extract<Entry, { type: 'disposition.set' }>): boolean {
  return Object.values(state.dispositions).some((one) => one.seq === d.seq && !one.void)
}

function told(
  look: Look,
  entry: Entry & { readonly why: string; readonly valid?: Validity },
  about: string,
  end: string | null,
  before: string,
): Found[] {
  if (end === null) return []
  const keyed = keyedFrom(entry)
  const by = byWhom(look, entry)
  return [
    {
      kind: 'deadline',
      what:
        keyed === null
          ? `DEADLINE IN HOURS, COUNTER NOT READ: ${about}, ${end}`
          : `DEADLINE IN HOURS, COUNTER KEYED WITH IT AND READ BY NO SHEET: ${about}, ${end}`,
      sentences: [
        sentence(`${by}: ${entry.why}`),
        keyed === null
          ? `Nobody read the counter of the machine on this job, so nobody can tell when those hours are over. ${before}`
          : `${formatNumber(keyed, 0)} h was keyed as what the counter showed, ${by} (entry ${entry.seq}), with the decision alone: no sheet of this job read it, and the hours count from it. ${before}`,
        keyed === null
          ? 'Read the counter; a lead puts it on record, on a closed job by barover remark.'
          : 'Read the counter and hold it against what was keyed; a lead puts it on record, on a closed job by barover remark.',
      ],
      entries: [entry.seq],
      open: false,
    },
  ]
}

/** Hours on the counter that were keyed with the words of a lead; null where none were. */
function keyedFrom({ valid }: { readonly valid?: Validity }): number | null {
  return valid !== undefined && 'hours' in valid && valid.from !== undefined ? valid.from : null
}
