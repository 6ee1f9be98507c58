// Questions in plain words at the prompt of a review: answered from what this record tells, with the number behind which it stands,
// and from nothing else. None of them is ever answered with a word that something is safe.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type Block, row } from '../sheet/block.ts'
import { personTold } from './asked-desk.ts'
import { DESK_QUESTIONS } from './asked-desk-kinds.ts'
import { isTag, type OnRecord, tagsIn } from './asked-entries.ts'
import { figureTold } from './asked-figure.ts'
import { isAbout, locksTold } from './asked-locks.ts'
import { LOG_QUESTIONS } from './asked-log.ts'
import { nextOverhaul } from './asked-next.ts'
import { judgedFigures } from './asked-parts.ts'
import { GAUGE_QUESTION, PLAIN_QUESTIONS } from './asked-plain-kinds.ts'
import { instrumentTold, placeTold } from './asked-readings.ts'
import { isItSafe } from './asked-safe.ts'
import { signedOfTold } from './asked-signed.ts'
import { questionMended } from './asked-slips.ts'
import { byWhoseWordTold } from './asked-stands.ts'
import { TIME_QUESTIONS } from './asked-time-kinds.ts'
import { asAsked, besideTold, heldIn, wordsAsked, wordsTold } from './asked-words.ts'
import { whatWasFound, whoKeyed, whyItFell } from './asked-work.ts'
import { changesInWords } from './changes-rows.ts'
import type { Exception, Kind } from './exception.ts'
import { isTagOfNone, openBlocks } from './keyed-words.ts'
import { withInitials } from './names-asked.ts'
import { FOUND_AND_LEFT, sectionsOf } from './sections.ts'

/** Worst first, so many: the list has the rest. */
const MOST = 6

interface Told {
  readonly asked: RegExp
  readonly like: string
  readonly answer: (record: OnRecord, asked: string) => Block[]
}

/** Until when, and by whose word: asked with words of whether it may run, and another question. What answers it says that it tells no such. */
const BY_WHOSE_WORD: Told = {
  asked:
    /\b(?:till|until|til|up to|to) (?:when|what (?:day|date|hours?|time))\b|\bhow (?:long|far) (?:may|can|could|is|does|will|shall|must) (?:it|this|the (?:machine|compressor|unit|part)) (?:\w+ )?(?:be run|run|go on|stand)|\b(?:on|by|under|with) (?:whose|who is|what|which) (?:authority|word|permission|say-so|signature|concession)\b|\bwho(?:se)? (?:lets|let|allows|allowed|permits|permitted|authori[sz]ed) it (?:to )?(?:run|go on)/,
  like: 'until when may it run, and on whose authority',
  answer: byWhoseWordTold,
}

const QUESTIONS: readonly Told[] = [
  {
    asked:
      /\bsafe\b|\b(?:fit|ok(?:ay)?|ready|al(?:l ?)?right|good) (?:to|for) (?:\w+ ){0,2}(?:runs?|running|start\w*|go|load\w*|use|used|work|carry|service|back|turn\w*)\b|^(?:is|was|are|will|should) (?:it|this|that|everything|they|the (?:machine|compressor|unit|job)) (?:\w+ ){0,2}(?:al(?:l ?)?right|good|fine|ok(?:ay)?|fit|ready)\b|^(?:(?:all|is it|is that|is everything) )?(?:ok(?:ay)?|fit|ready|good)\??$|\b(?:can|may|could|should) (?:it|we|i|they|the machine)\b.*\b(?:run|start|go|load)/,
    like: 'is it safe to run',
    answer: isItSafe,
  },
  {
    asked: /\bwho\b.*\b(?:took|takes?|read|reads|readings?|measur|keyed)/,
    like: 'who took the bore readings',
    answer: ({ defs, state }, asked) => whoKeyed(defs, state, asked),
  },
  {
    asked: /\bwho\b.*\b(?:sign|decid|witness|accept|approv)/,
    like: 'who signed',
    answer: (record, asked) => signedOfTold(record, asked) ?? whoSigned(record),
  },
  {
    asked: /\bhold ?points?\b|\bgates?\b|\bwhy\b.*\b(?:fell|fall|fallen)\b/,
    like: 'why did the hold point fall',
    answer: ({ review }, asked) => whyItFell(review, asked),
  },
  {
    asked:
      /\bwhy\b.*\b(?:accept|pass|decid|rework|replac|repair|conce|run|monitor|hold)|\bwhat (?:was|did)\b.*\bdecid/,
    like: 'why was it accepted',
    answer: whyDecided,
  },
  {
    asked:
      /\bwhen\b.*\b(?:overhaul|opening|opened|look|due|next)|\bwhen\b.*\b(?:read|measured|looked at|inspected|judged) again\b|\bnext (?:overhaul|opening|time)|\bhow long\b(?=.*\b(?:left|last|lasts|run|good for|until|till|next)\b)|\bhours left\b/,
    like: 'when is the next overhaul',
    answer: nextOverhaul,
  },
  {
    asked: /\bwhat\b.*\b(?:measure|read|sizes?|figures?|diameters?|wear|wore|worn)/,
    like: 'what was measured',
    answer: whatWasMeasured,
  },
  {
    // Of a valve or a cover nothing here tells whether it is open.
    asked:
      /^(?!(?:is|are|was|were) the (?!job|log|record|review))(?=.*\b(?:what|anything|something|is|are|still)\b.*\b(?:open|undecided|to do|due|outstanding|left to do|not done)\b)/,
    like: 'what is open',
    answer: ({ review }) => openBlocks(review),
  },
  {
    asked: /\bwhat\b.*\b(?:find|finds|found|findings?|see|saw|seen)\b/,
    like: 'what did they find',
    answer: ({ review }) => whatWasFound(review),
  },
  {
    asked:
      /\bwh(?:at|ere)\b.*\b(?:look at|read|start|begin|check|know|worry about)\b.*\b(?:first|most)\b|\bwhat\b.*\b(?:wrong|happen|bad|worst|matter)|\b(?:anything|something)\b.*\bwrong/,
    like: 'what went wrong',
    answer: (record, asked) => happenedTo(record, asked) ?? whatWentWrong(record),
  },
]

/** Of the log, beside the first ones, as many as are read. */
const FEW = 6

const LIKE_A_QUESTION =
  /\?$|[,;:-] ?(?:what|why|who|when|where|which|how|was|were|did|is|are|can|could|has|have)\b|^(?:(?:in|at|by|with|from|on|of|to|for|under|till|until|since|up to|and|but|so) )?(?:could|would|will|shall|might|what|why|who|whom|whose|when|where|which|how|is|are|was|were|can|may|did|does|do|should|must|am|has|have|had|anything|any)\b\s*\S/
/** A place by its number, and what is asked without a word that asks. */
const ASKED_SHORT =
  /^(?:next overhaul|hours left|(?:place |sheet |step |and |show (?:me )?)?\d{1,4}\.\d{1,3}$|time ?line|last gas test)/

/** Null where it is no question. The first row is a heading. */
export function questionBlocks(record: OnRecord, keyed: string): Block[] | null {
  if (isTagOfNone(record.review, keyed)) return tagBlocks(record, keyed.trim().toLowerCase())
  const text = questionMended(withInitials(record, keyed.trim()).toLowerCase())
  if (!LIKE_A_QUESTION.test(text) && !ASKED_SHORT.test(text)) return statedBlocks(record, text)
  const blocks = answerTo(record, text)
  return [...blocks, ...besideTold(record, text, blocks)]
}

/** No question, and words enough to be about something: what is nearest to them, where no item has them as they stand. */
function statedBlocks(record: OnRecord, text: string): Block[] | null {
  const isInList = record.review.exceptions.some(({ what, sentences }) =>
    [what, ...sentences].some((one) => one.toLowerCase().includes(text)),
  )
  // A word or two are mostly looked for as they stand; those that work here by themselves are keyed-words.ts.
  return isInList || WORDS_HERE.test(text) ? null : (tagBlocks(record, text) ?? wordsTold(record, text))
}

const WORDS_HERE = /^(?:help|list|leave|act|decide[ds]?|decisions?|open|due|to do)$/

function answerTo(record: OnRecord, text: string): Block[] {
  // Whether it may run comes before all else that the words could mean.
  const [safe, ...others] = QUESTIONS
  if (BY_WHOSE_WORD.asked.test(text)) return BY_WHOSE_WORD.answer(record, text)
  const gauge = GAUGE_QUESTION.asked.some((one) => one.test(text))
    ? GAUGE_QUESTION.answer(record, text)
    : null
  if (gauge !== null) return gauge
  if (safe?.asked.test(text)) return safe.answer(record, text)
  for (const { asked, answer } of [
    ...TIME_QUESTIONS,
    ...PLAIN_QUESTIONS,
    ...DESK_QUESTIONS,
    ...LOG_QUESTIONS,
  ]) {
    const told = asked.some((one) => one.test(text)) ? answer(record, text) : null
    if (told !== null) return told
  }
  const known = others.find(({ asked }) => asked.test(text))
  if (known !== undefined) return known.answer(record, text)
  const tagged = tagBlocks(record, text)
  if (tagged !== null) return tagged
  const [place] = text.match(/\b\d{1,4}\.\d{1,3}\b/) ?? []
  const placed = place === undefined ? null : placeTold(record, place)
  if (placed !== null) return placed
  const figure = figureTold(record, text)
  if (figure !== null) return figure
  const person = personTold(record, text) ?? []
  const quoted = wordsTold(record, text)
  if (person.length > 0 || quoted !== null) return [...person, ...(quoted ?? [])]
  const words = asAsked(text, wordsAsked(text))
  if (words !== '')
    return [
      heading(`Not found by its words: no entry has ${words} in it`),
      said(
        'The log may have it in other words: ask with those, by the number of a sheet, a time or a tag. What nobody keyed it does not tell.',
      ),
    ]
  return [
    heading('That is not answered here. What is, from this record'),
    said(
      `${[...QUESTIONS, ...LOG_QUESTIONS.slice(0, FEW)].map(({ like }) => like).join('; ')}.`,
      'A name, a tag, a part, a time or the number of a sheet in it finds what the log has of that.',
      'Why a verdict is as it is stands behind its number, with its sums.',
    ),
  ]
}

/** What became of one thing is asked for by its name; null where none is named, or the log has nothing of it. */
function happenedTo(record: OnRecord, asked: string): Block[] | null {
  const words = wordsAsked(asked).filter(
    (word) => !/^(?:happen|wrong|bad|worst|matter|day|worry|begin)/.test(word),
  )
  return words.length === 0 || !/\bhappen/.test(asked)
    ? null
    : (tagBlocks(record, asked) ?? wordsTold(record, words.join(' ')))
}

/** What the log has of the numbers that are named: of what hangs, or of the point where it does, and else of an instrument. Null: nothing. */
function tagBlocks(record: OnRecord, text: string): Block[] | null {
  const { defs, entries } = record
  const tags = tagsIn(text)
  const has = (is: (entry: Entry, tag: string) => boolean) =>
    entries.some((e) => tags.some((tag) => is(e, tag)))
  if (has((e, tag) => (e.type === 'evidence.given' || e.type === 'evidence.failed') && isAbout(defs, e, tag)))
    return locksTold(record, text)
  if (has((e, tag) => 'instrument' in e && e.instrument !== undefined && isTag(e.instrument, tag)))
    return instrumentTold(record, text)
  return null
}

function whatWentWrong({ review }: OnRecord): Block[] {
  const { exceptions } = review
  if (exceptions.length === 0)
    return [
      heading(
        'By what this review looks at, nothing out of the ordinary. That is no word that the work was good.',
      ),
    ]
  const more = exceptions.length - MOST
  return [
    heading(`${exceptions.length} out of the ordinary, worst first; a number opens it`),
    ...exceptions.slice(0, MOST).map(asLine),
    ...(more > 0 ? [said(`and ${more} more: ${MOST + 1}-${exceptions.length} has those, a line each.`)] : []),
  ]
}

const DECIDED: readonly Kind[] = ['verdict', 'finding', 'close', 'unmeasured']

/** Of what the question names, where it names any; of those decided otherwise, where it asks why something was not done. */
function whyDecided({ review }: OnRecord, asked: string): Block[] {
  const all = review.exceptions.filter(({ kind }) => DECIDED.includes(kind))
  const [, not] = /\bnot (?:be |been )?(replace|renew|rework|repair|accept|hold)/.exec(asked) ?? []
  const others =
    not === undefined
      ? all
      : all.filter(({ what }) => !what.includes(`: ${not === 'renew' ? 'replace' : not}`))
  const words = wordsAsked(asked).filter(
    (word) => !/^(?:accept|pass|decid|rework|replac|renew|repair|conce|run|monitor|hold|allow)/.test(word),
  )
  const meant = others.filter(({ what }) => heldIn(what.replace(/;.*/, ''), words) > 0)
  const told = meant.length > 0 ? meant : others
  // Why the verdict has its word is no matter of the decision: what governs it comes with it.
  const isOfWord = not === undefined && /\b(?:rework|replac|monitor)/.test(asked)
  if (told.length === 0)
    return [heading('No verdict and no finding here wanted a decision: none is on record')]
  return [
    heading('What did not conform or is near its limit, and what was decided, in the words on record'),
    ...told.map(
      (one): Block => ({
        margin: String(one.number),
        rows: [
          row(one.what, one.open ? 'caution' : 'strong'),
          ...(isOfWord ? one.sentences : decisionIn(one)).map((text) => row(`  ${text}`)),
        ],
      }),
    ),
  ]
}

/** The decision with its reason; of a verdict that is only near its limit, why it stands. */
function decisionIn({ sentences }: Exception): string[] {
  const said = sentences.filter((text) => /decision|decided|replaced by|No decision/i.test(text))
  return said.length === 0 ? sentences.slice(-1) : said
}

function whoSigned({ review, entries, defs }: OnRecord): Block[] {
  const signed = new Map<string, number>()
  for (const entry of entries)
    if ('signed' in entry && entry.signed !== undefined && 'person' in entry && entry.person !== undefined)
      signed.set(entry.person, (signed.get(entry.person) ?? 0) + 1)
  const all = [...review.people, ...review.since]
  const decided = review.exceptions.filter(
    ({ kind, what }) => DECIDED.includes(kind) && / decided: /.test(what),
  )
  return [
    heading(all.length === 0 ? 'Nobody signed by this record' : 'Who signed, by this record'),
    said(
      ...all.map(
        (id) =>
          `${id}: ${signed.get(id) ?? 0} signatures, sign-ons among them${review.since.includes(id) ? '; only for what was added after the close' : ''}.`,
      ),
      ...(decided.length === 0 ? ['No decision of a lead is on record.'] : ['Decisions of leads:']),
    ),
    ...decided.map(asLine),
    ...witnesses(entries, defs),
    said('Each signature with its entry: barover report has them in the section of signatures.'),
  ]
}

/** Also those whose word has fallen since. */
function witnesses(entries: readonly Entry[], defs: Definitions): Block[] {
  const at = new Map<string, Set<number>>()
  for (const entry of entries)
    if (entry.type === 'evidence.given' && entry.person !== undefined)
      at.set(entry.person, (at.get(entry.person) ?? new Set()).add(stepById(defs, entry.step).number))
  const lines = [...at].map(([id, gates]) => `${id} at hold point ${[...gates].join(', ')}`)
  return lines.length === 0 ? [] : [said('Witnesses, also of what has fallen since:', ...lines)]
}

/** Of what the question names the figures that were judged and the entries nearest to it; of no part, what was found and left. */
function whatWasMeasured(record: OnRecord, asked: string): Block[] {
  const { review, defs } = record
  const words = wordsAsked(asked)
  const judged = judgedFigures(record, words)
  const near = wordsTold(record, asked)
  if (words.length > 0 && (judged.length > 0 || near !== null))
    return [
      ...(judged.length === 0
        ? []
        : [heading(`Figures that were judged, of ${asAsked(asked, words)}`), said(...judged)]),
      ...(near ?? []),
    ]
  const section = sectionsOf(review).find(({ name }) => name === FOUND_AND_LEFT)
  return [
    heading('The figures that this record counts, as found and as left'),
    said(
      ...(section === undefined
        ? ['None is compared here. barover report has each reading.']
        : [
            ...changesInWords(defs, review.changes).map(({ text }) => text),
            `Place by place: behind ${section.number}. barover report has each reading.`,
          ]),
    ),
  ]
}

const heading = (text: string): Block => ({ margin: '', rows: [row(text, 'strong')] })
const said = (...texts: string[]): Block => ({ margin: '', rows: texts.map((text) => row(text)) })
const asLine = ({ number, what, open }: Exception): Block => ({
  margin: String(number),
  rows: [row(`${open ? 'OPEN: ' : ''}${what}`, open ? 'caution' : 'plain')],
})
