// The review of a job: what was out of the ordinary, worst first, and the rest counted. Pure: the definitions and entries of a
// log, the state they fold to, and what only the disk tells go in; data comes out, for a screen or a report to show.
import { readBeforeWork } from '../job/as-left.ts'
import { type Change, changesOf } from '../job/changes.ts'
import type { Definitions, RecordKind } from '../job/definitions.ts'
import { asOpened, defsAt, type Editions } from '../job/editions.ts'
import type { Entry } from '../job/entries.ts'
import { everybodyIn } from '../job/people-on.ts'
import type { State } from '../job/state.ts'
import type { Result } from '../lib/result.ts'
import { leftOut, leftOutCount } from '../talk/left-out.ts'
import { standingOf } from '../talk/standing.ts'
import { asLeft } from './as-left.ts'
import type { Beside } from './beside.ts'
import { type Exception, type Found, inOrder } from './exception.ts'
import { hoursLeftOf, type Outlook } from './hours-left.ts'
import { disagreements } from './kinds/agreement.ts'
import { littleOxygen } from './kinds/air.ts'
import { readApart } from './kinds/apart.ts'
import { clockJumps } from './kinds/clock.ts'
import { closeCalls } from './kinds/close.ts'
import { corrections } from './kinds/corrections.ts'
import { crewQuestions } from './kinds/crew.ts'
import { dangers } from './kinds/danger.ts'
import { deadlines } from './kinds/deadline.ts'
import { deviations } from './kinds/deviations.ts'
import { doubted } from './kinds/doubted.ts'
import { byFallback } from './kinds/fallback.ts'
import { changedFiles } from './kinds/files.ts'
import { gates } from './kinds/gates.ts'
import { stillHanging } from './kinds/hanging.ts'
import { improbable } from './kinds/improbable.ts'
import { instruments } from './kinds/instruments.ts'
import { faultsOfLog, notProvedWhole, strayFiles, unfinishedLine } from './kinds/log.ts'
import { machineDoubts } from './kinds/machine.ts'
import { missing } from './kinds/missing.ts'
import { nonconforming } from './kinds/nonconforming.ts'
import { notApplicable } from './kinds/not-applicable.ts'
import { notes } from './kinds/notes.ts'
import { objections } from './kinds/objections.ts'
import { stillOpen } from './kinds/open.ts'
import { unlikeBefore } from './kinds/pace.ts'
import { fromPaper } from './kinds/paper.ts'
import { saidAfterwards, takenIn } from './kinds/records.ts'
import { startClear } from './kinds/start-clear.ts'
import { started } from './kinds/started.ts'
import { stops } from './kinds/stops.ts'
import { notEnforced } from './kinds/unenforced.ts'
import { unmeasured, unmeasuredNamed } from './kinds/unmeasured.ts'
import { closeOf, type Look, movesOf } from './look.ts'
import { instrumentsUsed } from './measuring.ts'
import { toldApart } from './same-words.ts'
import { addedSince } from './since.ts'
import { type Started, startedOf } from './starts.ts'
import { usual } from './usual.ts'

export interface Review {
  readonly job: string
  readonly record: RecordKind
  /** true: keyed in from a paper sheet. */
  readonly paper: boolean
  readonly machine: string
  readonly title: string
  /** How it ended, or that it is open, in words. */
  readonly standing: string
  readonly isClosed: boolean
  /** Who adopted its figures as left as the next baseline, and when; null: nobody, or not any more. */
  readonly adopted: { readonly person: string; readonly at: string } | null
  /** Stamps of the first entry and of the close; of an open job, of the last. */
  readonly from: string
  readonly to: string
  /** What its log took after the close, each a clause, in that order. */
  readonly added: readonly string[]
  /** What the record tells of the start; null where nothing is started. */
  readonly started: Started | null
  /** Everybody who was on it or signed for something before it was closed. */
  readonly people: readonly string[]
  /** Who signed only for what was added after the close. */
  readonly since: readonly string[]
  readonly exceptions: readonly Exception[]
  /** What was as usual, counted, each a clause. */
  readonly usual: readonly string[]
  readonly changes: readonly Changed[]
  /** How many steps were left out by their own condition. */
  readonly leftOut: number
  /** How many instruments have readings that stand. */
  readonly measuredWith: number
}

/** As found, as left and the last overhaul at one place, with the hours it has left. */
export interface Changed extends Change {
  readonly hoursLeft: Result<Outlook> | null
}

const LOOKS: readonly ((look: Look) => Found[])[] = [
  faultsOfLog,
  unfinishedLine,
  changedFiles,
  fromPaper,
  notEnforced,
  started,
  startClear,
  stops,
  machineDoubts,
  gates,
  littleOxygen,
  stillHanging,
  nonconforming,
  unmeasured,
  closeCalls,
  objections,
  stillOpen,
  deadlines,
  dangers,
  notes,
  instruments,
  missing,
  byFallback,
  clockJumps,
  crewQuestions,
  takenIn,
  corrections,
  notApplicable,
  deviations,
  doubted,
  readApart,
  improbable,
  unlikeBefore,
  disagreements,
  saidAfterwards,
  notProvedWhole,
  strayFiles,
]

function adoptedIn({ adopted }: State): Review['adopted'] {
  return adopted === null || adopted.void ? null : { person: adopted.person, at: adopted.at }
}

/** Behind a break may stand anything, the end of the job too. */
function standingIn(state: State, { log: { broken } }: Beside, exceptions: readonly Exception[]): string {
  if (broken === null || broken === undefined)
    return unmeasuredNamed(standingOf(state), state.asLeft, exceptions)
  return `NOT KNOWN: read up to line ${broken.line - 1}, ${broken.behind + 1} from there on not; up to it ${standingOf(state)}`
}

/**
 * `state` is what `entries` fold to; `editions` are the definitions of earlier entries, where a machine record was taken in. The
 * same log and the same facts give the same review, numbers included.
 */
export function reviewOf(
  defs: Definitions,
  entries: readonly Entry[],
  state: State,
  beside: Beside,
  editions: Editions = asOpened(defs),
): Review {
  const at = ({ seq }: Pick<Entry, 'seq'>) => defsAt(editions, seq)
  const look: Look = { defs, defsAt: at, entries, state, beside, moves: movesOf(entries) }
  const [first] = entries
  const exceptions = toldApart(look, inOrder(LOOKS.flatMap((find) => find(look))))
  return {
    job: state.job,
    record: state.record,
    paper: state.paper !== null,
    machine: defs.machine.machine,
    title: defs.procedure.title,
    standing: standingIn(state, beside, exceptions),
    isClosed: state.closed !== null,
    adopted: adoptedIn(state),
    from: first?.at ?? state.lastAt,
    to: closeOf(look)?.at ?? state.lastAt,
    added: addedSince(look),
    started: startedOf(look),
    ...everybodyIn(state, entries),
    exceptions,
    usual: usual(look),
    changes: asLeft(changesOf(defs, state), readBeforeWork(defs, state)).map((change) => ({
      ...change,
      hoursLeft: hoursLeftOf(defs, state, change),
    })),
    leftOut: leftOutCount(leftOut(defs, state)),
    measuredWith: instrumentsUsed(state).length,
  }
}
