// The front of a report: verdicts, cautions, exceptions, and what was found and left.
import { withoutVerdict } from '../job/as-left.ts'
import { markOf } from '../job/paper.ts'
import { line, lines, type PaperLine, type Piece, type Section, table } from './paper.ts'
import { outcomeLines } from './paper-practice.ts'
import { sceneOf } from './plot/of.ts'
import type { Report } from './schema.ts'
import type { Plot } from './schema-plots.ts'

export function coverSection(report: Report): Section {
  const { machine, procedure } = report
  const days = `${report.from.slice(0, 10)} ${report.from.slice(11, 16)} to ${report.to.slice(0, 10)} ${report.to.slice(11, 16)}`
  return {
    id: 'cover',
    title: `${report.title}: ${machine.tag}`,
    pieces: [
      lines(line(`${markOf(report)}  ${report.standing}`, 'stamp'), ...startedLines(report)),
      ...(report.practice === undefined ? [] : [lines(...outcomeLines(report))]),
      ...verdictPieces(report),
      lines(line('Read this first', 'strong'), ...report.cautions.map((one) => line(one, 'caution'))),
      ...glancePieces(report),
      ...table(
        'What this is a report of',
        [
          { head: 'of', wide: 2 },
          { head: 'is', wide: 7 },
        ],
        [
          ['record', `${markOf(report)}, ${report.isClosed ? 'closed' : 'OPEN'}`],
          ['job', report.job],
          [
            'machine',
            `${machine.tag}, ${machine.title}; record edition ${machine.edition}${machine.invented ? ', invented' : ''}`,
          ],
          [
            'procedure',
            `${report.title}, edition ${procedure.edition}${procedure.invented ? ', invented' : ''}`,
          ],
          ['from, to', `${days}; time zone ${report.zone}`],
          ...(report.added.length === 0 ? [] : [['added since', report.added.join('; ')]]),
          ['people', peopleText(report)],
          ['log', `${report.entries} entries`],
          ['check number', report.head],
          ['program', `opened by Barover ${report.opened}, reported by ${report.reported}`],
        ],
      ),
      ...table(
        'What could be checked of the log',
        [
          { head: 'of', wide: 2 },
          { head: 'says', wide: 7 },
        ],
        report.checks.map(({ of, says }) => [of, says]),
      ),
    ],
  }
}

/** Of the job alone: who signed for something after its close stands with what was added. */
function peopleText({ people }: Report): string {
  const on = people.filter(({ since }) => !since)
  return on.length === 0 ? 'nobody signed on' : on.map(({ id, name }) => `${id} ${name}`).join('; ')
}

/** What the record tells of the start, and what hung on the machine then. */
function startedLines({ started }: Report): PaperLine[] {
  if (started === null) return []
  return [line(started.what, 'strong'), ...started.hung.map((one) => line(`  on then: ${one}`))]
}

/** More verdicts of ACCEPT than this stand in a line each, so that whoever turns two pages has seen all that is not. */
const MOST_WHOLE = 3

function areShort({ verdicts }: Report): boolean {
  return verdicts.filter(({ word }) => word === 'ACCEPT').length > MOST_WHOLE
}

function verdictPieces(report: Report): Piece[] {
  const { verdicts, fallen } = report
  if (verdicts.length + fallen.length === 0)
    return report.practice === undefined ? [lines(line('Nothing in it is judged.', 'strong'))] : []
  const short = areShort(report) ? verdicts.filter(({ word }) => word === 'ACCEPT') : []
  return [
    lines(
      line(verdicts.length === 0 ? 'Verdicts: none stands' : 'Verdicts', 'strong'),
      ...fallen.map(({ number, title, was, by }) =>
        line(`( VOID )  ${title}: was ${was}, fell with ${by}`, 'caution', { margin: number }),
      ),
      ...verdicts.filter((one) => !short.includes(one)).flatMap(verdictLines),
      ...short.map(({ number, title, isAgain, because: [why = ''] }) =>
        line(`( ACCEPT )  ${title}${isAgain ? ', measured again' : ''}${shortWhy(why)}`, 'plain', {
          margin: number,
        }),
      ),
    ),
  ]
}

/** The figure that governs, without its source: that stands with the verdict where it is told whole. */
function shortWhy(why: string): string {
  const [, name = '', used = ''] = /^(.+?)\sgoverns:\s.*?(-?[\d.]+\s%\sused)/.exec(why) ?? []
  return used === '' ? '' : `: ${name}, ${used}`
}

function verdictLines(verdict: Report['verdicts'][number]): PaperLine[] {
  const { number, title, word, isAgain, because, decided, left, readAgain } = verdict
  const end = left === null ? withoutVerdict(readAgain) : left === word ? '' : `left at ${left}`
  const done = [decided, end].filter((part) => part !== null && part !== '').join('; ')
  const isGood = word === 'ACCEPT' || word === 'MONITOR'
  return [
    line(`( ${word} )  ${title}${isAgain ? ', measured again' : ''}`, isGood ? 'strong' : 'caution', {
      margin: number,
    }),
    ...because.map((one) => line(`  ${one}`)),
    ...(done === '' ? [] : [line(`  ${done}`)]),
  ]
}

/** Every verdict with what governs, its source and what was decided; none where the cover has them whole. */
export function verdictsSections(report: Report): Section[] {
  if (!areShort(report)) return []
  const pieces = [lines(...report.verdicts.flatMap(verdictLines))]
  return [{ id: 'verdicts', title: 'Verdicts, each with what governs', pieces }]
}

/** Exceptions that the cover names, beside all that are open: with them a whole pull has its contents on the second page. */
const MOST_NAMED = 18

/** The worst of what is out of the ordinary, in a line each: a lead sees it before turning a page. */
function glancePieces({ exceptions }: Report): Piece[] {
  if (exceptions.length === 0) return []
  const named = exceptions.filter(({ open }, n) => open || n < MOST_NAMED)
  const more = exceptions.length - named.length
  return [
    lines(
      line('Out of the ordinary, worst first, in a line each', 'strong'),
      ...named.map(({ number, what, open }) =>
        line(`${open ? 'OPEN: ' : ''}${what}`, open ? 'caution' : 'plain', { margin: String(number) }),
      ),
      ...(more > 0 ? [line(`and ${more} more, in the section of that name`)] : []),
    ),
  ]
}

export function exceptionsSection({ exceptions, usual, leftOut }: Report): Section {
  const open = exceptions.filter((one) => one.open).length
  const count = exceptions.length
  return {
    id: 'exceptions',
    title: 'Out of the ordinary, worst first',
    pieces: [
      lines(
        line(
          count === 0
            ? 'Nothing was found. That is no word that the work was good.'
            : `${count} in all, ${open} still open.`,
        ),
        ...exceptions.flatMap(({ number, what, sentences, entries, open: isOpen }): PaperLine[] => [
          line(`${isOpen ? 'OPEN: ' : ''}${what}`, isOpen ? 'caution' : 'strong', { margin: String(number) }),
          ...sentences.map((one) => line(`  ${one}`)),
          ...(entries.length === 0 ? [] : [line(`  ${entriesText(entries)}`, 'faint')]),
        ]),
        line('As usual', 'strong'),
        line(`  ${usual.join('; ')}.`),
        ...(leftOut.length === 0 ? [] : [line('Left out by their own condition', 'strong')]),
        ...leftOut.map((one) => line(`  ${one}`)),
      ),
    ],
  }
}

/** Of many only how many there are, and where they begin and end. */
function entriesText(entries: readonly number[]): string {
  const [first] = entries
  if (entries.length === 1) return `entry ${first}`
  if (entries.length <= 8) return `entries ${entries.join(', ')}`
  return `${entries.length} entries, ${first} to ${entries.at(-1)}`
}

/** A figure that no verdict trusts is told beside it, in the table and below. */
const marked = (shown: string | null | undefined, held: string | null | undefined) =>
  shown == null ? '-' : held == null ? shown : `${shown} HOLD`

const onHold = (held: Report['changes'][number]['held']) =>
  held?.found == null ? '' : '; FROM A FIGURE THAT WAS MEASURED ON HOLD'

function heldNotes(changes: Report['changes']): string[] {
  const told = changes.flatMap(({ of, held }) => [
    ...(held?.found == null
      ? []
      : [`${of}, found on HOLD, no wear told from it is to be trusted: ${held.found}.`]),
    ...(held?.left == null ? [] : [`${of}, left on HOLD, no baseline: ${held.left}.`]),
  ])
  return [...new Set(told)]
}

export function changesSection({ changes, plots }: Report): Section {
  const notes = changes.flatMap(({ of, place, wear, hoursLeft, held }) => [
    ...(wear !== null && 'per1000' in wear
      ? [
          `${of}, ${place}: wear ${wear.per1000} in 1000 h, give or take ${wear.interval}; ${wear.readings} readings, ${wear.basis}${onHold(held)}.`,
        ]
      : []),
    ...(hoursLeft !== null && 'earliest' in hoursLeft
      ? [
          `${of}, ${place}: ${hoursLeft.limit.text} may be reached from ${Math.floor(hoursLeft.earliest)} h on${hoursLeft.expected === null ? '' : `, straight on ${Math.round(hoursLeft.expected)} h`}; ${hoursLeft.source}${onHold(held)}.`,
        ]
      : []),
  ])
  const why = changes.flatMap(({ wear, hoursLeft }) => [
    ...(wear !== null && 'refused' in wear ? [`No rate of wear: ${wear.refused}`] : []),
    ...(hoursLeft !== null && 'refused' in hoursLeft ? [`Hours left not told: ${hoursLeft.refused}`] : []),
  ])
  return {
    id: 'found-and-left',
    title: 'As found, as left and the last overhaul',
    pieces:
      changes.length === 0
        ? [lines(line('No step of this job reads as found or as left.'))]
        : [
            lines(
              line(
                'As read, not brought to 20 degC: no verdict rests on it. Changes are from unrounded means.',
              ),
            ),
            ...table(
              'Each place in its unit',
              [
                { head: 'of', wide: 3 },
                { head: 'where', wide: 4.4 },
                { head: 'unit', wide: 1 },
                { head: 'last', right: true, wide: 2 },
                { head: 'on', wide: 2.8 },
                { head: 'found', right: true, wide: 2 },
                { head: 'since last', right: true, wide: 2 },
                { head: 'left', right: true, wide: 2 },
                { head: 'found to left', right: true, wide: 2 },
              ],
              changes.map(({ of, place, last, found, left, worn, change, held }) => [
                of,
                place,
                (found ?? left)?.unit ?? '',
                last?.value.shown ?? '-',
                last?.on ?? '-',
                marked(found?.shown, held?.found),
                marked(worn, held?.found),
                marked(left?.shown, held?.left),
                change ?? '-',
              ]),
            ),
            lines(...[...heldNotes(changes), ...notes, ...new Set(why)].map((one) => line(one))),
            ...plotPieces(plots, ['wear']),
          ],
  }
}

export function plotPieces(plots: readonly Plot[], kinds: readonly Plot['kind'][]): Piece[] {
  return plots
    .filter(({ kind }) => kinds.includes(kind))
    .map((plot) => ({ is: 'plot', scene: sceneOf(plot) }))
}
