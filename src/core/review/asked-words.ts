// A question at a review that no kind knows: the entries nearest to it by its words, each with its number. They are looked up and quoted;
// whether one answers is left to whoever asks.
import { stepById } from '../job/definitions.ts'
import { slipsApart } from '../lib/wording.ts'
import { aboutOf, isWeak, stem, wordsOf } from '../papers/ask-words.ts'
import type { Block } from '../sheet/block.ts'
import { asItem, entryLine, heading, isTag, type OnRecord, said, tagsIn, toldOf } from './asked-entries.ts'
import type { Exception } from './exception.ts'
import { formOf, formsIn } from './forms.ts'
import { judgedIn, shareText } from './judged.ts'
import { count, named } from './look.ts'
import { type Near, nearestTo, type Ranked, readOf, weightIn } from './nearest.ts'
import { onSheets } from './on-sheet.ts'

/** Words of a log that are in a question and tell of nothing. */
const OF_ASKING = new Set(
  (
    'job log record review entry sheet step found tell told did done check checked checking test tested look looked happen before during after ' +
    'they them their him his her he she anybody somebody everything anything machine number long proper properly really actually enough correct measure measured reading readings went came come inside together until till while meanwhile gave give given became become turned'
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

/** How many of the words a text holds, in whatever form. */
export function heldIn(text: string, words: readonly string[]): number {
  const held = formsIn(text)
  return words.filter((word) => held.has(formOf(word))).length
}

/** Entries and items that are shown; more would be read by nobody. */
const MOST = 9
const MOST_ITEMS = 3
/** Of the best of them an entry has at least this share to be shown beside it, the first few less. By eye on three logs, no source. */
const NEAR = 0.5
const LEAST = 4
const FAR = 0.25

/** The entries and items nearest to a question by its words. Null where none has any of them. */
export function wordsTold(record: OnRecord, asked: string): Block[] | null {
  const about = wordsAsked(asked)
  // Words that tell little are all that some questions have.
  const weak = aboutOf(asked).filter((word) => word.length > 2)
  const { words, taken } = heardIn(record, about.length > 0 ? about : weak)
  const ranked = nearestTo(record, words, IS_LATE.test(asked))
  const items = nearItems(record, ranked, tagsIn(asked))
  const top = ranked.near[0]?.score ?? 0
  const sheets = onSheets(record, ranked.missing)
  if (top === 0 && items.length === 0 && sheets.lines.length === 0) return null
  const shown = ranked.near
    .filter(({ score }, i) => score >= top * (i < LEAST ? FAR : NEAR))
    .slice(0, MOST)
    .toSorted((a, b) => a.move.entry.seq - b.move.entry.seq)
  const more = ranked.near.length - shown.length
  const none = sheets.missing.filter(
    (word) => !items.some(({ what, sentences }) => heldIn([what, ...sentences].join(' '), [word]) > 0),
  )
  return [
    heading(
      ranked.near.length === 0
        ? 'No answer is made of it here. Nearest to it by its words'
        : `No answer is made of it here. Nearest to it by its words: ${count(shown.length, 'entry', 'entries')} of ${ranked.near.length} that have one of them`,
    ),
    ...(none.length === 0 ? [] : [said(`In no entry: ${asAsked(asked, none)}.`)]),
    ...(taken.length === 0 ? [] : [said(`Heard as: ${taken.join(', ')}.`)]),
    ...items.map(asItem),
    ...(sheets.lines.length === 0 ? [] : [said('On the sheet of an entry:', ...sheets.lines)]),
    ...(shown.length === 0 ? [] : [said(...shown.map((one) => nearLine(record, one)))]),
    said(
      more === 0
        ? 'By other words there may be more: ask with those, by the number of a sheet, a time or a tag.'
        : `${more} more have one of these words. Ask with fewer words, by the number of a sheet, a time or a tag.`,
    ),
  ]
}

/** So rare a word, in fewer of the entries than this share, is what a question is about. By eye, no source. */
const RARE = 0.1
const MOST_BESIDE = 3

/** What a question has beside what was answered: entries with its rare words that stand nowhere in the answer. */
export function besideTold(record: OnRecord, asked: string, answer: readonly Block[]): Block[] {
  const told = answer.flatMap(({ rows }) => rows.map(({ text }) => text)).join(' ')
  const words = wordsAsked(asked).filter((word) => heldIn(told, [word]) === 0)
  const { near, weights } = nearestTo(record, words)
  const least = Math.log(1 + 1 / RARE)
  const rare = words.filter((word) => (weights.get(word) ?? 0) >= least)
  const shown = near
    .filter(({ has, move }) => has.some((word) => rare.includes(word)) && !isIn(told, move.entry.seq))
    .slice(0, MOST_BESIDE)
  return shown.length === 0
    ? []
    : [
        said(
          `Also in the log by words of the question (${asAsked(asked, rare)}):`,
          ...shown.map((one) => nearLine(record, one)),
        ),
      ]
}

/** Whether an answer names an entry already, alone or among others. */
const isIn = (told: string, seq: number) => new RegExp(`\\bentr(?:y|ies)\\b[^)]*\\b${seq}\\b`).test(told)

/** Items that have at least half of the weight of the question's words, after those that it names by a number of theirs. */
function nearItems({ review }: OnRecord, ranked: Ranked, tags: readonly string[]): Exception[] {
  const whole = [...ranked.weights.values()].reduce((sum, weight) => sum + weight, 0)
  const scored = review.exceptions.map((one) => ({
    one,
    score: weightIn([one.what, ...one.sentences].join(' '), ranked),
  }))
  const tagged = review.exceptions.filter(({ what }) =>
    tags.some((tag) => tagsIn(what).some((one) => isTag(one, tag))),
  )
  const near = scored
    .filter(({ score }) => score > 0 && score >= whole * NEAR)
    .toSorted((a, b) => b.score - a.score)
    .map(({ one }) => one)
  return [...new Set([...tagged, ...near])].slice(0, MOST_ITEMS)
}

/** Asked of how it ended: of two that are as near the later one. */
const IS_LATE = /\b(?:now|at the end|in the end|after|afterwards|last|left|final|finally|since)\b/

/** Least letters of a word that a slip is told in. */
const LEAST_LETTERS = 5

/** Words as the log spells them: one that no entry has is heard as the only word of the log that is a slip apart. `taken`: `concesion as concession`. */
export function heardIn(record: OnRecord, asked: readonly string[]): { words: string[]; taken: string[] } {
  const spelled = new Map(
    readOf(record).flatMap(({ text }) =>
      wordsOf(text.toLowerCase()).map((word) => [formOf(stem(word)), word] as const),
    ),
  )
  const taken: string[] = []
  const words = asked.map((word) => {
    if (word.length < LEAST_LETTERS || spelled.has(formOf(word))) return word
    const near = [...spelled.keys()].filter((form) => form[0] === word[0] && slipsApart(word, form) === 1)
    const [one] = near
    if (near.length !== 1 || one === undefined) return word
    taken.push(`${word} as ${spelled.get(one) ?? one}`)
    return one
  })
  return { words, taken }
}

/** With the figures of a verdict that the question names. */
function nearLine(record: OnRecord, { move, has }: Near): string {
  const { entry } = move
  const told = toldOf(record, move) ?? (entry.type === 'reading.dropped' ? 'not used' : entry.type)
  const figures =
    entry.type === 'verdict.given'
      ? judgedIn(entry.verdict).flatMap((one) => {
          const share = heldIn(one.name, has) > 0 ? shareText(record.defs, one) : null
          return share === null ? [] : [`${one.name} ${share}`]
        })
      : []
  const placed = 'step' in entry && typeof entry.step === 'string' ? stepById(record.defs, entry.step) : null
  const isNamed = placed === null || told.includes(placed.step.title) || /^\d/.test(told)
  const text = isNamed ? told : `${named(placed)}: ${told}`
  return entryLine(record, entry, [text, ...figures].join('; '))
}
