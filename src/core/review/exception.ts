// What a review finds, and in which order it is told.

/**
 * Every kind of exception, worst first. The order: what makes all the rest doubtful; what could have hurt somebody; what a
 * lead has to decide; what is not there; what was changed; what is only asked; what is not proved. Within a kind the graver
 * stands first, then the earlier. Common practice, no source.
 */
export const KINDS = [
  'paper',
  'log',
  'file',
  'unenforced',
  'started',
  'stop',
  'danger',
  'machine',
  'gate',
  'air',
  'hanging',
  'verdict',
  'finding',
  'unmeasured',
  'close',
  'objection',
  'denied',
  'open',
  'deadline',
  'hung',
  'note',
  'instrument',
  'baseline',
  'missing',
  'fallback',
  'clock',
  'crew',
  'start-clear',
  'gate-proved',
  'gate-after',
  'gate-void',
  'record',
  'correction',
  'not-applicable',
  'deviation',
  'doubted',
  'apart',
  'improbable',
  'remark',
  'unproved',
] as const

export type Kind = (typeof KINDS)[number]

/** What several of a kind are called when they are only counted; one alone is always told in full. */
export const KIND_NAMES: Readonly<Record<Kind, string>> = {
  paper: 'things to know of the sheet it was keyed from',
  log: 'faults of the log',
  file: 'attached files changed or missing',
  unenforced: 'reasons why it does not show what people did, or when',
  started: 'starts with something undecided',
  stop: 'STOPs',
  danger: 'notes that tell of danger',
  machine: 'doubts about which machine it was',
  gate: 'hold points failed, or fell with nobody keyed clear',
  air: 'figures of oxygen that nobody can breathe',
  hanging: 'kinds of locks and tags still on at the close',
  verdict: 'verdicts that are not ACCEPT',
  finding: 'findings that do not conform',
  unmeasured: 'parts worked on or renewed and not judged again',
  close: 'verdicts as near their limit as their error',
  objection: 'answers that it is not as it should be',
  denied: 'words by radio that their lead denied',
  open: 'things still open',
  deadline: 'deadlines in running hours on a counter no sheet read',
  hung: 'kinds of locks and tags on while the job is open',
  note: 'notes',
  instrument: 'instruments out or put back',
  baseline: 'baselines adopted from figures that fell',
  missing: 'things not done or not settled',
  fallback: 'verdicts by fall-back limits',
  clock: 'jumps of the clock',
  crew: 'questions about who signed',
  'start-clear': 'starts with clear of some hold points on no record',
  'gate-proved': 'hold points fell, each time keyed clear or proved again',
  'gate-after': 'hold points fell after the last work behind them, nobody keyed clear of that',
  'gate-void': 'hold points with evidence void before it was complete',
  record: 'machine records changed on the job',
  correction: 'corrections',
  'not-applicable': 'places entered as n/a',
  deviation: 'deviation permits',
  doubted: 'readings that were doubted or late',
  apart: 'places read once more, as readings lay apart',
  improbable: 'improbable readings, asked and not accused',
  remark: 'remarks of leads after the close',
  unproved: 'things the log cannot prove',
}

/** What one look found, before it has its place. */
export interface Found {
  readonly kind: Kind
  /** One line that stands for itself. */
  readonly what: string
  /** What there is to say of it, each a sentence. */
  readonly sentences: readonly string[]
  /** Entries behind it, by seq, in order; empty where it is about what is not there. */
  readonly entries: readonly number[]
  /** Somebody still has to do something about it. */
  readonly open: boolean
  /** Less is graver, within a kind; 0 unless said. */
  readonly grave?: number
}

export interface Exception extends Omit<Found, 'grave'> {
  /** From 1, in the order of the list; by it one is asked for. */
  readonly number: number
  /** Place of its kind in the order, from 1: the least is the worst. */
  readonly rank: number
}

/** The list in its order, which depends on nothing but what was found: the same log gives the same numbers. */
export function inOrder(found: readonly Found[]): Exception[] {
  const rankOf = (one: Found) => KINDS.indexOf(one.kind)
  const firstOf = (one: Found) => one.entries[0] ?? Number.POSITIVE_INFINITY
  const sorted = found
    .map((one, place) => ({ one, place }))
    .sort(
      (a, b) =>
        rankOf(a.one) - rankOf(b.one) ||
        (a.one.grave ?? 0) - (b.one.grave ?? 0) ||
        compare(firstOf(a.one), firstOf(b.one)) ||
        a.place - b.place,
    )
    .map(({ one }) => one)
  return sorted.map(({ grave: _grave, ...rest }, i) => ({
    ...rest,
    entries: [...new Set(rest.entries)].sort((a, b) => a - b),
    number: i + 1,
    rank: KINDS.indexOf(rest.kind) + 1,
  }))
}

/** Two without entries are alike: a difference of infinities would be no number. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1
}
