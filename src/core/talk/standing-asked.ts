// Questions in plain words about how the job stands: how far, how long, who, until when. What they ask is in no paper of the
// job, so they are answered from the job itself, as the word where is. Whole questions only: how long is the rod is another.

/** All of it, who is on the job, or when the evidence of hold points lapses. */
export type StandingAsked = 'all' | 'people' | 'lapse'

const JOB = '(?:the |this )?(?:job|work|inspection|sheet|procedure)'
const GAS = '(?:the |this |our |my )?(?:gas(?: tests?| readings?)?|air test|hold point)'
const ENDS = '(?:laps(?:e|es|ed)|expires?|runs? out|ends?|over|due|good|valid|last|stand)'

const PATTERNS: readonly (readonly [StandingAsked, string])[] = [
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
    'people',
    "who(?:'s| is| else is)? (?:is )?(?:signed on|signed in|on|here|on (?:the|this) job|with me|at the keyboard)",
  ],
  ['people', 'who are (?:we|signed on)'],
  ['lapse', `(?:when|what time|at what time|until when) (?:does|do|will|is|are|did) ${GAS} (?:be )?${ENDS}`],
  ['lapse', `how (?:long|much longer|old) (?:is|does|do|will) ${GAS}(?: still)?(?: be)?(?: ${ENDS})?`],
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
