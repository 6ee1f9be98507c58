// A machine record that was changed while the job ran: what differs, who signed, and what it had come to by the record before.
// And what was said or taken from the job after it was closed.
import { leftFigures } from '../../job/adopt.ts'
import { changedText } from '../../job/record-words.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look, namedById, sentence } from '../look.ts'

export function takenIn(look: Look): Found[] {
  return look.moves.flatMap(({ entry, before }): Found[] => {
    if (entry.type !== 'record.taken-in') return []
    const { changed, voids, undecided, gates, anew, tests, dropped } = entry
    const word = (id: string) => {
      const verdict = before.verdicts[id]
      return verdict === undefined || verdict.void
        ? ''
        : `, ${verdict.verdict.result.verdict} by the record before`
    }
    const named = (ids: readonly string[]) => ids.map((id) => namedById(look, id)).join('; ')
    return [
      {
        kind: 'record',
        what: `Machine record changed on the job, ${byWhom(look, entry)}: ${changed.map(({ field }) => field).join('; ')}`,
        sentences: [
          ...changed.map((one) => sentence(capital(changedText(one)))),
          sentence(`Because: ${entry.why}`),
          ...(voids.length === 0
            ? []
            : [`Void with it: ${voids.map((id) => `${namedById(look, id)}${word(id)}`).join('; ')}.`]),
          ...(undecided.length === 0 ? [] : [`Decided anew, or still to be: ${named(undecided)}.`]),
          ...(anew.length === 0 ? [] : [`Answers about the record that do not stand by it: ${named(anew)}.`]),
          ...(gates.length === 0 ? [] : [`Hold points that fell with it: ${named(gates)}.`]),
          ...(tests.length === 0 ? [] : [`Tests over time that begin anew with it: ${tests.join('; ')}.`]),
          ...(dropped.length === 0 ? [] : ['A reading that waited to be settled was not used.']),
        ],
        entries: [...dropped, entry.seq],
        open: false,
      },
    ]
  })
}

/** Words of a lead after the close, and a baseline that was adopted from figures which fell since. */
export function saidAfterwards(look: Look): Found[] {
  return [
    ...entriesOf(look, 'remark.made').map(
      (e): Found => ({
        kind: 'remark',
        what: `Remark after the close, ${byWhom(look, e)}: ${e.text}`,
        sentences: [],
        entries: [e.seq],
        open: false,
      }),
    ),
    ...fallenBaseline(look),
    ...heldBaseline(look),
  ]
}

function fallenBaseline(look: Look): Found[] {
  const { adopted } = look.state
  const entry = entriesOf(look, 'left.adopted').at(-1)
  if (adopted === null || !adopted.void || entry === undefined) return []
  return [
    {
      kind: 'baseline',
      what: `BASELINE ADOPTED FROM FIGURES THAT FELL SINCE, ${byWhom(look, entry)}, in ${entry.file.name}`,
      sentences: [
        'An instrument that read on this job was found out of calibration after it.',
        'Take its figures out of the machine record, or adopt anew what still stands: barover adopt.',
      ],
      entries: [entry.seq],
      open: true,
    },
  ]
}

/** Adopted before sizes that were measured on HOLD were left out: they stand in a record, unmarked. */
function heldBaseline(look: Look): Found[] {
  const { adopted } = look.state
  const entry = entriesOf(look, 'left.adopted').at(-1)
  if (adopted === null || adopted.void || entry === undefined) return []
  const held = leftFigures(look.defs, look.state).not.filter(
    ({ of, measuring }) => measuring === true && entry.figures.some((one) => one.of === of),
  )
  if (held.length === 0) return []
  return [
    {
      kind: 'baseline',
      what: `BASELINE ADOPTED FROM FIGURES THAT WERE MEASURED ON HOLD, ${byWhom(look, entry)}, in ${entry.file.name}`,
      sentences: [
        ...held.map(({ of, why }) => `${capital(of)}: ${why.replace(/[.]$/, '')}.`),
        'Take these figures out of the machine record: wear told from them is not to be trusted.',
      ],
      entries: [entry.seq],
      open: true,
    },
  ]
}

function capital(text: string): string {
  return text.replace(/^./, (first) => first.toUpperCase())
}
