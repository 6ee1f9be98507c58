// Questions in plain words about how the job stands: how far, how long, who, until when. What they ask is in no paper of the
// job, so they are answered from the job itself, as the word where is. Whole questions only: how long is the rod is another.

/**
 * All of it; who is on the job; when the evidence of hold points lapses; whether it is finished; what was taken last; how a slip
 * is put right; how another instrument is taken than the one that was picked.
 */
export type StandingAsked =
  | 'all'
  | 'people'
  | 'lapse'
  | 'finished'
  | 'taken'
  | 'mend'
  | 'practice'
  | 'instrument'

const JOB = '(?:the |this )?(?:job|work|inspection|sheet|procedure)'
const GAS = '(?:the |this |our |my )?(?:gas(?: tests?| readings?)?|air test|tests?|hold point)'
const ENDS = '(?:laps(?:e|es|ed)|expires?|runs? out|ends?|over|due|good|valid|last|stand)'

const THING =
  '(?:(?:last|wrong|first|second|third|new|earlier|older|old|previous|former|bad|false|mistyped|bore|gas) )*(?:reading|figure|number|value|answer|entry|measurement|repeat|lock|lock number|initials|finding|note|word|one)s?'
const KEYED = '(?:keyed|typed|entered|put in|put|pressed|hit|picked|chose|gave|read|wrote)'
/** What somebody says who wants a slip back. Of a thing by name it is a question about that thing. */
const MEND =
  '(?:fix|mend|undo|correct|change|delete|remove|take back|put right|redo|get rid of|edit|alter|cancel|replace)'
const SLIP = `(?:it|that|this|them|(?:(?:a|an|my|the|that|this|what) )*(?:mistake|slip|typo|error|${THING})|what (?:i|we) ${KEYED}|(?:what is on |what i keyed on )?sheet \\d+(?:\\.\\d+)?)`
/** Which of them it was, or when. */
const WHEN =
  '(?: (?:from|of|that|which|i|we|was|is|before|earlier|above|yesterday|already|back|then|two|three|an?|few|some|sheets?|steps?|places?|ago|last|shift|at|in|on|the|keyed|typed|entered|took|made|read|previous|now|again|here|wrong|\\d+(?:\\.\\d+)?))*'
const BEFORE = '(?:.*[,;.:!] ?)?'
const TAKE =
  '(?:take|taken|took|get|got|save|saved|record|recorded|keep|kept|hear|heard|note|noted|register|registered)'

const TOOL =
  '(?:(?:inside|outside|bore|dial|gas|setting) )?(?:gauge|instrument|meter|micrometer|mike|mic|thermometer|indicator|scale|tool|caliper)s?(?: here| now| all along| before| for (?:it|this|that|them|all of (?:it|them)))*'
const USED =
  '(?:picked|took|chose|have|got|grabbed|used|am using|was using|have been using|measured (?:it |this |that |them |all )?with|read (?:it |this |that |them |all )?(?:with|on)|did (?:it|this|that|them) with|worked with)'
const OTHER = '(?:an?other|a different|the other|the right|a better|some other)'

const PATTERNS: readonly (readonly [StandingAsked, string])[] = [
  [
    'practice',
    '(?:how|where) (?:do|can|could) (?:i|we|you) (?:start|do|get to|open|begin|find|have|use|try)? ?(?:a |the |to )?practi[cs]\\w*(?: job| mode)?',
  ],
  [
    'instrument',
    `(?:how|where) (?:do|can|could|would|should) (?:i|we|you) (?:take|use|pick|choose|get|have|key|go to) ${OTHER} ${TOOL}`,
  ],
  [
    'instrument',
    `(?:how|where) (?:do|can|could|would|should) (?:i|we|you) (?:change|swap|switch|replace|put back) (?:the |my |this |to ${OTHER} )?${TOOL}`,
  ],
  ['instrument', `(?:can|may|could) (?:i|we) (?:take|use|pick|have|change to) ${OTHER} ${TOOL}`],
  [
    'instrument',
    `${BEFORE}(?:i|we)(?:'ve| have|'m)? (?:just |been |all along )*(?:${USED}|using) (?:the |a )?(?:wrong|other|old|different) ${TOOL}.*`,
  ],
  [
    'instrument',
    `${BEFORE}(?:it|that|this|they) (?:was|were|is) (?:read |measured |taken )?(?:with |on )?the wrong ${TOOL}.*`,
  ],
  [
    'instrument',
    `(?:what if )?(?:the|my|this|our) ${TOOL} (?:is|was|seems|reads|looks|has been) (?:wrong|off|broken|out|not right|bad|faulty|out of calibration|damaged|dropped)`,
  ],
  ['instrument', `(?:the )?wrong ${TOOL}(?: used| picked| taken)?`],
  [
    'instrument',
    `(?:what (?:do|can|should|must) (?:i|we) do |what )?(?:if|when) (?:i|we)(?:'ve| have)? (?:just )?(?:${USED}) (?:the |a )?(?:wrong|other|different) ${TOOL}.*`,
  ],
  [
    'instrument',
    `${BEFORE}(?:i|we)(?:'ve| have)? (?:${USED}) [a-z]{1,3}-?\\d+ (?:instead of|and not|not|rather than) .*`,
  ],
  ['all', '(?:and )?where (?:am i|are we)(?: now| at)?'],
  ['all', `how far (?:am i|are we|is (?:it|this|that)|along am i|along are we|is ${JOB}|on am i|on are we)`],
  ['all', `how far (?:through|along|into|with) ${JOB} (?:am i|are we)`],
  [
    'all',
    `how (?:long|much longer) (?:is|does|will|would) (?:it|this|that|${JOB})(?: still)?(?: take| last| go on)?`,
  ],
  [
    'all',
    `how (?:long|much|much longer|many (?:sheets|steps|readings)) (?:is |are )?(?:left|to go|more|remaining|remain)`,
  ],
  [
    'all',
    `how much (?:work |time |longer )?(?:is |have i |do i have |have we )?(?:left|to go|to do|still)(?: to do| to go)?`,
  ],
  [
    'all',
    `(?:when|what time) (?:is|are|am|will|do|does) (?:it|this|that|i|we|${JOB}) (?:be )?(?:done|finished|over|through)`,
  ],
  ['all', 'what (?:is|has been|was) done(?: so far)?'],
  [
    'finished',
    '(?:am i|are we) (?:all )?(?:finished|done|through|complete|over|there|ready)(?: yet| already| here| with (?:it|this))?',
  ],
  [
    'finished',
    `(?:is|was) (?:it|this|that|${JOB}) (?:all )?(?:finished|done|complete|completed|over|closed|through)(?: yet| already)?`,
  ],
  ['finished', '(?:is|was) (?:that|this) (?:all|it|everything)'],
  ['finished', '(?:have|did) (?:i|we) (?:finish|finished|done) ?(?:it|all|everything|this)?'],
  [
    'finished',
    `what (?:else )?(?:is|do i have|do we have|have i|have we) (?:still )?(?:left|missing|to do|open)(?: to do)?`,
  ],
  [
    'taken',
    `(?:did|has|have) (?:it|you|that|barover|the (?:program|computer|sheet)) (?:really |just )?${TAKE} (?:it|that|this|them|(?:my|the) ${THING}|what i ${KEYED})`,
  ],
  [
    'taken',
    `(?:was|is|were|are) (?:it|that|this|(?:my|the) ${THING}) (?:taken|saved|recorded|kept|noted|on record|in the log|in)(?: now| yet| already)?`,
  ],
  ['taken', `what (?:did|have) (?:i|we) (?:just )?(?:key|type|enter|${KEYED})(?: in)?(?: last)?`],
  ['taken', `what (?:was|is) (?:my|the) last ${THING}`],
  [
    'mend',
    `${BEFORE}(?:how|where) (?:do|can|could|would|should|may|must) (?:i|we|you|one) ${MEND} ${SLIP}${WHEN}`,
  ],
  ['mend', `${BEFORE}(?:can|could|may) (?:i|we|you) (?:still )?${MEND} ${SLIP}${WHEN}`],
  ['mend', `${BEFORE}(?:how|where) to ${MEND} ${SLIP}${WHEN}`],
  [
    'mend',
    `(?:what (?:do|can|should|must) (?:i|we) do |what happens |what )?(?:if |when )?(?:i|we)(?:'ve| have)? (?:just )?(?:${KEYED}|key|type|enter|pick|press|read) (?:in )?(?:the |a |an |that )?(?:wrong|other|same) .*`,
  ],
  [
    'mend',
    `(?:what (?:do|can|should|must) (?:i|we) do )?(?:if |when )?(?:i|we)(?:'ve| have)? (?:just )?(?:made|make) (?:a |an )?(?:mistake|slip|typo|error).*`,
  ],
  [
    'mend',
    `(?:what (?:if|when) )?(?:one of )?(?:an?|my|the|that|this|some)? ?${THING}${WHEN} (?:is|was|were|are|seems?|looks?) (?:wrong|off|mistyped|not right|false|keyed wrong)(?:[,;.]? (?:what|how)\\b.*)?`,
  ],
  [
    'mend',
    '(?:how|where) (?:do|can|could) (?:i|we) undo(?: (?:it|that|this|the last(?: one)?|what i \\w+))?',
  ],
  ['mend', `(?:how|where) (?:do|can|could) (?:i|we) go back(?: one| a step| to .*)?`],
  [
    'people',
    "who(?:'s| is| else is)? (?:is )?(?:signed on|signed in|on|here|on (?:the|this) job|with me|at the keyboard)",
  ],
  ['people', 'who are (?:we|signed on)'],
  [
    'people',
    'how many (?:people|men|of us|persons)(?: are| is)?(?: now| still)? (?:signed )?(?:on|here)(?: (?:the|this) job| now)?',
  ],
  ['lapse', `(?:when|what time|at what time|until when) (?:does|do|will|is|are|did) ${GAS} (?:be )?${ENDS}`],
  [
    'lapse',
    `how (?:long|much longer|old) (?:is|does|do|will) ${GAS}(?: still)?(?: be)?(?: ${ENDS})?(?: for)?`,
  ],
  ['lapse', `(?:is|are) ${GAS} (?:still )?(?:good|valid|due)`],
]

const COMPILED = PATTERNS.map(([about, text]) => [about, new RegExp(`^${text}$`, 'i')] as const)

/** What of it is asked, or null where the line is no such question. */
export function standingAsked(line: string): StandingAsked | null {
  const text = line
    .trim()
    .replaceAll('\u2019', "'")
    .replace(/[\s?.!]+$/, '')
    .replace(/\s+/g, ' ')
    .replace(/^(?:ask[:,]? )/i, '')
    .replace(/,? (?:please|now|right now)$/i, '')
  return COMPILED.find(([, pattern]) => pattern.test(text))?.[0] ?? null
}
