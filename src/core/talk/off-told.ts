// What is said of something that the record holds shut, locked, blocked or blind, and that is not so any more: told as it is, and no
// question. No word of it closes a hold point, so whoever says it is told what does.

/** Number, tag or place between the thing and what became of it. */
const WHICH =
  '(?: (?:of|on|at|from|for|in|number|no|nr)\\b\\.?(?: (?:the|my|his|her|our))?(?: \\w+){0,2}?)?(?: [\\w-]*[\\d-][\\w-]*){0,2}'
const IS =
  "(?:'s| is| are| was| were| has| have| had| came| comes| come| fell| falls| got| been| not| just| now| still| all| again| being| quite| already)+"
const TOOK =
  '(?:took|taken|takes|removed|removes|cut|cuts|opened|opens|pulled|knocked|unlocked|undid|undone|broke|pulls)'

const LOCK_NUMBER = 'l-?\\d{1,5}'
const VALVE_TAG = '(?<!\\b(?:bleeds?|vents?|drains?|relief) )(?:m?o?v|hv|xv)-?\\d{1,4}'
const LOCK_BECAME =
  'off|gone|open|opened|removed|taken|cut|broken|loose|changed|swapped|on the (?:floor|ground|deck)'
const HUNG = `(?:pad)?locks?|${LOCK_NUMBER}`
const LOCKS = '(?:pad)?locks?|locking pins?|tags?|lock-?box(?:es)?'
const BLOCKS =
  'blocks?|blocking|blinds?|blanks?|spades?|wedges?|chocks?|(?:locking|barring|block|turning) pins?|barring gear'
const BLEEDS = 'bleeds?|vents?'
/** A bleed, a vent and a drain are to be open. */
const VALVES = '(?<!\\b(?:bleed|vent|drain|relief) )valves?|isolations?'
const POWER = 'breakers?|fuses?|power|switch(?:es)?|isolators?'

const said = (things: string, became: string) => `\\b(?:${things})${WHICH}${IS} (?:${became})\\b`

/** As patterns of a line; none of them holds for a line that begins like a question. */
const OFF = [
  said(LOCKS, LOCK_BECAME),
  // By the number that stands on it, and by the tag of a valve; a lock that lies about.
  said(`(?:pad)?locks?|${LOCK_NUMBER}`, `missing|${LOCK_BECAME}`),
  `\\b(?:found|saw|there is|there's|here is|here's) (?:\\w+ ){0,2}(?:${LOCKS}|${LOCK_NUMBER})\\b.*\\b(?:floor|ground|deck|lying|off|open|cut)\\b`,
  // One that hangs there and holds nothing.
  `\\b(?:${HUNG})\\b(?: (?:on|at|of) [\\w-]+)?(?:(?:'s| is| was| are| were)(?: just| still| only)*)? (?:hang(?:s|ing)?|hung|swing(?:s|ing)?|dangl(?:es|ing)) (?:wide )?(?:open|loose|free|unlocked)\\b`,
  `\\b(?:${HUNG})\\b(?: (?:on|at|of) [\\w-]+)?(?:'s| is| was| are| were| has| had)?(?: not|n't| never| hardly)(?: been| quite| properly| fully| really| even)* (?:locked|shut|closed|snapped|fastened|engaged|home|there|in place|on(?! (?:the|this|my) (?:list|sheet|screen|paper)))\\b`,
  `\\b(?:${HUNG})\\b(?: (?:on|at|of) [\\w-]+)?(?:'s| is| was| are| were)(?: now| just)? (?:unlocked|undone)\\b`,
  '\\b(?:hasps?|shackles?)\\b.*\\b(?:open|cut|broken|bent|off|loose|not (?:snapped|shut|closed|locked|engaged|home|through))\\b',
  `\\bkeys? (?:is |was |are )?(?:still |left |stuck )*in (?:the |that )?(?:\\w+ )?(?:${HUNG})\\b`,
  said(VALVE_TAG, 'open|opened|passing|leaking|not (?:shut|closed|locked)'),
  said(BLOCKS, 'out|off|gone|removed|taken|pulled|loose|broken|slipped|moved|sheared'),
  `\\b(?:the|a|our|that) (?:\\w+ )?(?:${BLOCKS})${WHICH}(?: has| have| just)* (?:slip(?:s|ped)|move[sd]|fell|falls|shear(?:s|ed)|broke|breaks|c[ao]mes? loose)(?! (?:in|into|freely|by hand)\\b)\\b`,
  said(BLEEDS, 'shut|closed|plugged|blocked'),
  said(VALVES, 'open|opened|passing|leaking|not (?:shut|closed|locked)'),
  said(POWER, 'on|in|live|closed|back on|switched on'),
  `\\b${TOOK}\\b(?: \\w+){0,3} (?:${LOCKS}|${BLOCKS}|${LOCK_NUMBER})\\b`,
  `\\b(?:opened|opens)\\b(?: \\w+){0,3} (?:${VALVES})\\b`,
  `\\b(?:shut|closed|plugged)\\b(?: \\w+){0,2} (?:${BLEEDS})\\b`,
  "\\b(?:nobody|no one)(?:'s| is)? at the (?:block|barring gear|valve|breaker)\\b",
]

const QUESTION =
  '(?:what|why|how|where|when|which|who|whose|is|are|am|was|were|can|could|may|might|must|do|does|did|has|have|if|suppose|will|would|should|in case)\\b'
/** `not off`, `never taken off`: then it is on. */
const DENIED =
  '\\b(?:never|nobody|no one|not) (?:\\w+ )?(?:off|gone|out|open|opened|removed|taken|took|cut|loose)\\b'

export const OFF_TOLD: readonly string[] = OFF.map((one) => `^(?!${QUESTION})(?!.*${DENIED}).*${one}`)
