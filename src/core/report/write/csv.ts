// The figures of a job as a table for a spreadsheet: RFC 4180, one line for each, raw and in SI, the unit in the head of its
// column. Nothing in it is ever a formula: a cell of words that could be taken for one has an apostrophe before it.
import { markOf } from '../../job/paper.ts'
import type { QuantityKind } from '../../units/index.ts'
import { SI_UNIT } from '../parts/figure.ts'
import type { Report } from '../schema.ts'
import type { Figure } from '../schema-words.ts'

type What = 'reading' | 'counts as' | 'evidence' | 'judged' | 'limit' | 'session'

interface Line {
  readonly what: What
  readonly entry?: number
  readonly at?: string
  readonly by?: string | null
  readonly number: string
  readonly name: string
  readonly instrument?: string | null
  readonly keyed?: string
  readonly stands?: string
  readonly figure: Figure | null
  readonly remark?: string | null
}

const WORDS = [
  ...(['record', 'job', 'machine', 'what', 'entry', 'at', 'by', 'step', 'place', 'name'] as const),
  ...(['instrument', 'keyed', 'stands', 'remark'] as const),
]

/** Tells spreadsheets that it is UTF-8; readers of CSV leave it out. */
const MARK = '\ufeff'

export function reportCsv(report: Report): string {
  const all = linesOf(report)
  const figures = all.flatMap(({ figure }) => (figure === null ? [] : [figure]))
  const units = [...new Set(figures.map(({ unit }) => unit))].sort()
  const kinds = [...new Set(figures.map(({ kind }) => kind))].sort()
  const head = [...WORDS, ...units.map((unit) => `value [${unit}]`), ...kinds.map(siHead)]
  const rows = all.map((one) => [
    ...wordsOf(report, one),
    ...units.map((unit) => (one.figure?.unit === unit ? one.figure.shown : '')),
    ...kinds.map((kind) => (one.figure?.kind === kind ? siText(one.figure.si) : '')),
  ])
  return MARK + [head, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

/** `SI length [m]`; the kind is named, as a fraction of LEL and one by volume have no unit to tell them apart. */
function siHead(kind: string): string {
  return `SI ${kind.replaceAll('-', ' ')} [${SI_UNIT[kind as QuantityKind] ?? '1'}]`
}

/** To fifteen figures, as more is what adding in binary leaves; never in a form that a spreadsheet reads as words. */
function siText(si: number): string {
  return String(Number(si.toPrecision(15)))
}

function wordsOf({ record, paper, job, machine }: Report, one: Line): string[] {
  const { what, entry, at, by, number, name, instrument, keyed, stands, remark } = one
  return [
    markOf({ record, paper }),
    job,
    machine.tag,
    what,
    entry === undefined ? '' : String(entry),
    at ?? '',
    by ?? '',
    ...stepAndPlace(number),
    name,
    instrument ?? '',
    keyed ?? '',
    stands ?? '',
    remark ?? '',
  ]
}

/** What stands beside it on paper, and why it was kept. */
function remarkOf({ kept, paper }: Report['readings'][number]['places'][number]['readings'][number]) {
  const parts = [
    ...(paper === undefined ? [] : [paper]),
    ...(kept === null ? [] : [`doubted, kept: ${kept}`]),
  ]
  return parts.length === 0 ? null : parts.join('; ')
}

/** Apart: a spreadsheet would take place 10 of step 7 for 7.1. */
function stepAndPlace(number: string): [string, string] {
  const [step = '', place = ''] = number.split('.')
  return [step, place]
}

const PLAIN_NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:e[+-]?\d+)?$/
/** What spreadsheets take for the beginning of a formula, in the wide forms of some keyboards too, and with spaces before. */
const FORMULA = /^\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/

/** A figure stays as it is, a minus before it too. Words are always quoted, so that no sign in them ends the cell. */
export function cell(text: string): string {
  if (text === '' || PLAIN_NUMBER.test(text)) return text
  const safe = FORMULA.test(text) ? `'${text}` : text
  return `"${safe.replaceAll('"', '""')}"`
}

function linesOf(report: Report): Line[] {
  return [...practiceLines(report), ...readingLines(report), ...evidenceLines(report), ...limitLines(report)]
}

/** The sheet of a practice session; its marks are counts, not figures with a unit, so they stand with the words. */
function practiceLines({ practice }: Report): Line[] {
  if (practice === undefined) return []
  const said = (name: string, remark: string): Line => ({
    what: 'session',
    number: '',
    name,
    by: practice.who,
    figure: null,
    remark,
  })
  const { safety, isOver, isPassed, scores, hints, hidden, expected } = practice
  return [
    said('safety, apart from all else', safety),
    said('session', isOver ? (isPassed ? 'passed' : 'NOT passed') : 'not over'),
    ...scores.map(({ skill, right, of }) =>
      said(`skill ${skill}`, of === 0 ? 'did not come up' : `${right} of ${of} right`),
    ),
    said('hints', `${hints} asked for`),
    ...hidden.map(({ name, isNamed }) => said(`hidden: ${name}`, isNamed ? 'named' : 'NOT named')),
    ...expected.map(({ says, isFound }) => said(`expected: ${says}`, isFound ? 'found' : 'NOT found')),
    said('next', practice.next),
    said('again', practice.again),
  ]
}

function readingLines({ readings }: Report): Line[] {
  return readings.flatMap(({ places }) =>
    places.flatMap(({ number, name, value, spread, why, readings: all }): Line[] => [
      ...all.map(
        (one): Line => ({
          what: 'reading',
          entry: one.seq,
          at: one.at,
          by: one.by,
          number,
          name,
          instrument: one.instrument,
          keyed: one.typed,
          stands: one.counts,
          figure: one.value,
          remark: remarkOf(one),
        }),
      ),
      {
        what: 'counts as',
        number,
        name,
        figure: value,
        remark: why ?? (spread === null ? null : `spread ${spread}`),
      },
    ]),
  )
}

/** What was read at hold points; what was typed out in words is no figure. */
function evidenceLines({ gates }: Report): Line[] {
  return gates.flatMap(({ number, openings }) =>
    openings.flatMap(({ evidence }) =>
      evidence
        .filter(({ value }) => value !== null)
        .map(
          (one): Line => ({
            what: 'evidence',
            at: one.at,
            by: one.by,
            number,
            name: one.item,
            instrument: one.instrument,
            keyed: one.shown,
            figure: one.value,
            remark: one.age === null ? null : `${Math.ceil(one.age)} s old when the hold point was complete`,
          }),
        ),
    ),
  )
}

function limitLines({ limits }: Report): Line[] {
  return limits.flatMap((one): Line[] => [
    {
      what: 'judged',
      number: one.number,
      name: one.judged,
      stands: one.word,
      figure: one.value,
      remark: one.U === null ? null : `U ${one.U.text}, k = 2`,
    },
    {
      what: 'limit',
      number: one.number,
      name: `${one.judged}, ${one.bound}`,
      figure: one.limit,
      remark: [`${one.from}: ${one.source}`, ...(one.rule === null ? [] : [one.rule])].join('; '),
    },
  ])
}
