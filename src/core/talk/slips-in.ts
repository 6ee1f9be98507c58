// A question as it is heard: small letters, one space, no politeness, and slips in the words that questions go by put right. What is
// looked up in the papers, or put on record, stays as it was keyed; only what a question is about is told by this.

import type { Definitions } from '../job/definitions.ts'
import { COMMON_SLIPS } from '../lib/slips.ts'
import { slipsApart } from '../lib/wording.ts'
import { isInPapers } from '../papers/find.ts'

/** Shorter than a slip can be told in, or two slips in one: how they are keyed with gloves on. */
const SHORT: Readonly<Record<string, string>> = {
  ...COMMON_SLIPS,
  hwo: 'how',
  hw: 'how',
  hows: 'how is',
  wheres: 'where is',
  lok: 'lock',
  loks: 'locks',
  lck: 'lock',
  frist: 'first',
  ther: 'there',
  hed: 'head',
  rond: 'round',
  peple: 'people',
  poeple: 'people',
  lnog: 'long',
  shws: 'shows',
  mutch: 'much',
  mesuring: 'measuring',
  messuring: 'measuring',
  thier: 'their',
  whcih: 'which',
  cna: 'can',
  u: 'you',
  r: 'are',
  ur: 'your',
  cn: 'can',
  nd: 'need',
  hav: 'have',
  dos: 'does',
  meen: 'mean',
  desside: 'decide',
  deside: 'decide',
  n2: 'nitrogen',
  mic: 'micrometer',
  mics: 'micrometers',
  mike: 'micrometer',
  mikes: 'micrometers',
  dont: "don't",
  im: "i'm",
  ive: "i've",
  kinda: 'kind of',
  gonna: 'going to',
}

/** The words that the patterns of questions go by, and in which a slip is most likely. */
const HEARD = (
  'which where many much long good left need another anybody anyone somebody else other same both lock locks padlock padlocks valve ' +
  'valves initials witness partner machine compressor readings reading nitrogen micrometer meter gauge taper scoring challenge ' +
  'response barrel mirror measure measured measurement measurements plate wrong should could before instrument figure works worked working ' +
  'permit permits himself herself myself really between decide decides'
).split(' ')

/** Words of everyday that are near to one of those and mean another thing. */
const OTHERS = new Set(
  (
    'looks look lacks locker locked locking lucks luck others mother brother maker matter metal litre later water meters manly lone lung ' +
    'wood food mood want lift felt laid were there here their these note anyway bother month mouth seem some sane care hotel golf ' +
    'heed seed feed deed reed fading leading heading loading wonder would mould cold gold bold paper tape tapes place plates plats plane ' +
    'worse works words workers machines gauges figures figured instruments mirrors barrels initial readings valued value values witnessed'
  ).split(' '),
)

/** Letters from which a slip of one is told from another word. */
const LEAST = 4

/** Of a longer word, two. */
const LONG = 8

/** The question in small letters, without what stands round it, its slips put right. */
export function heardAs(defs: Definitions, asked: string): string {
  return bare(asked)
    .toLowerCase()
    .split(' ')
    .map((word) => mended(defs, word))
    .join(' ')
}

/** The word that a question begins with, its slip put right: by that it is told from an answer. */
export function openerMended(text: string): string {
  return text.replace(/^[a-z]+(?=\s)/i, (word) => {
    const key = word.toLowerCase()
    return OPENERS.has(key) ? (SHORT[key] ?? word) : word
  })
}

const OPENERS = new Set([
  'wher',
  'whre',
  'wehre',
  'wen',
  'wy',
  'hwo',
  'hw',
  'waht',
  'wat',
  'wats',
  'wich',
  'whcih',
  'cna',
  'cn',
  'shoud',
  'whats',
  'hows',
  'whos',
  'wheres',
])

/** The same without anything put right: for what is quoted back. */
export function bare(asked: string): string {
  return asked
    .trim()
    .replaceAll('\u2019', "'")
    .replace(/^ask[:,]?\s+/i, '')
    .replace(/^(?:(?:and|so|but|ok|okay|hey|hi|hello|well|sorry|please|um|er)[,.]?\s+)+/i, '')
    .replace(/[\s?.!,]+$/, '')
    .replace(/,? (?:please|mate|thanks|then|pls)$/i, '')
    .replace(/\s+/g, ' ')
}

function mended(defs: Definitions, word: string): string {
  const short = Object.hasOwn(SHORT, word) ? SHORT[word] : undefined
  if (short !== undefined) return short
  if (word.length < LEAST || !/^[a-z]+$/.test(word) || HEARD.includes(word) || OTHERS.has(word)) return word
  // A word that stands in the papers of the job is no slip.
  if (isInPapers(defs, word)) return word
  const most = word.length >= LONG ? 2 : 1
  const near = HEARD.filter((one) => one[0] === word[0] && slipsApart(word, one) <= most)
  return closest(word, near) ?? word
}

/** Of several the one that is nearer than the others; none where two are as near. */
function closest(word: string, near: readonly string[]): string | undefined {
  const apart = near.map((one) => ({ one, slips: slipsApart(word, one) })).sort((a, b) => a.slips - b.slips)
  const [first, second] = apart
  return first !== undefined && (second === undefined || first.slips < second.slips) ? first.one : undefined
}
