// A question looked up in the passages of a job, on this computer and in nothing else. What is found is quoted as it
// stands; where too little of the question is found in any passage, nothing is.
import MiniSearch from 'minisearch'
import type { Definitions } from '../job/definitions.ts'
import { oncePer } from '../lib/once.ts'
import { aboutOf, asksFigure, asksLimit, asksMeaning, isWeak, stem, wordsOf } from './ask-words.ts'
import { judgedIds } from './limit-passages.ts'
import { type Passage, type PassageKind, passagesOf } from './passages.ts'

/** The most passages that are quoted to one question. */
export const MOST_QUOTED = 3

/** Share of the words of a question that a passage has to hold. */
const ENOUGH = 0.65

/** What is asked by its own name comes before what only mentions it. */
const BY_NAME = 2

/** What the machine's own papers say comes before a book. */
const OWN_FIRST = 1.5

/** What this job judges by comes before a limit that only the same machine has. */
const JUDGED_FIRST = 1.5

/** What stands in the step that is asked at comes before the same words in another. */
const HERE_FIRST = 1.5

/** What this job does not ask for comes after what it does. */
const ELSEWHERE = 0.5

/** A passage far below the best one answers something else. */
const NEAR_THE_BEST = 0.34

interface Papers {
  readonly passages: ReadonlyMap<string, Passage>
  readonly index: MiniSearch<Passage>
}

const papersOf = oncePer((defs: Definitions): Papers => {
  const index = new MiniSearch<Passage>({
    fields: ['text', 'about'],
    storeFields: ['kind', 'step'],
    tokenize: wordsOf,
    processTerm: (term) => stem(term),
  })
  const passages = passagesOf(defs)
  index.addAll(passages)
  return { passages: new Map(passages.map((one) => [one.id, one])), index }
})

/** Whether the word stands in any paper of the job, in any of its forms. */
export function isInPapers(defs: Definitions, word: string): boolean {
  return wordsIn(defs).has(stem(word))
}

const wordsIn = oncePer(
  (defs: Definitions): ReadonlySet<string> =>
    new Set(passagesOf(defs).flatMap(({ text, about }) => wordsOf(`${text} ${about}`).map(stem))),
)

/** Passages that speak of what is asked, the best first; at most three, and none twice. */
export function findPassages(defs: Definitions, question: string, step: number | null): Passage[] {
  const about = aboutOf(question)
  // A figure alone is in the source of many a passage, and none is about it.
  if (about.every((word) => /^\d+$/.test(word))) return []
  const exact = look(defs, question, about, step, false)
  const hits = exact.length > 0 ? exact : look(defs, question, about, step, true)
  const best = hits[0]?.score ?? 0
  const quoted: Passage[] = []
  for (const { passage, score } of hits) {
    if (quoted.length === MOST_QUOTED || score < best * NEAR_THE_BEST) break
    if (!quoted.some((one) => one.text === passage.text)) quoted.push(passage)
  }
  return quoted
}

/** A figure, in digits or in words. */
const HAS_FIGURE = /\d|\b(?:two|three|four|five|six|once|twice|half|minute|hour)\b/i

/** How long is not answered by how far it may be worn: a limit is quoted where a limit is asked. */
function givesFigure({ kind, limits, text }: Passage, question: string): boolean {
  return HAS_FIGURE.test(text) && (kind !== 'limit' || limits === undefined || asksLimit(question))
}

interface Hit {
  readonly passage: Passage
  readonly score: number
}

/** `slips`: a letter wrong in a long word still finds it; tried only where nothing is found as it was keyed. */
function look(
  defs: Definitions,
  question: string,
  about: readonly string[],
  step: number | null,
  slips: boolean,
): Hit[] {
  const { index, passages } = papersOf(defs)
  const weight = weightsFor(question)
  const results = index.search(about.join(' '), {
    boost: { about: 2 },
    fuzzy: slips ? (term) => (term.length > 5 ? 1 : false) : false,
    processTerm: (term) => term,
    boostDocument: (_id, _term, stored) =>
      weight(stored?.kind as PassageKind) * (step !== null && stored?.step === step ? HERE_FIRST : 1),
  })
  const judged = new Set(judgedIds(defs, null))
  const needed = Math.ceil(about.length * ENOUGH)
  const needsFigure = asksFigure(question)
  return results
    .flatMap(({ id, score, queryTerms, match }) => {
      const passage = passages.get(id)
      const words = new Set(queryTerms)
      const held = words.size
      if (passage === undefined || held < needed) return []
      if (needsFigure && !givesFigure(passage, question)) return []
      // A word such as asked or alone says nothing about what a passage is about, but where a term goes by it.
      const isAbout = [...words].some(
        (word) => !isWeak(word) || (passage.kind === 'term' && match[word]?.includes('about')),
      )
      if (!isAbout) return []
      const named = isNamed(passage, about) ? BY_NAME : 1
      const isOwn = passage.kind === 'limit' && !passage.fallback
      const isJudged = passage.limits !== undefined && judged.has(passage.limits)
      const own = (isOwn && passage.elsewhere !== true ? OWN_FIRST : 1) * (isJudged ? JUDGED_FIRST : 1)
      const apart = passage.elsewhere === true ? ELSEWHERE : 1
      // What holds more of the question comes before what only holds a rare word of it.
      return [{ passage, score: score * named * own * apart * (held / about.length) ** 2 }]
    })
    .sort((a, b) => b.score - a.score || Number(a.passage.id) - Number(b.passage.id))
}

function isNamed({ name }: Passage, about: readonly string[]): boolean {
  // A word that says nothing is not among those asked about: fall-back limit is named by fall-back.
  const words = aboutOf(name)
  return words.length > 0 && words.every((word) => about.includes(word))
}

/** What sort of passage a question is most likely to be after. */
function weightsFor(question: string): (kind: PassageKind) => number {
  const isWhy = /^\s*why\b/i.test(question)
  const isLimit = asksLimit(question)
  const isMeaning = asksMeaning(question)
  return (kind) => {
    if (kind === 'limit') return isLimit ? 3 : 0.6
    if (kind === 'term') return isMeaning && !isLimit ? 3 : 1
    if (kind === 'why') return isWhy ? 2 : 1
    if (kind === 'hazard') return isWhy ? 1.5 : 0.7
    // What is done gives no reason, and what is done in trouble least of all.
    if (kind === 'trouble') return isWhy ? 0.3 : 0.7
    if (kind === 'step') return isWhy ? 0.7 : 1
    return 1
  }
}
