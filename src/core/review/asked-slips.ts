// Slips in the words by which a question at a review is known: how it begins, and those of the trade that tell which question it is. Each
// word is mended by itself, so that two slips in a question are no more than one.
import { COMMON_SLIPS } from '../lib/slips.ts'
import { slipsApart } from '../lib/wording.ts'
import { DESK_NEAR, DESK_WORDS } from './desk-vocabulary.ts'

/** Too short to tell a slip in by its letters, or further from the word than one slip. */
const SHORT: Readonly<Record<string, string>> = {
  ...COMMON_SLIPS,
  mike: 'micrometer',
  mikes: 'micrometers',
  ovality: 'out of round',
  roundness: 'out of round',
  whta: 'what',
  wot: 'what',
  whn: 'when',
  wehn: 'when',
  hwen: 'when',
  hwo: 'who',
  woh: 'who',
  hw: 'how',
  hwy: 'why',
  hwich: 'which',
  witch: 'which',
  whitch: 'which',
  coud: 'could',
  cud: 'could',
  woud: 'would',
  til: 'till',
  untill: 'until',
  ordre: 'order',
  oder: 'order',
  guages: 'gauges',
  tke: 'take',
  tok: 'took',
  stil: 'still',
  bak: 'back',
  bck: 'back',
  bfore: 'before',
  befor: 'before',
  chekd: 'checked',
  chked: 'checked',
  chcked: 'checked',
  chek: 'check',
  mesurd: 'measured',
  measurd: 'measured',
  witnesd: 'witnessed',
  witnessd: 'witnessed',
  opend: 'opened',
  stopd: 'stopped',
  stpd: 'stopped',
  stopp: 'stop',
  hed: 'head',
  becuase: 'because',
  startd: 'started',
  strted: 'started',
  sombody: 'somebody',
  anyting: 'anything',
}

const KNOWN = new Set(DESK_WORDS)
const OTHERS = new Set(DESK_NEAR)

const LEAST = 4

/** Text comes in small letters. All else of it stays as it was keyed; so does a tag or a number. */
export function questionMended(text: string): string {
  const mended = text.replace(/(?<![\p{L}\d'’-])\p{L}+(?![\p{L}\d'’-])/gu, wordMended)
  return mended.replace(/\bwho(?= (?:long|many) )/g, 'how').replace(B4, 'before')
}

/** `b4` where a word stands behind it that something comes before; never where a tag could stand. */
const B4 =
  /(?<!\b(?:is|was|are|were|did|does|do|has|had|of|on|off|with|by|lock|tag|gauge|for|from|to|and|or|about) )\bb4(?= (?:they|he|she|we|it|i|any\w*|some\w*|open\w*|start\w*|stop\w*|slack\w*|hands|going|(?:the )?(?:opening|start|stop|close|release)\w*)\b)/g

function wordMended(word: string): string {
  if (Object.hasOwn(SHORT, word)) return SHORT[word] ?? word
  if (word.length < LEAST || KNOWN.has(word) || OTHERS.has(word)) return word
  const near = DESK_WORDS.filter((one) => one[0] === word[0] && isSlip(word, one))
  return near.length === 1 ? (near[0] ?? word) : word
}

/** One slip; another ending is none, and nor is another letter in so short a word. */
function isSlip(word: string, one: string): boolean {
  if (slipsApart(word, one) !== 1) return false
  if (sorted(word) === sorted(one)) return true
  if (word.length === one.length && word.length <= LEAST) return false
  return !one.startsWith(word) && !word.startsWith(one) && word.at(-1) === one.at(-1)
}

const sorted = (word: string) => [...word].sort().join('')
