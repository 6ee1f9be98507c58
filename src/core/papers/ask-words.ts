// The words of a question as they are looked up: without those that say nothing, and cut to what their forms share.

/** Words of a question that tell nothing about what is asked. */
const SAYS_NOTHING = new Set(
  (
    'a an the this that these those it its he she they them i me my we us our you your one ones some any ' +
    'is are was were be been being am do does did done doing has have had having can could may might must shall should ' +
    'will would what why how where when which who whom whose and or of to in on at by for from with into out off up as ' +
    'if than then so not no there here about really just please tell mean means meaning meant called word term explain ' +
    'much many too very more less most least enough limit limits allowed allow ok okay good bad need needs needed use ' +
    'used using get gets got go goes going come comes put puts take takes make makes made let know known thing things ' +
    'kind sort difference between say says said happen happens want far long big small little large wide tight loose ever work works'
  ).split(' '),
)

/** Short names for what the papers write out. */
const SAME: Readonly<Record<string, string>> = {
  mic: 'micrometer',
  mike: 'micrometer',
  micrometre: 'micrometer',
  temp: 'temperature',
  temps: 'temperature',
  o2: 'oxygen',
  flammable: 'burn',
  flammables: 'burn',
  gases: 'gas',
  gage: 'gauge',
  center: 'centre',
  ve: 'volumetric',
  clean: 'wipe',
  cleaned: 'wipe',
  cleaning: 'wipe',
  monitored: 'monitor',
}

/** What the forms of a word share: `measure`, `measured` and `measuring` are one. `gas` is no form of another. */
export function stem(word: string): string {
  const lower = word.toLowerCase().replace(/['\u2019]s?$/, '')
  const same = SAME[lower] ?? lower
  for (const end of ['ies', 'ing', 'ed', 'es', 'e', 's'])
    if (same.endsWith(end) && !same.endsWith('ss') && same.length - end.length >= (end === 's' ? 3 : 4))
      return same.slice(0, -end.length)
  return same
}

/** The words in a text, as they are written. */
export function wordsOf(text: string): string[] {
  return text.match(/[\p{L}\p{N}][\p{L}\p{N}'\u2019]*/gu) ?? []
}

/** Short names and turns of phrase that would be lost word by word. A capital HE is an end of a cylinder, a small one somebody. */
const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/\bh\.?e\.? (?:and|or) c\.?e\b\.?/gi, 'head end, crank end'],
  [/\bhydrogen sul(?:f|ph)ide\b/gi, 'H2S'],
  [/\bhow (?:far|deep) (?:in|inside|down)\b/gi, 'howfarin'],
  [/\bhow (?:deep|far|high|low) (?=(?:do|does|should|must|can)\b)/gi, 'how '],
  [/\bHE\b/g, 'head end'],
  [/\bCE\b/g, 'crank end'],
  [/\bfallbacks?\b/gi, 'fall-back'],
  [/\b(?:most and (?:the )?least|least and (?:the )?most)\b/gi, 'mostandleast'],
]

export function phrased(text: string): string {
  return PHRASES.reduce((now, [phrase, means]) => now.replace(phrase, means), text)
}

/** What a question is about: each word once, without those that say nothing. */
export function aboutOf(question: string): string[] {
  const words = wordsOf(phrased(question).toLowerCase()).filter((word) => !SAYS_NOTHING.has(word))
  return [...new Set(words.map(stem))]
}

/** Words that many passages hold and none is about: alone they make no passage an answer. */
const WEAK = new Set(
  (
    'ask asked alone answer answered none nothing nobody somebody anybody everybody count counts place places turn turns start ' +
    'starts press wrong right next real first last new old same other another again still yet now today before after always never ' +
    'only just even both each every all two one three six twice half show see look find give keep leave call tell try run move stand wait ' +
    'time day work people person way side part whole'
  )
    .split(' ')
    .map(stem),
)

export function isWeak(word: string): boolean {
  return WEAK.has(word)
}

/** Whether a question asks for a figure: what has none does not answer it. */
export function asksFigure(question: string): boolean {
  // How deep a groove may be is in no paper here: who has it is what is told.
  if (/\bhow deep\b.*\b(?:scratch|scratches|scores?|scoring|grooves?)\b/i.test(question)) return false
  if (/^how (?:deep|far|high|low) (?:do|does|should|must|can) (?:i|we|it|the)\b/i.test(question)) return false
  return /^(?:and )?how (?:long|big|deep|heavy|high|wide|thick|hot|many|old|fast)\b/i.test(question.trim())
}

/** Whether a question is about how much of something is still right. */
export function asksLimit(question: string): boolean {
  return /\b(?:limits?|tolerat\w+|permitted|permissible|how (?:much|many|far|big|wide|tight|hot|worn|bad)|too|allow(?:ed)?|most|least|max(?:imum)?|min(?:imum)?|toleranc\w+|still (?:good|ok|okay|right)|(?:biggest|largest|smallest|highest|lowest) (?:it|this|that|the \w+) (?:can|may|could|should))\b/i.test(
    question,
  )
}

/** Whether a question is about what a term means. */
export function asksMeaning(question: string): boolean {
  const q = question.trim()
  return /\b(?:mean(?:s|ing|t)?|called|define|definition)\b/i.test(q) || /^what(?:'s| is| are)\b/i.test(q)
}
