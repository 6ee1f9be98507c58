// Instruments out of calibration, used past their day, or put back.
import { instrumentById } from '../../job/definitions.ts'
import type { Entry } from '../../job/entries.ts'
import { instrumentName } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, count, entriesOf, type Look, namedById, sentence } from '../look.ts'

export function instruments(look: Look): Found[] {
  return [...doubted(look), ...pastDue(look), ...putBack(look)]
}

function doubted(look: Look): Found[] {
  return entriesOf(look, 'instrument.doubted').map((e) => ({
    kind: 'instrument',
    what: `${e.instrument} OUT OF CALIBRATION, ${byWhom(look, e)}; ${voidText(look, e)} void`,
    sentences: [
      sentence(`${clause(e.why)}, says ${e.says}`),
      ...(e.voids.length === 0
        ? []
        : [`Void with it: ${e.voids.map((id) => namedById(look, id)).join('; ')}.`]),
      ...(e.person === undefined ? [] : [`${e.person} signed for it after the job was closed.`]),
    ],
    entries: [e.seq, ...e.readings],
    open: false,
    grave: 0,
  }))
}

/** Readings of the work, and lines of hold points that were read with it. */
function voidText(look: Look, { readings }: Extract<Entry, { type: 'instrument.doubted' }>): string {
  const shown = entriesOf(look, 'evidence.given').filter(({ seq }) => readings.includes(seq)).length
  const read = readings.length - shown
  return [
    ...(read === 0 && shown > 0 ? [] : [count(read, 'reading')]),
    ...(shown === 0 ? [] : [`${count(shown, 'line')} of hold points`]),
  ].join(' and ')
}

/** The engine refuses one that is past its day: only a log from elsewhere, or a register that changed, holds such readings. */
function pastDue(look: Look): Found[] {
  const late = new Map<string, Entry[]>()
  for (const entry of look.entries) {
    const id =
      'instrument' in entry && ('typed' in entry || 'reading' in entry) ? entry.instrument : undefined
    if (id === undefined) continue
    const due = instrumentById(look.defs, id)?.calibration.due
    if (due !== undefined && entry.at.slice(0, 10) <= due) continue
    late.set(id, [...(late.get(id) ?? []), entry])
  }
  return [...late].map(([id, entries]) => {
    const due = instrumentById(look.defs, id)?.calibration.due
    return {
      kind: 'instrument',
      what: `${id} read ${count(entries.length, 'time')} ${due === undefined ? 'and is in no register of this job' : `after its calibration had lapsed on ${due}`}`,
      sentences: [`It is ${instrumentName(look.defs, id)}.`],
      entries: entries.map((e) => e.seq),
      open: true,
      grave: 0,
    }
  })
}

function putBack(look: Look): Found[] {
  return look.moves.flatMap(({ entry, before }): Found[] =>
    entry.type !== 'instrument.put-back'
      ? []
      : [
          {
            kind: 'instrument',
            what: `${before.seats[entry.seat] ?? 'An instrument'} put back, ${byWhom(look, entry)}: ${entry.why}`,
            sentences: [],
            entries: [entry.seq],
            open: false,
            grave: 1,
          },
        ],
  )
}
