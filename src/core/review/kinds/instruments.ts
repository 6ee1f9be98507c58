// Instruments out of calibration, used past their day, or put back.
import { asKind, instrumentById, stepById } from '../../job/definitions.ts'
import type { Entry } from '../../job/entries.ts'
import { keyLabel } from '../../job/item-label.ts'
import { stands } from '../../job/state.ts'
import { instrumentName, placeName, placeNumber } from '../../talk/names.ts'
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
      ...(e.temperatures === undefined
        ? []
        : [
            `${count(e.temperatures.length, 'temperature')} taken for what it read fell too: of its body, and of the metal behind its readings.`,
          ]),
      ...takenAgain(look, e),
      ...(e.person === undefined ? [] : [`${e.person} signed for it after the job was closed.`]),
    ],
    entries: [e.seq, ...e.readings, ...(e.temperatures ?? [])],
    open: false,
    grave: 0,
  }))
}

/** Of what fell with it: what was taken once more since, with which instrument, and what was not. */
function takenAgain(look: Look, doubt: Extract<Entry, { type: 'instrument.doubted' }>): string[] {
  const since = look.entries.filter(({ seq }) => seq > doubt.seq)
  const told = [...doubt.readings, ...(doubt.temperatures ?? [])].flatMap((seq) => {
    const was = look.entries[seq]
    if (was === undefined) return []
    const again = since.find((entry) => isSamePlace(look, was, entry))
    const name = nameOf(look, was)
    return name === null ? [] : [{ name, again }]
  })
  const yes = new Map<string, string>()
  const no = new Set<string>()
  for (const { name, again } of told) {
    if (again === undefined) no.add(name)
    else {
      const by = 'instrument' in again && again.instrument !== undefined ? ` with ${again.instrument}` : ''
      yes.set(name, `${name}${by}, ${byWhom(look, again)}`)
    }
  }
  return [
    ...(yes.size === 0 ? [] : [`Taken again since: ${[...yes.values()].join('; ')}.`]),
    ...(no.size === 0 ? [] : [`NOT taken again: ${[...no].join('; ')}.`]),
  ]
}

/** A reading that stands of the same place, or a line of a hold point that was given anew. */
function isSamePlace({ state }: Look, was: Entry, entry: Entry): boolean {
  if ('place' in was && 'place' in entry && was.place !== undefined)
    return (
      entry.place === was.place &&
      (state.readings[was.place] ?? []).some((one) => one.seq === entry.seq && stands(one))
    )
  return (
    was.type === 'evidence.given' &&
    entry.type === 'evidence.given' &&
    entry.step === was.step &&
    entry.item === was.item
  )
}

function nameOf({ defs }: Look, was: Entry): string | null {
  if (was.type === 'evidence.given') {
    const placed = stepById(defs, was.step)
    return `${placed.number} ${keyLabel(defs, asKind(placed, 'gate'), was.item)}`
  }
  return 'place' in was && 'step' in was && typeof was.place === 'string' && was.step !== null
    ? `${placeNumber(defs, was.step, was.place)} ${placeName(defs, was.step, was.place)}`
    : null
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
    // One picked by mistake that read nothing touched nothing: it stands in the log, and nobody is asked about it.
    entry.type !== 'instrument.put-back' || entry.mispicked !== undefined
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
