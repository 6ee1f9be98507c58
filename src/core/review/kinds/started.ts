// A start, or gas let in again, while a finding or a verdict was still undecided, or on a verdict that fell since: what was found
// was then run on by nobody's word.
import { nonconformances } from '../../job/nonconformance.ts'
import { list } from '../../lib/wording.ts'
import { nonconformanceText } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, type Look, named, when } from '../look.ts'
import {
  type FellSince,
  fellSince,
  isUndecided,
  lastStart,
  runsIt,
  startsOf,
  undecidedAt,
} from '../starts.ts'

export function started(look: Look): Found[] {
  return [...startedOpen(look), ...startedOnFallen(look)]
}

function startedOpen(look: Look): Found[] {
  const { defs, state } = look
  const open = startsOf(look).flatMap(({ placed, move }) => {
    const undecided = undecidedAt(look, move)
    return undecided.length === 0 ? [] : [{ placed, move, undecided }]
  })
  const first = open.find(({ placed }) => runsIt(defs, placed)) ?? open[0]
  if (first === undefined) return []
  const names = new Set(open.flatMap(({ undecided }) => undecided.map(({ name }) => name)))
  const ncs = nonconformances(defs, state).filter(({ name }) => names.has(name))
  const decisions = ncs.map((nc) => ({
    nc,
    entry: isUndecided(nc) ? undefined : look.entries[nc.decided?.seq ?? -1],
  }))
  return [
    {
      kind: 'started',
      what: `STARTED ${byWhom(look, first.move.entry)} WITH ${list([...names])} UNDECIDED`,
      sentences: [
        `${open.map(({ placed, move }) => `${named(placed)}, ${when(look, move.entry)}`).join('; ')}.`,
        ...decisions.map(({ nc, entry }) => {
          const raised = look.entries[nc.seq]
          const since = raised === undefined ? '' : ` Raised ${when(look, raised)},`
          const until = entry === undefined ? 'not decided since' : `decided afterwards, ${when(look, entry)}`
          return `${clause(nonconformanceText(defs, nc))}.${since} ${until}.`
        }),
      ],
      entries: [
        ...ncs.map(({ seq }) => seq),
        ...open.map(({ move }) => move.entry.seq),
        ...decisions.flatMap(({ entry }) => entry?.seq ?? []),
      ],
      open: false,
    },
  ]
}

/** It runs on what nobody can tell any more: that is not over when the job is. */
function startedOnFallen(look: Look): Found[] {
  const start = lastStart(look)
  const fell = start === null ? [] : fellSince(look, start)
  if (start === null || fell.length === 0) return []
  const numbers = list(fell.map(({ course }) => String(course.judge.number)))
  return [
    {
      kind: 'started',
      what: `STARTED ${byWhom(look, start.move.entry)} ON ${numbers}, VOID SINCE: a lead decides: stop and measure again, or run on`,
      sentences: [
        ...fell.map((one) => fellText(look, one)),
        'What a lead decides of it goes on record by barover remark.',
      ],
      entries: [
        start.move.entry.seq,
        ...fell.flatMap(({ course, by }) => [
          ...(look.state.verdicts[course.judge.id] === undefined
            ? []
            : [look.state.verdicts[course.judge.id]?.seq ?? 0]),
          ...(by === undefined ? [] : [by.seq]),
        ]),
      ],
      open: true,
      grave: -1,
    },
  ]
}

function fellText(look: Look, { course: { judge, found }, by }: FellSince): string {
  const why =
    by === undefined
      ? 'void since'
      : by.type === 'instrument.doubted'
        ? `void since ${when(look, by)}, ${by.instrument} out of calibration: ${clause(by.why)}`
        : `void since ${when(look, by)}`
  return `${named(judge)}: ${found} when it was started, ${why}.`
}
