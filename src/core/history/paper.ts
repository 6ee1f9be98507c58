// A history laid out in sections, for a terminal and as a page: tables that fit the sheet, a plot for each machine.
import { NOT_ENFORCED_BY } from '../job/paper.ts'
import { type Column, line, lines, type Paper, type Piece, type Section, table } from '../report/paper.ts'
import { bandOf, basisText, rounded } from '../report/parts/plot-wear.ts'
import { wearScene } from '../report/plot/wear.ts'
import type { PlotOf } from '../report/schema-plots.ts'
import { formatQuantity, hoursText, shownNumber, valueIn } from '../units/index.ts'
import { DECIMALS, endOf, figures } from './figures.ts'
import { type History, type MachineHistory, nearestFirst } from './history.ts'
import { overviewSection } from './overview.ts'
import type { Trend } from './trend.ts'

/** Rows of a table on steps: what is put right less often tells nothing of its step. */
const MOST_STEPS = 20

export function historyPaper(history: History): Paper {
  const { record, machine, jobs } = history
  const title = machine === null ? 'History of all machines' : `History of ${machine}`
  return {
    record,
    job: `history of ${jobs} ${jobs === 1 ? 'job' : 'jobs'}`,
    head: 'none: a history is worked out anew from the logs each time',
    title,
    at: history.to ?? history.from ?? '1970-01-01T00:00:00.000+00:00',
    sections: [
      cover(history, title),
      ...dueSection(history),
      ...overviewSection(history),
      machinesSection(history),
      ...repeatedSection(history),
      ...stepsSection(history),
      ...unreadSection(history),
    ],
  }
}

function cover(history: History, title: string): Section {
  const { jobs, open, paper, machines, unread, from, to, next } = history
  const days = from === null ? 'no job' : `${from.slice(0, 10)} to ${(to ?? from).slice(0, 10)}`
  return {
    id: 'cover',
    title,
    pieces: [
      lines(
        line(`${count(jobs, 'job')} on ${count(machines.length, 'machine')}, ${days}`, 'strong'),
        ...(paper.length === 0
          ? []
          : [
              line(
                `${count(paper.length, 'job')} from paper, ${NOT_ENFORCED_BY}: ${paper.join(', ')}`,
                'caution',
              ),
            ]),
        ...(open === 0 ? [] : [line(`${count(open, 'job')} still open: counted, and nothing of it told.`)]),
        ...(unread.length === 0
          ? []
          : [line(`${count(unread.length, 'log')} NOT READ: see the end.`, 'caution')]),
        line(
          next === null
            ? 'Hours to the next planned overhaul were not said: --next H tells what may not last until then.'
            : `Next planned overhaul: ${next} running hours after the last reading of each machine.`,
        ),
        line('Wear goes straight on, common practice, no source. Hours are the early end, to plan by.'),
        line('Sizes as they were read or left on record; no verdict rests on this page.', 'caution'),
      ),
    ],
  }
}

const COLUMNS: readonly Column[] = [
  { head: 'place', wide: 5 },
  { head: 'n', right: true, wide: 1 },
  { head: 'last', right: true, wide: 2 },
  { head: 'in 1000 h', right: true, wide: 3 },
  { head: 'limit', right: true, wide: 2 },
  { head: 'hours left', right: true, wide: 3 },
]

function dueSection({ machines, next }: History): Section[] {
  if (next === null) return []
  const due = machines.flatMap((one) => one.due.map((trend) => ({ one, trend })))
  const rows = due
    .sort((a, b) => nearestFirst(a.trend, b.trend))
    .map(({ one, trend }) => [`${one.machine}  ${trend.name}`, ...figures(one, trend)])
  return [
    {
      id: 'due',
      title: 'What may reach its limit before the next planned overhaul',
      pieces:
        rows.length === 0
          ? [lines(line('Nothing of what can be told. What has no rate or no limit cannot be told.'))]
          : table('The nearest first', COLUMNS, rows),
    },
  ]
}

function machinesSection({ machines, paper }: History): Section {
  return {
    id: 'machines',
    title: 'Machines',
    pieces:
      machines.length === 0
        ? [lines(line('No closed job of this kind of record.'))]
        : machines.flatMap((one) => machinePieces(one, paper)),
  }
}

function machinePieces(one: MachineHistory, paper: readonly string[]): Piece[] {
  const { machine, jobs, last, hours, trends } = one
  const at = hours === null ? 'running hours were never read' : `${hoursText(hours)} running hours`
  return [
    lines(
      line(machine, 'strong'),
      line(
        `  ${count(jobs, 'job')}, the last ${last.at.slice(0, 10)} ${endOf(last)}${paper.includes(last.job) ? ', from paper' : ''}; ${at}`,
      ),
    ),
    ...table(
      `Wear of ${machine}, ${one.unit}`,
      COLUMNS,
      [...trends].sort(nearestFirst).map((trend) => [trend.name, ...figures(one, trend)]),
    ),
    ...whyNot(trends),
    ...begunAnew(trends),
    ...newestPieces(one),
    ...heldPieces(trends),
    ...shrunkPieces(one),
    ...untimedPieces(trends),
    ...plots(one),
  ]
}

/** Each reason once, with how many places it is of. */
function whyNot(trends: readonly Trend[]): Piece[] {
  const reasons = new Map<string, number>()
  for (const { rate, left } of trends) {
    const why = !rate.ok ? rate.error.say : left !== null && !left.ok ? left.error.say : null
    if (why !== null) reasons.set(why, (reasons.get(why) ?? 0) + 1)
  }
  return reasons.size === 0
    ? []
    : [lines(...[...reasons].map(([why, n]) => line(`  not told of ${count(n, 'place')}: ${why}`)))]
}

/** Why nothing before counts, each reason once: a rate that begins late would look like a machine that was never read. */
function begunAnew(trends: readonly Trend[]): Piece[] {
  const reasons = new Map<string, number>()
  for (const { anew, readings } of trends)
    if (anew !== null && readings.length > 0) reasons.set(anew, (reasons.get(anew) ?? 0) + 1)
  return reasons.size === 0
    ? []
    : [lines(...[...reasons].map(([why, n]) => line(`  wear begins anew of ${count(n, 'place')}: ${why}`)))]
}

/** The newest wear is told also where it can be in no rate: what stands in the table is older then, and its hours left count from there. */
function newestPieces({ unit, trends }: MachineHistory): Piece[] {
  const told = trends.flatMap(({ name, newest }) => (newest === null ? [] : [{ name, newest }]))
  const jobs = [...new Set(told.map(({ newest }) => newest.job))]
  if (told.length === 0) return []
  const decimals = DECIMALS[unit]
  const size = (si: number) => shownNumber(valueIn({ kind: 'length', si }, unit), decimals)
  const signed = (si: number) => `${si > 0 ? '+' : ''}${size(si)}`
  return [
    lines(
      line(
        `  NEWEST READINGS, WITHOUT A RATE: nobody read the running hours on ${jobs.join(', ')}; what is told above of wear and hours left ends before them.`,
        'caution',
      ),
      ...told.map(({ name, newest: { at, value, since } }) =>
        line(
          since === null
            ? `    ${name}: ${size(value)} ${unit}, ${at.slice(0, 10)}; nothing before it that wear may be told from`
            : `    ${name}: ${size(value)} ${unit}, ${at.slice(0, 10)}; ${signed(value - since.value)} since ${size(since.value)} at ${hoursText(since.hours)} h`,
        ),
      ),
    ),
  ]
}

/** A size that no verdict trusts stands in the table like any other, so it is named below it, each job once. */
function heldPieces(trends: readonly Trend[]): Piece[] {
  const told = new Map<string, number>()
  for (const { held } of trends)
    for (const { job, why } of held) told.set(`${job}, ${why}`, (told.get(`${job}, ${why}`) ?? 0) + 1)
  return told.size === 0
    ? []
    : [
        lines(
          line(
            '  MEASURED ON HOLD: no wear and no hours told from these readings are to be trusted.',
            'caution',
          ),
          ...[...told].map(([of, n]) => line(`    ${count(n, 'place')} on ${of}`)),
        ),
      ]
}

/** A bore that grows smaller is no wear: whoever reads a row of figures going the wrong way has to be told. */
function shrunkPieces({ unit, trends }: MachineHistory): Piece[] {
  const decimals = DECIMALS[unit]
  const size = (si: number) => shownNumber(valueIn({ kind: 'length', si }, unit), decimals)
  const told = trends.flatMap(({ name, shrunk, wears }) =>
    shrunk.map(({ from, to, U }) => {
      const way = wears === 'larger' ? 'smaller' : 'larger'
      const error = U === null ? 'of which no measuring error is on record' : `more than its U, ${size(U)}`
      return `    ${name}: ${size(to.value)} ${unit} on ${to.of} is ${size(Math.abs(to.value - from.value))} ${way} than ${size(from.value)} of ${from.of}, ${error}`
    }),
  )
  return told.length === 0
    ? []
    : [
        lines(
          line(
            '  AGAINST ITS WEAR, and no reline, cut or renewal is on record between: one of the two readings is wrong, or work was not put down. No wear is to be told across it.',
            'caution',
          ),
          ...told.map((text) => line(text)),
        ),
      ]
}

/** A size that was read at hours nobody read is missing in its rate, and whoever plans by that has to know. */
function untimedPieces(trends: readonly Trend[]): Piece[] {
  const of = trends.filter(({ untimed }) => untimed > 0)
  const most = Math.max(...of.map(({ untimed }) => untimed))
  return of.length === 0
    ? []
    : [
        lines(
          line(
            `  not in any rate: readings of ${count(of.length, 'place')} on up to ${count(most, 'job')} whose running hours nobody read`,
            'caution',
          ),
        ),
      ]
}

/** The place that is nearest to its limit. */
function plots({ machine, unit, trends }: MachineHistory): Piece[] {
  const first = [...trends].filter(({ rate }) => rate.ok).sort(nearestFirst)[0]
  if (first === undefined || !first.rate.ok) return []
  const { readings, wears, limit, left, name } = first
  const rate = first.rate.value
  const figure = (si: number) => ({
    si,
    kind: 'length',
    unit,
    shown: shownNumber(valueIn({ kind: 'length', si }, unit), DECIMALS[unit]),
    text: formatQuantity({ kind: 'length', si }, unit, DECIMALS[unit]),
  })
  const plot: PlotOf<'wear'> = {
    kind: 'wear',
    title: `${machine}, ${name}: wear over running hours`,
    unit,
    notes: [
      `The band is where one further reading may lie: ${basisText(rate)}.`,
      ...(limit === null ? [] : [`Limit: ${limit.source}.`]),
    ],
    readings: readings.map(({ hours, value, U }) => ({
      hours,
      value: figure(rounded(value)),
      U,
      isNow: false,
    })),
    band: bandOf({ readings, wears }, rate, left?.ok === true ? left.value.expected : null),
    basis: rate.basis,
    limit: limit === null ? null : figure(limit.si),
  }
  return [{ is: 'plot', scene: wearScene(plot) }]
}

function repeatedSection({ repeated }: History): Section[] {
  if (repeated.length === 0) return []
  const columns: Column[] = [
    { head: 'machine', wide: 2 },
    { head: 'what was found', wide: 6 },
    { head: 'jobs', right: true, wide: 1 },
  ]
  return [
    {
      id: 'repeated',
      title: 'Found again and again',
      pieces: table(
        'In two jobs or more of one machine',
        columns,
        repeated.map(({ machine, step, word, jobs, procedures }) => [
          machine,
          `${step}: ${word}${procedures.length < 2 ? '' : ` (${procedures.join('; ')})`}`,
          String(jobs.length),
        ]),
      ),
    },
  ]
}

function stepsSection({ steps }: History): Section[] {
  if (steps.length === 0) return []
  const columns: Column[] = [
    { head: 'step', wide: 6 },
    { head: 'asked in', right: true, wide: 1 },
    { head: 'put right', right: true, wide: 1 },
    { head: 'n/a', right: true, wide: 1 },
  ]
  const rest = steps.length - MOST_STEPS
  return [
    {
      id: 'steps',
      title: 'Steps that were put right or entered as n/a most',
      pieces: [
        ...table(
          'Jobs, by the share of those the step was asked in',
          columns,
          steps
            .slice(0, MOST_STEPS)
            .map(({ procedure, step, asked, corrected, notApplicable }) => [
              `${procedure}: ${step}`,
              String(asked),
              String(corrected),
              String(notApplicable),
            ]),
        ),
        ...(rest <= 0 ? [] : [lines(line(`  and ${count(rest, 'step')} more, in --json.`))]),
      ],
    },
  ]
}

function unreadSection({ unread }: History): Section[] {
  if (unread.length === 0) return []
  return [
    {
      id: 'unread',
      title: 'Logs that were not read',
      pieces: [lines(...unread.map(({ job, unread: why }) => line(`${job}: ${why}`, 'caution')))],
    },
  ]
}

function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`
}

/** Plain data for other programs: SI throughout. */
export function historyJson({ machines, ...rest }: History) {
  return {
    ...rest,
    machines: machines.map(({ due, ...one }) => ({ ...one, due: due.map(({ name }) => name) })),
  }
}
