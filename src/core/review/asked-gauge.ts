// Whether a gauge was good, asked at a review: what it read on its standard comes before the day until which it counts, as one that reads
// off inside its day is off. Each from entries; that it was good is never said.
import { asKind, instrumentById, type PlacedStep, stepById } from '../job/definitions.ts'
import { defsAt } from '../job/editions.ts'
import type { Entry } from '../job/entries.ts'
import { applicability } from '../job/next.ts'
import { isSetCheck, offStandard } from '../job/off-standard.ts'
import { gaugeById } from '../job/seats.ts'
import { stands } from '../job/state.ts'
import { type Block, row } from '../sheet/block.ts'
import { instrumentName, placeName, placeNumber, readingText, workedText } from '../talk/names.ts'
import { entriesText, heading, isTag, notTold, type OnRecord, said, saidOf, tagsIn } from './asked-entries.ts'
import { heldIn, wordsAsked } from './asked-words.ts'
import type { Exception } from './exception.ts'
import { byWhom, clause, count, named, when } from './look.ts'

type SetRead = Extract<
  Entry,
  { type: 'reading.taken' | 'reading.doubted' | 'reading.late' | 'reading.corrected' }
>

interface SetCheckRead {
  readonly entry: SetRead
  /** `6 Set-check before: 9.5006 in, 0.0006 in over the standard, and 0.0002 in is allowed`. */
  readonly text: string
  readonly isOff: boolean
}

/** Every set-check of these instruments that was keyed, in the order of the log; those that did not stay too. */
function setChecksOf(record: OnRecord, ids: readonly string[]): SetCheckRead[] {
  return record.entries.flatMap((entry): SetCheckRead[] => {
    if (!isSetRead(entry) || !ids.includes(entry.instrument)) return []
    const defs = record.editions === undefined ? record.defs : defsAt(record.editions, entry.seq)
    const placed = defs.steps.find(({ id }) => id === entry.step)
    if (placed === undefined || !isSetCheck(placed)) return []
    const off = offStandard(defs, placed, entry)
    const name = `${placeNumber(defs, entry.step, entry.place)} ${placeName(defs, entry.step, entry.place)}`
    const reads = `${name} with ${entry.instrument}: ${readingText(defs, entry).replace(/\s+/g, ' ')}`
    const within = gaugeById(defs, entry.instrument)?.set_check.within.text
    return [
      {
        entry,
        isOff: off !== null,
        text:
          off === null
            ? `${reads}, within ${within ?? 'what is allowed'} of the standard`
            : `${reads}, ${workedText(defs, entry, Math.abs(off.off))} ${off.off < 0 ? 'UNDER' : 'OVER'} the standard, and ${off.within} is allowed`,
      },
    ]
  })
}

const isSetRead = (entry: Entry): entry is SetRead =>
  entry.type === 'reading.taken' ||
  entry.type === 'reading.doubted' ||
  entry.type === 'reading.late' ||
  entry.type === 'reading.corrected'

/** `06:30 RO: ... (entry 28); KEPT by RO 06:30 (entry 29), because: ...`. */
function checkLine(record: OnRecord, { entry, text, isOff }: SetCheckRead): string {
  const line = `${when(record, entry)} ${entry.by ?? 'nobody signed on'}: ${text} (entry ${entry.seq})`
  return isOff || entry.type === 'reading.doubted'
    ? `${line}; ${fateText(record, entry)}.`
    : `${line}${sinceText(record, entry)}.`
}

function fateText(record: OnRecord, entry: SetRead): string {
  const { entries, state } = record
  if (entry.type === 'reading.doubted') {
    const end = entries.find((e) => e.type === 'doubt.settled' && e.seq > entry.seq)
    if (end?.type !== 'doubt.settled') return 'doubted, and not answered by this log'
    if (end.choice !== 'kept')
      return `not kept, by ${byWhom(record, end)} (entry ${end.seq}): another was keyed or taken`
    const why = clause(end.why ?? '')
    return `KEPT by ${byWhom(record, end)} (entry ${end.seq}), ${why === '' ? 'no reason is on record' : `because: ${why}`}${sinceText(record, entry)}`
  }
  const one = Object.values(state.readings)
    .flat()
    .find(({ seq }) => seq === entry.seq)
  if (entry.type === 'reading.late' && one === undefined) return 'keyed late, and not kept'
  const taken =
    entry.type === 'reading.corrected'
      ? `corrected so, because: ${clause(entry.why)}`
      : 'taken so, no reason beside it is on record'
  return `${taken}${sinceText(record, entry)}`
}

const standsIn = ({ state }: OnRecord, { seq }: SetRead) =>
  Object.values(state.readings)
    .flat()
    .some((one) => one.seq === seq && stands(one))

/** What became of one that does not stand any more. */
function sinceText({ state }: OnRecord, { seq }: SetRead): string {
  const one = Object.values(state.readings)
    .flat()
    .find((reading) => reading.seq === seq)
  if (one === undefined || stands(one)) return ''
  return one.correctedBy !== null
    ? `; corrected since (entry ${one.correctedBy})`
    : `; void since${one.voidBy === null ? '' : ` (entry ${one.voidBy})`}`
}

/** What was out, for the answers to other questions: a line each, of those among `seqs` only where they are given. */
export function offLines(record: OnRecord, seqs?: readonly number[]): string[] {
  const ids = idsRead(record)
  return setChecksOf(record, ids)
    .filter(({ entry, isOff }) => isOff && (seqs === undefined || seqs.includes(entry.seq)))
    .map((one) => checkLine(record, one))
}

/** What was out, by its entry: `17 Set-check after with M-3: 9.5006 in, 0.0006 in OVER the standard, ...`. */
export function offTexts(record: OnRecord): ReadonlyMap<number, string> {
  return new Map(
    setChecksOf(record, idsRead(record))
      .filter(({ isOff }) => isOff)
      .map(({ entry, text }) => [entry.seq, text]),
  )
}

const idsRead = ({ entries }: OnRecord): string[] => [
  ...new Set(entries.flatMap((e) => ('instrument' in e && e.instrument !== undefined ? [e.instrument] : []))),
]

/** Off its standard first, then what was found out otherwise, then its day and where it read. Null: no instrument of the log is meant. */
export function gaugeTold(record: OnRecord, asked: string): Block[] | null {
  const ids = meantIds(record, asked)
  if (ids === null) return null
  if (ids.length === 0) return [notTold('of any gauge read on a standard: no set-check is in it')]
  const all = setChecksOf(record, ids)
  const off = all.filter(({ isOff }) => isOff)
  const fine = all.filter(({ isOff }) => !isOff)
  const found = record.review.exceptions.filter(
    ({ kind, what }) => kind === 'instrument' && ids.some((id) => what.startsWith(`${id} `)),
  )
  const names = [...new Set(off.map(({ entry }) => entry.instrument))]
  const isStanding = off.some(({ entry }) => standsIn(record, entry))
  const undone = undoneChecks(record, ids)
  const held = off.length > 0 ? [] : heldOn(record, ids)
  const isHeaded = off.length === 0 && found.length === 0
  return [
    heading(
      off.length > 0
        ? offHead(`${names.join(', ')}, at ${off.length} of ${count(all.length, 'set-check')}`, isStanding)
        : (foundHead(found, ids) ?? undoneHead(undone) ?? fineHead(fine) ?? noneHead(held)),
    ),
    ...(held.length === 0 ? [] : [{ margin: '', rows: held.map((text) => row(text, 'strong')) }]),
    ...(off.length === 0
      ? []
      : [said(...off.map((one) => checkLine(record, one)), ...(isStanding ? judgedOn(record, names) : []))]),
    ...(undone.length === 0 || isHeaded
      ? []
      : [said(`Not read on its standard, though the procedure asks for it: ${undone.join('; ')}.`)]),
    ...found.map(
      (one): Block => ({
        margin: String(one.number),
        rows: [
          row(`${one.what} (${entriesText(one.entries)})`, 'strong'),
          ...one.sentences.map((text) => row(`  ${text}`)),
        ],
      }),
    ),
    ...saidBlock(record, ids),
    ...(fine.length === 0
      ? []
      : [said('Within what is allowed:', ...fine.map((one) => checkLine(record, one)))]),
    said('By the day of its calibration, which tells nothing of a knock since:', ...ids.map(dayText(record))),
    ...readBy(record, ids),
    said('How it was held, and what it read where nobody keyed, no record tells.'),
  ]
}

const offHead = (where: string, isStanding: boolean): string =>
  isStanding
    ? `OFF ITS STANDARD by more than the register allows: ${where}`
    : `Off its standard by more than the register allows, of which nothing stands: ${where}`

function foundHead(found: readonly Exception[], ids: readonly string[]): string | null {
  const named = ids.filter((id) => found.some(({ what }) => what.startsWith(`${id} `)))
  return found.length === 0 ? null : `Found out of calibration, past its day or put back: ${named.join(', ')}`
}

const undoneHead = (undone: readonly string[]): string | null =>
  undone.length === 0
    ? null
    : `NOT READ ON ITS STANDARD, though the procedure asks for it: ${undone.join('; ')}`

function fineHead(fine: readonly SetCheckRead[]): string | null {
  if (fine.length === 0) return null
  const often = fine.length === 1 ? 'its one set-check' : `each of ${fine.length} set-checks`
  const gauges = [...new Set(fine.map(({ entry }) => entry.instrument))].join(', ')
  return `Within what the register allows at ${often} of ${gauges}; that is no word that it was good`
}

const noneHead = (held: readonly string[]): string =>
  held.length > 0
    ? 'No set-check of it is in this log, and what was judged on it is HOLD'
    : 'No set-check of it is in this log, and no entry finds it out'

interface Rested {
  readonly entry: Extract<Entry, { type: 'verdict.given' }>
  /** The entry by which it fell; null: it stands. */
  readonly voidBy: number | null
}

/** Verdicts that rest on what these gauges read, in the order of the log. */
function restingOn({ entries, state }: OnRecord, ids: readonly string[]): Rested[] {
  const by = entries.flatMap((e) =>
    'instrument' in e && e.instrument !== undefined && ids.includes(e.instrument) ? [e.seq] : [],
  )
  return entries.flatMap((entry) =>
    entry.type === 'verdict.given' && entry.verdict.readings.some((seq) => by.includes(seq))
      ? [{ entry, voidBy: state.raised.find(({ seq }) => seq === entry.seq)?.voidBy ?? null }]
      : [],
  )
}

/** Those on HOLD that stand, with what holds each up: it need not be the gauge, and may be. */
function heldOn(record: OnRecord, ids: readonly string[]): string[] {
  return restingOn(record, ids).flatMap(({ entry: { seq, step, verdict }, voidBy }) =>
    voidBy === null && verdict.result.verdict === 'HOLD'
      ? [
          `HOLD: ${named(stepById(record.defs, step))} (entry ${seq}): ${verdict.result.holds.map(clause).join('; ')}.`,
        ]
      : [],
  )
}

/** Set-checks of the kind of these gauges that the procedure asks for, and no entry has: `13 Set-check after`. */
function undoneChecks(record: OnRecord, ids: readonly string[]): string[] {
  const { defs, state, entries } = record
  const kinds = ids.flatMap((id) => gaugeById(defs, id)?.kind ?? [])
  return defs.steps.flatMap((placed) => {
    if (!isSetCheck(placed) || applicability(defs, state, placed) !== 'do') return []
    const seat = defs.seats.find(({ id }) => id === asKind(placed, 'read').step.with)
    const isOfKind = seat?.kinds.some((kind) => kinds.some((one) => one === kind)) === true
    const isRead = entries.some((e) => isSetRead(e) && e.step === placed.id)
    return isOfKind && !isRead ? [named(placed)] : []
  })
}

/** What was said of an instrument in words: no figure tells that it fell. */
export function saidBlock(record: OnRecord, ids: readonly string[]): Block[] {
  const lines = saidOf(record, ids)
  return lines.length === 0 ? [] : [said('Said of it in words:', ...lines)]
}

/** Verdicts with their word: those that rest on a set-check that was off, and apart from them those on other figures of the same gauge. */
export function judgedOn(record: OnRecord, ids: readonly string[]): string[] {
  const off = setChecksOf(record, ids).flatMap(({ entry, isOff }) =>
    isOff && standsIn(record, entry) ? [entry.seq] : [],
  )
  const given = restingOn(record, ids).map(({ entry: { seq, step, verdict }, voidBy }) => ({
    text: `${named(stepById(record.defs, step))}: ${verdict.result.verdict} (entry ${seq}${voidBy === null ? '' : `, void since entry ${voidBy}`})`,
    isOff: verdict.readings.some((one) => off.includes(one)),
  }))
  const told = (isOff: boolean) => given.filter((one) => one.isOff === isOff).map(({ text }) => text)
  const [held, others] = [told(true), told(false)]
  return [
    `A size that is judged with a set-check off its standard is HOLD, whatever it reads. ${held.length === 0 ? 'No verdict of this log rests on such a set-check.' : `Judged so: ${held.join('; ')}.`}`,
    ...(others.length === 0 ? [] : [`Judged on its other figures: ${others.join('; ')}.`]),
  ]
}

function dayText({ defs, entries }: OnRecord): (id: string) => string {
  return (id) => {
    const known = instrumentById(defs, id)
    if (known === undefined) return `${id} is in no register of this job.`
    const { due, certificate } = known.calibration
    const own = entries.filter((e) => 'instrument' in e && e.instrument === id)
    const last = own.at(-1)?.at.slice(0, 10)
    const isIn = last !== undefined && last <= due
    return `${instrumentName(defs, id)}: until ${due}, certificate ${certificate}${last === undefined ? '; in no entry of this log' : `; ${isIn ? 'not past it' : 'PAST IT'} on ${last} (${entriesText(own.map(({ seq }) => seq))})`}.`
  }
}

/** Where it read, step by step: what is in doubt with it. */
export function readBy({ defs, entries }: OnRecord, ids: readonly string[]): Block[] {
  const lines = defs.steps.flatMap((placed) => {
    const own = entries.filter(
      (e) =>
        'instrument' in e &&
        e.instrument !== undefined &&
        ids.includes(e.instrument) &&
        'step' in e &&
        e.step === placed.id &&
        (e.type.startsWith('reading.') || e.type.startsWith('evidence.')),
    )
    return own.length === 0
      ? []
      : [`${named(placed)}: ${count(own.length, 'figure')} (${entriesText(own.map(({ seq }) => seq))}).`]
  })
  return lines.length === 0 ? [] : [said('It read:', ...lines)]
}

/** Words that a kind of gauge goes by beside its name. */
const SHORT_FOR: Readonly<Record<string, string>> = {
  mic: 'micrometer',
  mics: 'micrometer',
  micrometers: 'micrometer',
}

/** By a number, by words of its name, by the thing that it read; of a set-check, whatever was held on a standard. Null: none is meant. */
export function meantIds(record: OnRecord, asked: string): string[] | null {
  const { defs } = record
  const all = [...new Set([...idsRead(record), ...defs.instruments.instruments.map(({ id }) => id)])]
  const tags = tagsIn(asked)
  if (tags.length > 0) {
    // A lock or tag of the same number hangs: it is asked about, as it is what could hurt.
    const isHung = record.entries.some(
      (e) => e.type === 'evidence.given' && tags.some((tag) => isTag(e.shown.split(/[\s,]/)[0] ?? '', tag)),
    )
    if (isHung) return null
    const meant = all.filter((id) => tags.some((tag) => isTag(id, tag)))
    return meant.length === 0 ? null : meant
  }
  const checked = checkedOn(record)
  if (/\bset[- ]?checks?\b/.test(asked)) return checked
  const plain = asked.replace(/\bmic(?:s|rometers?)?\b/g, (word) => SHORT_FOR[word] ?? word)
  const words = wordsAsked(plain).filter((word) => !/^(?:gaug|good|right|wrong|calibrat|off|out)/.test(word))
  const named = idsRead(record).filter(
    (id) => heldIn(instrumentById(defs, id) === undefined ? id : instrumentName(defs, id), words) > 0,
  )
  if (named.length > 0) return named
  const read = checked.filter((id) =>
    readSteps(record, id).some((placed) => heldIn(nameOf(placed), words) > 0),
  )
  return read.length > 0 ? read : checked
}

const nameOf = (placed: PlacedStep) =>
  `${placed.step.title} ${placed.step.kind === 'read' ? (placed.step.of ?? '') : ''}`

function readSteps({ entries, defs }: OnRecord, id: string): PlacedStep[] {
  const steps = new Set(
    entries.flatMap((e) => (isSetRead(e) && e.instrument === id && e.step !== null ? [e.step] : [])),
  )
  return defs.steps.filter((placed) => steps.has(placed.id) && asKind(placed, 'read') !== undefined)
}

function checkedOn(record: OnRecord): string[] {
  return idsRead(record).filter((id) => setChecksOf(record, [id]).length > 0)
}
