// More words in which harm is told in a hurry, by somebody with an arm in the bore: of gas where none was to be, of somebody hurt, of a
// start, of a lock that was never there. Nobody who keys these reads on to find the word that would have been heard.

const SOME = '(?:a |some |any |still |lots? of |bit of |little |bit )*'
const GAS = '(?:gas|flow|pressure|air)'
const NOT = '(?!.*\\b(?:no|not|never|without|zero) (?:more |any )?(?:gas|flow|pressure|air|leak)\\b)'
const QUESTION_WORDS =
  '(?:what|why|how|where|when|which|who|is|are|am|can|could|may|might|must|do|does|did|has|have|will|would|should)\\b'
const QUESTION = `(?!${QUESTION_WORDS})`

/** Gas or water where none was to be. A supposition is heard too: it wants the same answer. */
export const GAS_TOLD: readonly string[] = [
  `^${NOT}.*\\bgas (?:is |was |keeps? |still )*com+ing\\b`,
  `^${NOT}.*\\b(?:bit|little|some|lots?) of ${GAS}\\b`,
  `^${NOT}${QUESTION}.*\\bstill ${SOME}(?:gas|flow|pressure)\\b`,
  `^${NOT}(?:if |what if |what when )?(?:there(?:'?s| is| was)?|i (?:hear|feel|see|get|got|have)|we (?:hear|feel|see|get|got|have)) ${SOME}(?:gas|flow|pressure)\\b`,
  "\\b(?:it|its|it's|bleeds?|vents?|cover|joint|flange)(?: is| are)? (?:still |just |now )*(?:blow(?:s|ing)|leak(?:s|ing)|hiss(?:es|ing))\\b",
  '\\bwater (?:is |keeps |still )*(?:com+ing|running|pouring|getting|dripping|leaking) (?:in|out)\\b',
]

const LIMBS = '(?:hands?|arms?|fingers?|thumbs?|heads?|feet|foot|legs?|eyes?|face)'
export const HURT_TOLD: readonly string[] = [
  `\\b(?:cut|crushed|broke|burnt|burned|trapped|caught|hit|hurt|pinched|jammed|smashed|stuck) (?:my|his|her|their|our) (?:\\w+ )?${LIMBS}\\b`,
  `\\b(?:my|his|her|their) (?:\\w+ )?${LIMBS} (?:is|are|got|was) (?:\\w+ )?(?:cut|crushed|broken|burnt|burned|trapped|caught|hurt|stuck|jammed|bleeding)\\b`,
  // Of a finger in a gap, and of somebody whom nobody told to be there.
  '^(?:ow+|ouch|ah+)?[, ]*(?:it|that|this|my \\w+) (?:really |just |still )*hurts?\\b',
  `^(?!${QUESTION_WORDS}).*\\b(?:somebody|someone|he|she|they|people|a man|my (?:mate|partner)) (?:is|are|'s|'re)(?: still| now)* (?:in there|inside|in (?:the|that) (?:bore|cylinder|hole)|in it)\\b`,
  "\\b(?:hard|difficult|cannot|can'?t|trouble|short of) (?:to )?breath(?:e|ing)?\\b",
]

const WHO =
  "(?:they|somebody|someone|he|she|people|(?:the )?(?:operators?|control room|panel|others?|electricians?))(?:'re|'s)?"
export const START_TOLD: readonly string[] = [
  `^${QUESTION}.*\\b${WHO} (?:are |is |just |now |have |has |want to |going to |about to )*(?:start(?:s|ed|ing)?|barr(?:ing|ed)|turn(?:s|ed|ing)?|roll(?:s|ed|ing)?) (?:it|the |up|over)\\b`,
  `^${QUESTION}.*\\b(?:engine|motor|driver|compressor|machine) (?:is |has |just )*(?:starting|started|running|turning)\\b`,
]

/** A point that has no lock at all, told as it is. */
export const NO_LOCK_TOLD: readonly string[] = [
  `^${QUESTION}.*\\b(?:no|without a) (?:pad)?lock (?:on|at|in|there|here)\\b`,
  `^${QUESTION}.*\\bha(?:s|ve|d) no (?:pad)?locks?\\b`,
  `^${QUESTION}.*\\b(?:pad)?locks? (?:is |are |was )?missing (?:on|at|from)\\b`,
]

/** Gone, by the initials of the crew. */
export const GONE_TOLD =
  '^(?!(?:it|he|we|is|or)\\b)[a-z]{2} (?:has |have |had |just |is )*(?:gone|left|went)(?: home| away| off| out)?$'
