// Of a job keyed from a sheet: that it is one, first of all; then whether its hold points would have held by the times on it, what is
// blank, what was decided or worked out on paper otherwise than here, and who signed for the keying.
import { personById } from '../../job/definitions.ts'
import {
  FROM_PAPER,
  NOT_ENFORCED_BY,
  type PaperState,
  rowOf,
  type SheetRow,
  UNREAD_TEXT,
} from '../../job/paper.ts'
import { paperGates } from '../../job/paper-gate.ts'
import { minutesOnSheet } from '../../job/paper-line.ts'
import { ENDS, FRONT, SIGNED_BY } from '../../job/paper-rows.ts'
import { testFaults } from '../../job/paper-test.ts'
import { standingVerdict } from '../../job/state.ts'
import { list } from '../../lib/wording.ts'
import { placeName, placeNumber } from '../../talk/names.ts'
import { boxName } from '../../talk/sheet-names.ts'
import type { Found } from '../exception.ts'
import { byWhom, count, type Look, named, sentence } from '../look.ts'

type Of = Omit<Found, 'kind'>

export function fromPaper(look: Look): Found[] {
  const { paper } = look.state
  if (paper === null) return []
  return [
    head(paper),
    ...marks(look, paper),
    ...front(look, paper),
    ...gates(look, paper),
    ...tests(look, paper),
    ...stops(paper),
    ...verdicts(look, paper),
    ...decisions(look, paper),
    ...ends(look, paper),
    ...blanks(look, paper),
    ...times(look, paper),
    ...putRight(look),
  ].map((one, n) => ({ kind: 'paper', grave: n, ...one }))
}

function head(paper: PaperState): Of {
  const day = rowOf(paper, null, FRONT.day)?.text ?? 'no day on it'
  const keyed = paper.keyers
  return {
    what: `${FROM_PAPER.charAt(0).toUpperCase()}${FROM_PAPER.slice(1)}: ${NOT_ENFORCED_BY}`,
    sentences: [
      'It is what stands on a sheet, keyed in afterwards: no hold point of it was ever open here, and none of it counts for any other job.',
      `Sheet: ${day}; written by ${paper.writers.length === 0 ? 'nobody named' : list([...paper.writers])}; keyed by ${keyed.length === 0 ? 'nobody' : list([...keyed])}.`,
      paper.keyedBy === null
        ? 'Nobody has signed that all of it is keyed as it stands.'
        : `Signed as keyed by ${paper.keyedBy}.`,
      paper.comparedBy === null
        ? 'No lead has compared it with the sheet: one who keyed none of it takes it up with barover resume, the paper beside, and signs.'
        : `Compared with the sheet by ${paper.comparedBy}.`,
    ],
    entries: [0],
    open: paper.comparedBy === null,
  }
}

/** The foot of the sheet against the files it is keyed with. */
function marks({ defs }: Look, paper: PaperState): Of[] {
  const row = rowOf(paper, null, FRONT.marks)
  if (row === undefined) return []
  const { procedure, edition } = defs.procedure
  const text = row.text ?? ''
  // The check mark is made from the procedure and all else: alone it says the whole of it.
  if (/^(?:check mark:?\s+)?(\S+)$/i.exec(text.trim())?.[1]?.toLowerCase() === paper.mark) return []
  const wants = [
    { is: text.toLowerCase().includes(procedure.toLowerCase()), what: `procedure ${procedure}` },
    { is: text.split(/[\s,;]+/).includes(String(edition)), what: `edition ${edition}` },
    { is: text.toLowerCase().includes(paper.mark), what: `check mark ${paper.mark}` },
  ].filter(({ is }) => !is)
  if (wants.length === 0) return []
  return [
    {
      what: `The sheet was printed from other files: not on it ${list(wants.map(({ what }) => what))}`,
      sentences: [
        row.text === null ? 'Its foot is blank, or was not keyed.' : sentence(`Its foot says ${row.text}`),
        'Steps, limits and boxes may be others than those it was keyed by.',
      ],
      entries: [row.seq],
      open: false,
    },
  ]
}

/** Which machine it was, and who was there: without these nobody can tell whose sheet it is. */
function front({ defs }: Look, paper: PaperState): Of[] {
  const plate = rowOf(paper, null, FRONT.plate)
  const people = rowOf(paper, null, FRONT.people)
  const ids = (people?.text ?? '').split(/[\s,;]+/).filter((id) => id !== '')
  const unknown = ids.filter((id) => personById(defs, id.toUpperCase()) === undefined)
  const told = (row: SheetRow | undefined, what: string, sentence: string): Of[] =>
    row === undefined ? [] : [{ what, sentences: [sentence], entries: [row.seq], open: false }]
  return [
    ...(plate?.text === null
      ? told(
          plate,
          `Plate on the cylinder: ${plate.who === null ? 'BLANK' : `signed by ${plate.who}, and no tag stands there`}`,
          'Nobody wrote that it was this machine.',
        )
      : []),
    ...(people?.text === null
      ? told(
          people,
          'Who is on the job: BLANK',
          'Lines that each person fills in at a hold point, like a lock of their own, were asked of nobody.',
        )
      : []),
    ...(unknown.length === 0
      ? []
      : told(
          people,
          `Who is on the job: ${list(unknown)} in no crew file`,
          'Lines that each person fills in at a hold point were not asked of them.',
        )),
  ]
}

function gates({ defs, state }: Look, paper: PaperState): Of[] {
  return paperGates(defs, state, paper).flatMap(({ gate, why, seqs }): Of[] =>
    why.length === 0
      ? []
      : [
          {
            what: `On paper: ${named(gate)} WOULD HAVE HELD, ${count(why.length, 'reason')}`,
            sentences: why.map((one) => sentence(`On paper: ${one}`)),
            entries: seqs,
            open: false,
          },
        ],
  )
}

/** Figures of such a test are HOLD; what was only looked at at its end says no more than they. */
function tests({ defs, state }: Look, paper: PaperState): Of[] {
  return defs.overTime.flatMap((test): Of[] => {
    const seqs = Object.values(paper.rows).flatMap(({ step, seq }) =>
      step !== null && test.steps.includes(step) ? [seq] : [],
    )
    const keyed = test.end.some((id) => Object.values(paper.rows).some(({ step }) => step === id))
    const why = keyed ? testFaults(defs, state, paper, test) : []
    return why.length === 0
      ? []
      : [
          {
            what: `${test.title}: NO TEST by the times on the sheet`,
            sentences: [...why, 'What was read or seen at its end says nothing of the part.'],
            entries: seqs,
            open: false,
          },
        ]
  })
}

function stops(paper: PaperState): Of[] {
  return written(paper, 'stop').map((row) => ({
    what: `STOP on the sheet: ${row.text ?? ''}`,
    sentences: [`${beside(row)}.`, 'Whether it was released stands on the sheet and nowhere else.'],
    entries: [row.seq],
    open: false,
  }))
}

/** A verdict by hand beside the one that is worked out here: two words for one part. */
function verdicts({ defs, state }: Look, paper: PaperState): Of[] {
  return defs.steps.flatMap((placed): Of[] => {
    const row = placed.step.kind === 'judge' ? rowOf(paper, placed.id, 'verdict') : undefined
    const own = standingVerdict(state, placed.id)?.verdict.result.verdict ?? null
    if (row?.text === undefined || row.text === null) return []
    if (
      own !== null &&
      row.text
        .toUpperCase()
        .split(/[^A-Z]+/)
        .includes(own)
    )
      return []
    return [
      {
        what: `${named(placed)}: the sheet says ${row.text}; worked out here ${own ?? 'nothing'}`,
        sentences: [
          `${beside(row)}.`,
          'What is worked out here stands; what was done by the other is not known.',
        ],
        entries: [row.seq],
        open: false,
      },
    ]
  })
}

function decisions({ defs, state }: Look, paper: PaperState): Of[] {
  return defs.steps.flatMap((placed): Of[] => {
    const row = placed.step.kind === 'decide' ? rowOf(paper, placed.id, 'decision') : undefined
    if (row === undefined) return []
    const set = state.dispositions[placed.id]
    const own = set === undefined || set.void ? null : set.choice
    const says = row.text?.toLowerCase() ?? null
    if (own !== null && says?.split(/[^a-z]+/).includes(own) === true) return []
    return [
      {
        what: `${named(placed)}: decided on the sheet ${row.text ?? 'nothing'}; signed for ${own === null ? 'by nobody' : `${own} by ${set?.person ?? ''}`}`,
        sentences: [`${beside(row)}.`],
        entries: [row.seq, ...(set === undefined ? [] : [set.seq])],
        open: own === null,
      },
    ]
  })
}

/** Lines at the end of the sheet, and who did not sign it. */
function ends(look: Look, paper: PaperState): Of[] {
  const lines = ENDS.filter(({ row }) => row !== 'stop').flatMap(({ row }) => written(paper, row))
  const unsigned = SIGNED_BY.filter(({ row }) => {
    const one = rowOf(paper, null, row)
    return one !== undefined && one.text === null && one.who === null
  })
  const ended = rowOf(paper, null, FRONT.ended)
  return [
    ...lines.map((one) => ({
      what: `${boxName(look.defs, one)}: ${one.text ?? ''}`,
      sentences: [`${beside(one)}.`],
      entries: [one.seq],
      open: false,
    })),
    ...unsigned.map(({ row, label }) => ({
      what: `${label}: BLANK`,
      sentences: ['Nobody signed the sheet there.'],
      entries: [rowOf(paper, null, row)?.seq ?? 0],
      open: false,
    })),
    ...(ended !== undefined && ended.text === null
      ? [
          {
            what: 'The sheet does not say that the work ended',
            sentences: [
              'Until this job is closed, people count as behind its hold points for every other job.',
            ],
            entries: [ended.seq],
            open: look.state.closed === null,
          },
        ]
      : []),
  ]
}

function blanks({ defs, state }: Look, paper: PaperState): Of[] {
  const places = Object.entries(paper.unread).filter(([place]) => state.notApplicable[place] !== undefined)
  const boxes = Object.values(paper.rows).filter(
    ({ step, text, row }) =>
      step !== null &&
      text === null &&
      defs.steps.find(({ id }) => id === step)?.step.kind !== 'gate' &&
      !['verdict', 'decision', 'instrument'].includes(row),
  )
  return [
    ...(places.length === 0
      ? []
      : [
          {
            what: `${count(places.length, 'place')} without a value on the sheet`,
            sentences: places.map(([place, { is }]) => {
              const step = place.slice(0, place.indexOf('.'))
              return `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}: ${state.notApplicable[place] ?? UNREAD_TEXT[is]}.`
            }),
            entries: places.map(([, { seq }]) => seq),
            open: false,
          },
        ]),
    ...(boxes.length === 0
      ? []
      : [
          {
            what: `${count(boxes.length, 'box', 'boxes')} blank on the sheet`,
            sentences: boxes.map((one) => `${boxName(defs, one)}.`),
            entries: boxes.map(({ seq }) => seq),
            open: false,
          },
        ]),
  ]
}

/** Times that go back, or that are not there; initials of nobody in the crew file. */
function times({ defs, entries }: Look, paper: PaperState): Of[] {
  const rows = Object.values(paper.rows)
  const back = entries.filter((e) => 'paper' in e && typeof e.paper === 'object' && e.paper.back === true)
  const none = rows.filter(({ time, who }) => time === null && who !== null)
  const unknown = paper.writers.filter((id) => defs.crew.crew.every((person) => person.id !== id))
  const begun = rowOf(paper, null, FRONT.begun)?.text ?? null
  const ended = rowOf(paper, null, FRONT.ended)?.text ?? null
  const outside = rows.filter(
    ({ step, time }) =>
      step !== null && ((minutesOnSheet(begun, time) ?? 0) < 0 || (minutesOnSheet(time, ended) ?? 0) < 0),
  )
  const found = (what: string, sentences: string[], seqs: number[]): Of[] =>
    seqs.length === 0 ? [] : [{ what, sentences, entries: seqs, open: false }]
  return [
    ...found(
      `${count(back.length, 'time')} on the sheet before the line above`,
      ['Asked about when it was keyed, and it is what the sheet says.'],
      back.map(({ seq }) => seq),
    ),
    ...found(
      `${count(outside.length, 'line')} of steps outside the time that the front of the sheet has for the work`,
      [`On its front: begun ${begun ?? 'at no time'}, ended ${ended ?? 'at no time'}.`],
      outside.map(({ seq }) => seq),
    ),
    ...found(
      `${count(none.length, 'line')} signed on the sheet without a time`,
      ['When that was done is not known.'],
      none.map(({ seq }) => seq),
    ),
    ...found(
      `Initials on the sheet of nobody in the crew file: ${list([...unknown])}`,
      ['Who that is has to be told by the sheet.'],
      rows.filter(({ who }) => who !== null && unknown.includes(who)).map(({ seq }) => seq),
    ),
  ]
}

/** Boxes that were keyed wrong first: figures are told with all corrections. */
function putRight(look: Look): Of[] {
  return look.entries.flatMap((entry): Of[] => {
    if (entry.type !== 'paper.row' || entry.of === undefined) return []
    const old = look.entries[entry.of]
    const was = old?.type === 'paper.row' ? (old.says ?? 'blank') : '?'
    return [
      {
        what: `${boxName(look.defs, entry)}: ${was}, now ${entry.says ?? 'blank'}, ${byWhom(look, entry)}`,
        sentences: [sentence(`Keyed wrong: ${entry.why ?? ''}`)],
        entries: [entry.of, entry.seq],
        open: false,
      },
    ]
  })
}

function written(paper: PaperState, row: string): SheetRow[] {
  return Object.values(paper.rows).filter(
    (one) => one.step === null && one.row.startsWith(`${row}.`) && one.text !== null,
  )
}

function beside({ time, who }: SheetRow): string {
  return `On the sheet: ${time ?? 'no time'}, ${who ?? 'no initials'}`
}
