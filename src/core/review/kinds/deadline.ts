// What was let run on until so many running hours, on a counter that nobody read on this job: when that is nobody can tell.
import { hoursRead, lastOverhaul } from '../../job/changes.ts'
import type { Entry } from '../../job/entries.ts'
import { validityText } from '../../job/validity.ts'
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
  entry: Entry & { readonly why: string },
  about: string,
  end: string | null,
  before: string,
): Found[] {
  if (end === null) return []
  return [
    {
      kind: 'deadline',
      what: `DEADLINE IN HOURS, COUNTER NOT READ: ${about}, ${end}`,
      sentences: [
        sentence(`${byWhom(look, entry)}: ${entry.why}`),
        `Nobody read the counter of the machine on this job, so nobody can tell when those hours are over. ${before}`,
        'Read the counter; a lead puts it on record, on a closed job by barover remark.',
      ],
      entries: [entry.seq],
      open: false,
    },
  ]
}
