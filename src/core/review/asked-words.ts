// A question at a review that no kind knows: what the log has with its words in it, entry by entry, each with its number. It is looked up
// and quoted; whether it answers is left to whoever asks.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { aboutOf, isWeak, stem, wordsOf } from '../papers/ask-words.ts'
import { type Block, row } from '../sheet/block.ts'
import { asItem, entryLine, heading, type OnRecord, said, toldOf } from './asked-entries.ts'
import { judgedIn, shareText } from './judged.ts'
import { type Move, movesOf, named } from './look.ts'

/** What somebody did or found; that a hold point fell or a state moved on is none of it. */
const TOLD: readonly Entry['type'][] = [
  ...(['evidence.given', 'evidence.failed', 'reading.taken', 'reading.corrected', 'step.confirmed'] as const),
  ...(['step.done', 'step.objected', 'finding.observed', 'verdict.given', 'disposition.set'] as const),
  ...(['note.written', 'point.signed', 'deviation.permitted', 'remark.made', 'thing.placed'] as const),
  ...(['thing.accounted', 'reading.not-applicable', 'instrument.doubted', 'instrument.put-back'] as const),
  ...(['reading.doubted', 'doubt.settled', 'stop.raised', 'stop.explained'] as const),
]

/** Words of a log that are in a question and tell of nothing. */
const OF_ASKING = new Set(
  (
    'job log record review entry sheet step found tell told did done check checked checking test tested look looked happen before during after ' +
    'they them their he she anybody somebody everything anything machine number long proper properly really actually enough correct measure measured reading readings went came come inside together'
  )
    .split(' ')
    .map(stem),
)

/** What the question is about, each word once. */
export function wordsAsked(asked: string): string[] {
  return aboutOf(asked).filter((word) => word.length > 2 && !isWeak(word) && !OF_ASKING.has(word))
}

/** Of the stems of a question the words that it has for them. */
export function asAsked(asked: string, stems: readonly string[]): string {
  return [...new Set(wordsOf(asked))].filter((word) => stems.includes(stem(word))).join(', ')
}

/** How many of the words a text holds, in whatever form: `drop` and `slip` are in `dropped` and `slipped`. */
export function heldIn(text: string, words: readonly string[]): number {
  const held = formsIn(text)
  return words.filter((word) => held.has(formOf(word))).length
}

const formsIn = (text: string) => new Set(wordsOf(text.toLowerCase()).map((word) => formOf(stem(word))))

/** A letter that was doubled before an ending is one again. */
const formOf = (stemmed: string) => (stemmed.length > 3 ? stemmed.replace(/([bdgmnprt])\1$/, '$1') : stemmed)

const MOST_STEPS = 5
const MOST_ENTRIES = 3
const MOST_ITEMS = 3

/** Null where no entry holds its words. Those that hold most of them come; where none does, those that hold the rarest, and that is said. */
export function wordsTold(record: OnRecord, asked: string): Block[] | null {
  const words = wordsAsked(asked)
  if (words.length === 0) return null
  // What was done or found comes first; that no entry has a word is said only when none of any sort has it.
  return toldAmong(record, asked, words, TOLD) ?? toldAmong(record, asked, words, null)
}

/** `among`: entries of these types; null for all. */
type Among = readonly Entry['type'][] | null

function toldAmong(record: OnRecord, asked: string, words: readonly string[], among: Among): Block[] | null {
  const needed = words.length === 1 ? 1 : Math.max(2, Math.ceil(words.length * ENOUGH))
  const all = toldWith(record, asked, words, { needed, among })
  if (all !== null || needed === 1) return all
  const rarest = rarestOf(record, words, among)
  return rarest === null ? null : toldWith(record, asked, words, { needed: 1, among, only: [rarest] })
}

/** The word that fewest entries hold, and at least one; null where none holds any. */
function rarestOf(record: OnRecord, words: readonly string[], among: Among): string | null {
  const told = movesOf(record.entries).flatMap((move) => heldBy(record, move, words, among)?.text ?? [])
  const counted = words
    .map((word) => ({ word, n: told.filter((text) => heldIn(text, [word]) > 0).length }))
    .filter(({ n }) => n > 0)
    .sort((one, other) => one.n - other.n)
  return counted[0]?.word ?? words.find((word) => inItems(record, [word], 1).length > 0) ?? null
}

const inItems = ({ review }: OnRecord, words: readonly string[], needed: number) =>
  review.exceptions.filter(({ what }) => heldIn(what, words) >= needed)

/** `only`: of several words of which no entry holds enough, those that count. */
function toldWith(
  record: OnRecord,
  asked: string,
  all: readonly string[],
  { needed, among, only }: { needed: number; among: Among; only?: readonly string[] },
): Block[] | null {
  const words = only ?? all
  const shownOf = (some: readonly string[]) => asAsked(asked, some)
  const steps = new Map<string, { readonly lines: string[]; score: number; readonly seq: number }>()
  for (const move of movesOf(record.entries)) {
    const one = heldBy(record, move, words, among)
    if (one === null || one.score < needed) continue
    const known = steps.get(one.step) ?? { lines: [], score: 0, seq: move.entry.seq }
    known.lines.push(one.line)
    known.score = Math.max(known.score, one.score)
    steps.set(one.step, known)
  }
  const items = inItems(record, words, needed)
  if (steps.size === 0 && items.length === 0) return null
  // What was judged tells more of a thing than each figure of it.
  const isJudged = (step: string) => step !== '' && stepById(record.defs, step).step.kind === 'judge'
  const sorted = [...steps].sort(
    ([one, a], [other, b]) =>
      b.score - a.score || Number(isJudged(other)) - Number(isJudged(one)) || a.seq - b.seq,
  )
  const more = sorted.slice(MOST_STEPS)
  return [
    heading(
      only !== undefined
        ? `No entry has these words together: ${shownOf(all)}. What has ${shownOf(words)}`
        : `What the log has with these words in it, and no answer made of them: ${shownOf(words)}`,
    ),
    ...items.slice(0, MOST_ITEMS).map(asItem),
    ...sorted.slice(0, MOST_STEPS).map(([step, { lines }]) => stepBlock(record.defs, step, lines)),
    ...(more.length === 0
      ? []
      : [
          said(
            `and at ${more.length} more: ${more
              .slice(0, MOST_STEPS * 2)
              .map(([step]) => nameOf(record.defs, step))
              .join('; ')}.`,
          ),
        ]),
    said(
      only === undefined
        ? 'What no entry says, nobody keyed. Other words may find more.'
        : 'Found by one word of the question alone. It may be keyed in other words: ask with those, or by the number of a sheet.',
    ),
  ]
}

/** Share of several words that have to stand in one entry. */
const ENOUGH = 0.6

function heldBy(
  record: OnRecord,
  move: Move,
  words: readonly string[],
  among: Among,
): { readonly step: string; readonly line: string; readonly score: number; readonly text: string } | null {
  const { entry } = move
  if (among !== null && !among.includes(entry.type)) return null
  const step = 'step' in entry && typeof entry.step === 'string' ? entry.step : ''
  const told = toldOf(record, move) ?? ''
  const name = step === '' ? '' : nameOf(record.defs, step)
  const placed = step === '' ? undefined : record.defs.steps.find(({ id }) => id === step)
  const of = placed?.step.kind === 'read' ? placed.step.of : ''
  const judged = entry.type === 'verdict.given' ? judgedIn(entry.verdict) : []
  const names = judged.map((one) => one.name).join(' ')
  const whole = `${name} ${of} ${told} ${names}`
  const score = heldIn(whole, words)
  if (score === 0 || (told === '' && name === '')) return null
  const figures = judged.flatMap((one) => {
    const share = heldIn(one.name, words) > 0 ? shareText(record.defs, one) : null
    return share === null ? [] : [`${one.name} ${share}`]
  })
  const text = [told === '' ? 'done' : told, ...figures].join('; ')
  return { step, line: entryLine(record, entry, text), score, text: whole }
}

const nameOf = (defs: Definitions, step: string) => (step === '' ? 'no sheet' : named(stepById(defs, step)))

function stepBlock(defs: Definitions, step: string, lines: readonly string[]): Block {
  const more = lines.length - MOST_ENTRIES
  return {
    margin: '',
    rows: [
      row(nameOf(defs, step), 'strong'),
      ...lines.slice(-MOST_ENTRIES).map((text) => row(`  ${text}`)),
      ...(more > 0 ? [row(`  and ${more} before ${more === 1 ? 'it' : 'them'}`)] : []),
    ],
  }
}
