// Questions at a review about figures: one place by its number, what made a verdict, an instrument, gas tests, corrections, and whether
// something was put right. Told from entries with their numbers; what nobody keyed is said to be not told.
import { instrumentById, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { placesOf } from '../job/places.ts'
import { type Reading, stands } from '../job/state.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { type Block, row } from '../sheet/block.ts'
import { becauseRows } from '../sheet/verdict-block.ts'
import { instrumentName, nonconformanceText, readingText } from '../talk/names.ts'
import {
  asItem,
  eitherOf,
  entriesText,
  entryLine,
  heading,
  isTag,
  linesWhere,
  notTold,
  type OnRecord,
  placeOf,
  said,
  tagsIn,
} from './asked-entries.ts'
import { offLines, saidBlock } from './asked-gauge.ts'
import { keptText, keptWhy } from './asked-kept.ts'
import { heldIn, wordsAsked } from './asked-words.ts'
import { madeOther } from './became.ts'
import { judgedIn } from './judged.ts'
import { count, type Look, movesOf, named } from './look.ts'

/** `7.3`, as the place of a reading or, where there is no such place, as words say. */
export function placeTold(record: OnRecord, asked: string): Block[] | null {
  const [, number = '', within = ''] = /\b(\d{1,4})\.(\d{1,3})\b/.exec(asked) ?? []
  const placed = record.defs.steps.find((one) => String(one.number) === number)
  if (placed === undefined) return null
  if (placed.step.kind !== 'read')
    return [heading(`Sheet ${number}, ${placed.step.title}, has no places: nothing is measured there`)]
  const place = placesOf({ ...placed, step: placed.step }).find((one) => String(one.number) === within)
  if (place === undefined) return [heading(`Sheet ${number}, ${placed.step.title}, has no place ${within}`)]
  const lines = linesWhere(
    record,
    ({ entry }) => 'place' in entry && entry.place === place.key && entry.type !== 'reading.late',
  )
  const all = record.state.readings[place.key] ?? []
  const standing = all.filter(stands)
  const name = placeOf(record.defs, { step: placed.id, place: place.key })
  if (lines.length === 0) return [heading(`${name}: no entry of this log is of it`)]
  return [
    heading(name),
    said(
      ...lines,
      standing.length === 0
        ? 'Nothing stands of it.'
        : `What stands: ${standing.map((one) => `${readingText(record.defs, one)} (entry ${one.seq}${keptText(record, one)})`).join('; ')}.`,
      ...keptWhy(
        record,
        standing.map(({ seq }) => seq),
      ),
    ),
  ]
}

/** So many places stand each in a line; more are counted. */
const MOST_PLACES = 8
const WORDS = /\b(?:monitor|rework|replace|hold|accept)/gi

/** Of each verdict that is asked about: what governs, which readings that is, and what was keyed otherwise before it. */
export function madeTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, state, entries } = record
  const words = (asked.match(WORDS) ?? []).map((word) => word.toUpperCase())
  const isMeant = (word: string) => (words.length === 0 ? word !== 'ACCEPT' : words.includes(word))
  const given = entries.filter((e) => e.type === 'verdict.given' && isMeant(e.verdict.result.verdict))
  if (given.length === 0)
    return [
      heading(
        words.length === 0
          ? 'Every verdict of this log is ACCEPT'
          : `No verdict of this log is ${eitherOf(words)}`,
      ),
    ]
  const look = lookOf(record)
  return [
    heading('What governs each, and the readings it rests on'),
    ...given.flatMap((e): Block[] => {
      if (e.type !== 'verdict.given') return []
      const isVoid = state.raised.find(({ seq }) => seq === e.seq)?.voidBy ?? null
      const before = entries.findLast((o) => o.type === 'verdict.given' && o.step === e.step && o.seq < e.seq)
      const changed = before === undefined ? [] : madeOther(look, e.step, before.seq, e.seq)
      return [
        {
          margin: '',
          rows: [
            row(
              `${named(stepById(defs, e.step))}: ${e.verdict.result.verdict} (entry ${e.seq})${isVoid === null ? '' : `, void since entry ${isVoid}`}`,
              'strong',
            ),
            ...becauseRows(look.defsAt(e), e.verdict),
            ...restsOn(record, e.verdict).map((text) => row(`  ${text}`)),
            ...(before?.type === 'verdict.given'
              ? [row(`  Before that ${before.verdict.result.verdict} (entry ${before.seq}).`)]
              : []),
            ...changed.map(({ seq, text }) => row(`  Since then: ${text} (entry ${seq}).`)),
          ],
        },
      ]
    }),
    said('The sums stand behind the number of a verdict in the list.'),
  ]
}

export function lookOf({ defs, entries, state }: OnRecord): Look {
  const beside = {
    log: { faults: [], head: 'none', whole: 'unknown', checked: [] },
    files: [],
    strays: [],
    crewBefore: null,
  } as const
  return { defs, defsAt: () => defs, entries, state, moves: movesOf(entries), beside }
}

/** A bore names the places of what governs; of anything else all places are named, where they are few. */
function restsOn(onRecord: OnRecord, record: VerdictRecord): string[] {
  const { defs, state } = onRecord
  const all = Object.values(state.readings)
    .flat()
    .filter(({ seq }) => record.readings.includes(seq))
    .sort((a, b) => a.seq - b.seq)
  const keys = governingPlaces(record)
  const meant = keys.length === 0 ? all : all.filter(({ place }) => keys.some((key) => place.endsWith(key)))
  const places = [...new Set(meant.map(({ place }) => place))]
  if (all.length === 0) return ['It names no reading that it rests on.']
  const seqs = all.map(({ seq }) => seq)
  const whole = `In all it rests on ${count(all.length, 'reading')} (${entriesText(seqs)}).`
  const kept = keptWhy(onRecord, seqs)
  if (places.length === 0 || places.length > MOST_PLACES) return [whole, ...kept]
  return [
    ...places.map((place) => {
      const [first, ...more] = meant.filter((one) => one.place === place)
      if (first === undefined) return ''
      const figures = [first, ...more].map(
        (one) => `${readingText(defs, one)} (entry ${one.seq}${fellText(one)}${keptText(onRecord, one)})`,
      )
      return `${placeOf(defs, first)}: ${figures.join('; ')}.`
    }),
    ...(meant.length === all.length ? [] : [whole]),
    ...kept,
  ]
}

const fellText = (one: Reading) => (stands(one) ? '' : ', not any more')

/** Ends of the keys of places, `.station.axis`. */
function governingPlaces(record: VerdictRecord): string[] {
  if (record.compute !== 'bore_form' || record.result.form === null) return []
  const { worstRound, worstTaper, largest, smallest } = record.result.form
  const key = (station: string, axis: string) => `.${station}.${axis}`
  return (record.result.governs?.characteristics ?? []).flatMap((one) => {
    switch (one) {
      case 'out-of-round':
        return [key(worstRound.station, worstRound.widestOn), key(worstRound.station, worstRound.narrowestOn)]
      case 'taper':
        return [key(worstTaper.widestAt, worstTaper.axis), key(worstTaper.narrowestAt, worstTaper.axis)]
      case 'spread':
        return [key(largest.station, largest.axis), key(smallest.station, smallest.axis)]
      default:
        return [key(largest.station, largest.axis)]
    }
  })
}

/** Whether one was picked, what it read, and whether it was doubted; null where no instrument is named. */
export function instrumentTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, entries } = record
  const [tag] = tagsIn(asked)
  if (tag === undefined) return null
  const id = instrumentIds(record).find((one) => isTag(one, tag))
  if (id === undefined) return null
  const of = (entry: Entry) => 'instrument' in entry && entry.instrument === id
  const read = entries.filter(
    (e) => of(e) && (e.type.startsWith('reading.') || e.type.startsWith('evidence.')),
  )
  const lines = linesWhere(
    record,
    ({ entry }) =>
      (of(entry) && !read.includes(entry)) ||
      (entry.type === 'instrument.put-back' && entry.mispicked === id),
  )
  const known = instrumentById(defs, id)
  const register =
    known === undefined
      ? `${id} is not in the instrument file of this job.`
      : `By the instrument file of this job: ${instrumentName(defs, id)}.`
  if (lines.length === 0 && read.length === 0)
    return [
      heading(`${id} is in no entry: it was not taken for any reading or test of this log`),
      said(register, 'What was held in a hand and never keyed the log does not tell.'),
    ]
  const steps = [...new Set(read.flatMap((e) => ('step' in e && e.step != null ? [e.step] : [])))]
  const out = record.review.exceptions.filter(
    ({ kind, what }) => kind === 'instrument' && what.startsWith(`${id} `),
  )
  const off = offLines(
    record,
    read.map(({ seq }) => seq),
  )
  return [
    heading(
      `${id} is in this log${off.length === 0 ? '' : ', and read OFF ITS STANDARD: what is judged on it is HOLD'}`,
    ),
    ...out.map(asItem),
    ...saidBlock(record, [id]),
    said(
      ...off,
      ...lines,
      ...steps.map((step) => {
        const own = read.filter((e) => 'step' in e && e.step === step)
        return `${named(stepById(defs, step))}: ${count(own.length, 'figure')} by it (${entriesText(own.map(({ seq }) => seq))}).`
      }),
      register,
    ),
  ]
}

function instrumentIds({ defs, entries }: OnRecord): string[] {
  const named = entries.flatMap((e) =>
    'instrument' in e && e.instrument !== undefined ? [e.instrument] : [],
  )
  return [...new Set([...named, ...defs.instruments.instruments.map(({ id }) => id)])]
}

/** A figure that somebody doubted and kept was not put right either: whoever asks for corrections hears of it too. */
export function correctionsTold(record: OnRecord): Block[] {
  const { review } = record
  const all = review.exceptions.filter(({ kind }) => kind === 'correction')
  const kept = keptWhy(record)
  const beside = kept.length === 0 ? [] : [said('Not corrected, and counted as keyed:', ...kept)]
  if (all.length === 0) return [heading('Nothing was corrected or taken back by this log'), ...beside]
  return [
    heading(`${count(all.length, 'correction')}; a number opens it`),
    ...all.map((one): Block => {
      const [first, ...rest] = asItem(one).rows
      const why = one.sentences.find((text) => text.startsWith('Because: '))
      return {
        margin: String(one.number),
        rows: [
          ...(first === undefined ? [] : [first]),
          ...rest,
          ...(why === undefined ? [] : [row(`  ${why}`)]),
        ],
      }
    }),
    ...beside,
  ]
}

const OF_FIXING = /^(?:fix|repair|mend|cur|remed|right|sort|solv|becam|becom|done|gone)/

/** What was found and decided of a thing, and what was judged of it since. It is never said that it is fixed. */
export function fixedTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, state, entries, review } = record
  const words = wordsAsked(asked).filter((word) => !OF_FIXING.test(word))
  // One place is told by its number, with what became of each figure there.
  if (words.length === 0 || /\b\d{1,4}\.\d{1,3}\b/.test(asked)) return null
  const items = review.exceptions.filter(({ kind }) => kind === 'verdict' || kind === 'finding')
  const ncs = nonconformances(defs, state).map((nc) => ({
    nc,
    item: items.find(({ entries: [first] }) => first === nc.seq),
  }))
  const score = (text: string) => heldIn(text, words)
  const scored = ncs.map((one) => ({
    ...one,
    score: score(`${nonconformanceText(defs, one.nc)} ${one.item?.sentences.join(' ') ?? ''}`),
  }))
  const most = Math.max(0, ...scored.map((one) => one.score))
  // Of what nothing was found amiss by the log may have words all the same: a smell, a noise, a wheel that stood open.
  if (most < Math.ceil(words.length / 2)) return null
  return [
    heading('Whether it is fixed no record tells. What this one has of it'),
    ...scored
      .filter((one) => one.score === most)
      .map(({ nc, item }): Block => {
        const later = judgedSince(record, nc.seq)
        return {
          margin: item === undefined ? '' : String(item.number),
          rows: [
            row(
              `${item?.what ?? nonconformanceText(defs, nc)} (${entriesText(item?.entries ?? [nc.seq])})`,
              'strong',
            ),
            ...(item?.sentences ?? []).map((text) => row(`  ${text}`)),
            ...(later.length > 0
              ? later.map((e) => row(`  Since then: ${e}`))
              : [row(`  Nothing of the same figure was judged after it${doneSince(entries, nc.seq)}.`)]),
          ],
        }
      }),
  ]
}

const doneSince = (entries: readonly Entry[], seq: number) =>
  ` (the log goes on to entry ${entries.at(-1)?.seq ?? seq})`

/** Later verdicts with a figure of the same name. */
function judgedSince(record: OnRecord, seq: number): string[] {
  const { defs, entries } = record
  const own = entries[seq]
  if (own?.type !== 'verdict.given') return []
  const names = new Set(judgedIn(own.verdict).map(({ name }) => name))
  return entries.flatMap((e) => {
    if (e.type !== 'verdict.given' || e.seq <= seq) return []
    const same = judgedIn(e.verdict).filter(({ name }) => names.has(name))
    if (same.length === 0) return []
    const figures = same.flatMap(({ name, value, text }) =>
      value === null ? [] : [`${name} ${text(defs, value)}`],
    )
    return [
      entryLine(
        record,
        e,
        `${named(stepById(defs, e.step))}: ${e.verdict.result.verdict}, ${figures.join(', ')}`,
      ),
    ]
  })
}

const OF_LOG = ['log', 'file', 'unproved', 'unenforced'] as const

/** What the disk tells of the log, and against what. */
export function wholeTold({ review, entries }: OnRecord): Block[] {
  const found = review.exceptions.filter(({ kind }) => (OF_LOG as readonly string[]).includes(kind))
  const isFaulty = found.some(({ kind }) => kind === 'log')
  const unproved = found.find(({ what }) => /^(?:Not proved|Proved up to)/.test(what))
  return [
    heading(
      isFaulty
        ? 'No: the log is not sound'
        : (unproved?.what ?? 'Proved whole against the check number that was noted elsewhere'),
    ),
    said(`It has ${count(entries.length, 'entry', 'entries')}, 0 to ${entries.length - 1}.`),
    ...found.map((one): Block => {
      const [first] = asItem(one).rows
      return {
        margin: String(one.number),
        rows: [...(first === undefined ? [] : [first]), ...one.sentences.map((text) => row(`  ${text}`))],
      }
    }),
    said('Whole is the log alone: that what was keyed is true, no check shows.'),
  ]
}

export function allInstrumentsTold(record: OnRecord): Block[] {
  const used = instrumentIds(record).flatMap((id) => {
    const own = record.entries.filter((e) => 'instrument' in e && e.instrument === id)
    return own.length === 0
      ? []
      : [`${instrumentName(record.defs, id)}: ${entriesText(own.map(({ seq }) => seq))}.`]
  })
  return used.length === 0
    ? [notTold('of any instrument: none was taken')]
    : [heading('Instruments of this log and the entries that name them'), said(...used)]
}
