// A report of a job as plain data, from the entries of its log and the review of them. Pure: the same log and the same facts
// give the same report, to the byte, on any day and any computer. It works out nothing that the job or the review has not.
import { defsNow, type Editions } from '../job/editions.ts'
import type { Entry } from '../job/entries.ts'
import { markOf } from '../job/paper.ts'
import { openStop, type State } from '../job/state.ts'
import { clean } from '../lib/text.ts'
import { movesOf } from '../review/look.ts'
import type { Review } from '../review/review.ts'
import { leftOut } from '../talk/left-out.ts'
import { cautionsOf } from './parts/cautions.ts'
import { changesOf } from './parts/changes.ts'
import { correctionsOf } from './parts/corrections.ts'
import { gasLimitsOf, gatesOf } from './parts/gates.ts'
import { instrumentsOf } from './parts/instruments.ts'
import { limitsOf } from './parts/limits.ts'
import { logOf } from './parts/log.ts'
import { peopleOf, signaturesOf } from './parts/people.ts'
import { borePlots } from './parts/plot-bore.ts'
import { gapPlots } from './parts/plot-gaps.ts'
import { pocketPlots } from './parts/plot-pocket.ts'
import { wearPlots } from './parts/plot-wear.ts'
import { practiceOf } from './parts/practice.ts'
import { numbered, readStepsOf } from './parts/readings.ts'
import { decisionsOf, fallenOf, findingsOf, permitsOf, verdictsOf } from './parts/verdicts.ts'
import { REPORT_FORMAT, type Report } from './schema.ts'

export interface ReportFacts {
  /** Head hash over every entry: only a sound log has one, and only of a sound log is there a report. */
  readonly head: string
  /** Version of the program that makes it. */
  readonly version: string
  readonly checks: Report['checks']
  /** Attached files as they lie beside the log, by the entry each was attached with: as-attached, changed or gone. */
  readonly files: ReadonlyMap<number, string>
}

/** `state` is what `entries` fold to; `review` is that of the same entries. */
export function reportOf(
  editions: Editions,
  entries: readonly Entry[],
  state: State,
  review: Review,
  facts: ReportFacts,
): Report {
  const defs = defsNow(editions)
  const moves = movesOf(entries)
  const [opened] = entries
  if (opened?.type !== 'job.opened') throw new Error('a job begins with job.opened')
  const skipped = leftOut(defs, state)
  const skippedIds = new Set(skipped.flatMap(({ steps }) => steps.map(({ id }) => id)))
  const log = logOf(editions, moves, markOf(state))
  const signatures = signaturesOf(entries, ({ seq }) => log[seq]?.told[0]?.trim() ?? '')
  const gates = gatesOf(defs, editions, state, moves, (id) => skippedIds.has(id))
  const practice = practiceOf(defs, entries)
  return cleaned({
    report: REPORT_FORMAT,
    record: state.record,
    ...(state.paper === null ? {} : { paper: true as const }),
    job: state.job,
    title: defs.procedure.title,
    machine: {
      tag: defs.machine.machine,
      title: defs.machine.title,
      edition: defs.machine.edition,
      invented: defs.machine.invented === true,
    },
    procedure: { edition: String(defs.procedure.edition), invented: defs.invented.length > 0 },
    standing: state.closed === null ? openStanding(state, review) : review.standing,
    isClosed: state.closed !== null,
    outcome: state.closed,
    asLeft: state.asLeft,
    from: review.from,
    to: review.to,
    added: [...review.added],
    started: review.started === null ? null : { ...review.started, hung: [...review.started.hung] },
    zone: opened.zone,
    entries: entries.length,
    head: facts.head,
    opened: opened.program.version,
    reported: facts.version,
    checks: facts.checks,
    ...(practice === undefined ? {} : { practice }),
    cautions: cautionsOf(defs, state, opened, review),
    verdicts: verdictsOf(defs, state, entries),
    fallen: fallenOf(defs, state, entries),
    exceptions: review.exceptions.map(({ number, kind, what, sentences, entries: behind, open }) => ({
      number,
      kind,
      what,
      sentences: [...sentences],
      entries: [...behind],
      open,
    })),
    usual: [...review.usual],
    leftOut: skipped.map(({ by, steps }) => leftOutText(by.step.title, steps.map(numbered))),
    changes: changesOf(defs, review.changes),
    readings: readStepsOf(defs, state),
    gates,
    people: peopleOf(defs, state, review, signatures),
    signatures,
    instruments: instrumentsOf(defs, state, entries),
    limits: limitsOf(defs, state),
    gasLimits: gasLimitsOf(defs, gates),
    findings: findingsOf(defs, state, entries),
    decisions: decisionsOf(defs, state),
    permits: permitsOf(defs, state),
    corrections: correctionsOf(editions, moves),
    files: state.files.map(({ seq, name, caption, size, sha256 }) => ({
      seq,
      name,
      caption,
      size,
      sha256,
      is: facts.files.get(seq) ?? 'not looked at',
    })),
    plots: [
      ...borePlots(defs, state),
      ...wearPlots(defs, review.changes),
      ...gapPlots(defs, state),
      ...pocketPlots(defs, state),
    ],
    log,
  })
}

function openStanding(state: State, review: Review): string {
  const more = openStop(state) === null ? review.standing.replace(/^open(?:, )?/, '') : 'under STOP'
  return more === '' ? 'OPEN' : `OPEN, ${more}`
}

function leftOutText(title: string, steps: readonly string[]): string {
  const [first] = steps
  const last = steps.at(-1)
  if (steps.length < 2 || first === last) return first ?? title
  return `${title}: ${steps.length} steps, ${first} to ${last}`
}

/** What cannot be seen and would change what is, is `?` in every text, so that no writer has to think of it. */
function cleaned<T>(value: T): T {
  if (typeof value === 'string') return clean(value) as T
  if (Array.isArray(value)) return value.map(cleaned) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, cleaned(inner)])) as T
}
