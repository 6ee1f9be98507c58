// Slips in the words by which a question at a review is known: how it begins, and the few of the trade that tell which question it is.
import { COMMON_SLIPS } from '../lib/slips.ts'
import { slipsApart } from '../lib/wording.ts'

/** Too short to tell a slip in by its letters. */
const SHORT: Readonly<Record<string, string>> = {
  ...COMMON_SLIPS,
  whta: 'what',
  wot: 'what',
  wen: 'when',
  whn: 'when',
  wehn: 'when',
  hwen: 'when',
  wher: 'where',
  whre: 'where',
  hwo: 'who',
  woh: 'who',
  wy: 'why',
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
}

const KNOWN = (
  'which where whose could would should until gauge gauges micrometer micrometers calibrated calibration certificate decided decision ' +
  'decisions accepted corrected correction witness witnessed reading readings authority overhaul verdict released measured lapsed closed ' +
  'happened signed instrument instruments machine torque tested'
).split(' ')

/** Near to one of those, and words of their own. */
const OTHERS = new Set(
  'gouge gouged gouges heading headings worse whole while could closes closer close signal sighed texted overhauls where were verdicts machined machines'.split(
    ' ',
  ),
)

const LEAST = 5

/** Text comes in small letters. All else of it stays as it was keyed; so does a tag or a number. */
export function questionMended(text: string): string {
  return text.replace(/(?<![\p{L}\d-])\p{L}+(?![\p{L}\d-])/gu, (word) => {
    if (Object.hasOwn(SHORT, word)) return SHORT[word] ?? word
    if (word.length < LEAST || KNOWN.includes(word) || OTHERS.has(word)) return word
    const near = KNOWN.filter((one) => one[0] === word[0] && isSlip(word, one))
    return near.length === 1 ? (near[0] ?? word) : word
  })
}

/** One slip; another ending is none. */
const isSlip = (word: string, one: string) =>
  slipsApart(word, one) === 1 && !one.startsWith(word) && !word.startsWith(one) && word.at(-1) === one.at(-1)
