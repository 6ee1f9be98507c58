// Questions that people ask who are in doubt about themselves or others, heard by words of their own before any paper is
// looked through: a passage that only shares a word with such a question would be worse than no answer.
import { harmMended } from './harm-slips.ts'
import { GAS_TOLD, GONE_TOLD, HURT_TOLD, NO_LOCK_TOLD, START_TOLD } from './harm-told.ts'
import { OFF_TOLD } from './off-told.ts'

/**
 * Somebody is hurt; does not answer; an alarm or a smell; it starts or turns; air out of its limits; something is missing;
 * a lock or a block is told to be off;
 * something goes wrong; what STOP does; why people come out; a trainee; alone; turning the crank or taking the block out; hands in; whether it is safe; who releases a
 * STOP; who witnesses; whether one is allowed; whether locks come off; what is to be done now.
 */
export type SafetyAsked =
  | 'hurt'
  | 'no-answer'
  | 'alarm'
  | 'starts'
  | 'bad-air'
  | 'missing'
  | 'off'
  | 'wrong'
  | 'stop'
  | 'come-out'
  | 'trainee'
  | 'alone'
  | 'turn'
  | 'hands'
  | 'safe'
  | 'release'
  | 'witness'
  | 'allowed'
  | 'locks-off'
  | 'now'

const OTHERS =
  '(?:he|she|they|somebody|someone|anybody|anyone|everybody|people|my \\w+|(?:the|a|an|our|her|his) (?:man|woman|mate|partner|witness|lead|mechanic|trainee|caller|person|other one))'
const SOMEBODY = `(?:i|we|you|nobody|no one|${OTHERS})`
const MACHINE =
  '(?:it|that|this|(?:the |a )?(?:machine|crank|crankshaft|shaft|driver|engine|motor|compressor|piston|rod|crosshead|flywheel|unit))'
const LIMB = '(?:hands?|arms?|fingers?|heads?|faces?|feet|foot|legs?|body)'
const HARMED =
  '(?:hurt|injured|harmed|sick|trapped|crushed|bleeding|dying|dead|killed|caught|burnt|burned|down|unconscious)'
const GAS_WORD = '(?:oxygen|o2|lel|h2s|air|gas|flammables?|meter)'
/** What people say before it, and a slip may lie behind any of it. */
const BEGIN = '(?:^|[,.;:!] ?)(?:(?:yes|no|oh|help|hey|ok|okay|but|and|so|now|sorry|wait|careful)[, ]+)*'
const GONE =
  "(?:missing|lost|gone|left (?:in|inside|behind)|fell (?:in|into|off)|falls? (?:in|into)|dropped|not (?:there|to be found)|(?:cannot|can't) be found)"

const PATTERNS: readonly (readonly [SafetyAsked, readonly string[]])[] = [
  [
    'hurt',
    [
      ...HURT_TOLD,
      '\\b(?:injur\\w*|unconscious|collapse[sd]?|faint(?:s|ed)?|dizzy|first aid|ambulance)\\b',
      `\\b${SOMEBODY} (?:is|am|are|was|were|be|gets?|got|has been|can be|could be|may be)(?: \\w+)? ${HARMED}\\b`,
      `\\b${SOMEBODY} (?:is|am|are|was|gets?|got) ${HARMED}\\b`,
      `^(?:is|are|was) ${SOMEBODY} ${HARMED}\\b`,
      '\\b(?:hurts?|harms?|kills?) (?:me|us|him|her|them|myself|somebody|someone|anybody|anyone)\\b',
    ],
  ],
  [
    'no-answer',
    [
      `\\b${OTHERS}\\b.*(?:\\bnot|\\bnever|\\bcannot|\\bno longer|\\bstops?|\\bstopped|n't)\\b.*\\b(?:answer|reply|respond|speak|talk|move|call|come|there)`,
      '\\b(?:nobody|no one) (?:answers?|replies|responds|speaks|comes)\\b',
    ],
  ],
  [
    'alarm',
    [
      ...GAS_TOLD,
      '\\b(?:alarms?|siren|beeps?|beeping)\\b',
      '\\b(?:feel|felt|hear|heard|notice|noticed) (?!no )(?:\\w+ )?(?:gas|flow|leak|pressure)\\b',
      '\\bgas (?:comes|came|leaks?|leaked|flows?|blows?|(?:is |keeps? )(?:still )?(?:coming|leaking|flowing|blowing|escaping))\\b',
      `${BEGIN}(?:it|there|something|(?:the|a) \\w+)(?:'s| is| has)? (?:still )?(?:a )?(?:leak(?:s|ing|ed)?|blow(?:s|ing)|gas)\\b`,
      // Whether a gas has a smell at all is no alarm.
      '^(?!(?:can|could|does|what does|how does)\\b.*\\b(?:h2s|nitrogen|methane|hydrogen)\\b).*\\b(?:smells?|smelt|smelled|hiss|hisses|hissing)\\b',
    ],
  ],
  [
    'starts',
    [
      ...START_TOLD,
      `\\b(?:if|when|in case|suppose|what happens|can|could|will|might)\\b.*\\b${MACHINE} (?:(?:still|ever|suddenly|really|all|now|then|does|did|do|should|would|will|begins to) )*(?:starts?|started|turns?|turned|moves?|moved|moving|turning|rolls?|runs|kicks?|jumps?|slips?|drops?|falls?)\\b`,
      `\\b(?:if|when|what happens|suppose|can|could|will|might)\\b.*\\b${OTHERS} (?:re)?starts? ${MACHINE}\\b`,
      `${BEGIN}(?:${MACHINE} (?:is |has |just |did |does |still |really |even )*|(?:just )?did )(?:start(?:s|ed|ing)?|turn(?:s|ed|ing)?|mov(?:e|es|ed|ing)|roll(?:s|ed|ing)|jump(?:s|ed)|kick(?:s|ed))\\b`,
    ],
  ],
  [
    'bad-air',
    [
      `\\b(?:if|when|what happens|suppose|is|are)\\b.*\\b${GAS_WORD}\\b.*\\b(?:low|lower|high|higher|bad|wrong|falls?|drops?|rises?|climbs?|above|over|below|under|outside|out of|too|not enough|zero)\\b`,
      '\\b(?:low|high|not enough|no) (?:oxygen|o2|lel|h2s|air)\\b',
    ],
  ],
  ['off', [...OFF_TOLD, ...NO_LOCK_TOLD]],
  [
    'missing',
    [
      `\\b(?:rags?|tools?|locks?|blinds?|blocks?|keys?|parts?|nuts?|plugs?|pins?|lamps?|something|anything|one|it)\\b.*\\b${GONE}`,
      "\\b(?:i|we) (?:lost|dropped|miss|left|cannot find|can't find)\\b",
      '^what (?:if|when|happens (?:if|when)) (?:i|we|somebody|someone|it|something|(?:a|an|the|my|one) \\w+) (?:drops?|loses?|falls?|dropped|fell)(?: \\w+){0,3} (?:in|inside|into)\\b',
    ],
  ],
  [
    'wrong',
    [
      '\\b(?:go|goes|gone|went|going) wrong\\b',
      "\\b(?:something|anything|what)(?: is|'s)? (?:wrong|amiss|unsafe)\\b",
      `\\b${OTHERS} (?:has |have |had |just )*(?:took|taken|takes|takes off|cut|cuts|removed|removes|unlocked|opened)\\b.*\\block\\b`,
      '\\b(?:did|have) (?:i|we) .*\\bwrong\\b',
      '\\b(?:if|when) (?:something|anything) happens\\b',
      '\\b(?:in trouble|danger|dangers|dangerous|emergency|help me)\\b',
      '\\b(?:what|which) .*\\b(?:hazards?|risks?)\\b',
    ],
  ],
  [
    'stop',
    [
      '\\b(?:key|press|say|call|hit|type|use|enter|push|raise|give)(?:s|es|ed|ing)? (?:the |a |in )?stop\\b',
      '^how (?:do|can|does|should) (?:i|we|you|one|it) stop(?: it| this| everything| the (?:job|work|machine))?$',
      '\\bwhat (?:does|is|happens(?: after| on| at| with)?|comes after|follows) (?:the |a |my )?stop\\b',
    ],
  ],
  [
    'come-out',
    [
      '\\b(?:i|we|he|she|everybody|everyone|people|anybody|nobody|to|must|why) (?:\\w+ ){0,3}?(?:come|go|get|stand|stay) (?:out|clear)$',
      '\\bcome out and stand clear\\b',
    ],
  ],
  ['trainee', ['\\b(?:trainees?|apprentices?|learners?)\\b']],
  [
    'alone',
    [
      GONE_TOLD,
      '\\b(?:alone|by (?:my|him|her|your|one)self|on (?:my|your|his|her|our) own|single[- ]handed)\\b',
      '\\b(?:without|no|have no|nobody|no one) (?:a |an |my |the |any )?(?:partner|mate|witness|lead|second (?:person|man)|other person|anybody|anyone|else|helper|colleague)\\b',
      "\\b(?:nobody|no one|noone)(?:'s| is)? (?:here|around|with me|on site)\\b",
      "\\bi(?:'m| am|m) the only one\\b",
      '\\b(?:partner|mate|witness|helper|colleague|other (?:man|one|mechanic)|second (?:man|person)) (?:has |is |had to |just |now )*(?:went|gone|goes|left|leave|away|off|at lunch|on (?:a |his |her )?break|out|not (?:here|back))\\b',
    ],
  ],
  [
    'turn',
    [
      '^(?!what (?:is|are|does)\\b|why\\b).*\\b(?:turn|rotate|bar|spin|move|roll|crank)(?:ing)? (?:the |this |that |our )?(?:crank|crankshaft|shaft|flywheel|machine|compressor|piston|rod|engine|it)\\b',
      '\\b(?:can|could|may|must|should|will|is|be) (?:the |this |it )?(?:crank|crankshaft|shaft|flywheel|machine|it|piston)?(?: now| then)? ?be (?:turned|barred|rotated|moved|rolled)\\b',
      '^(?!what (?:is|are|does)\\b|why\\b).*\\bbar(?:ring|red)? (?:\\w+ ){0,2}over\\b',
      '\\b(?:take|get|pull|bring|knock|remove|leave|release|loosen|open)(?:ing)? (?:\\w+ ){0,2}blocks?(?: (?:out|off|away|now|here|in|on))?\\b',
      '\\bblocks? (?:come|comes|be taken|go|stay|stays) (?:out|off|away|in|on)\\b',
    ],
  ],
  [
    'hands',
    [
      `\\b(?:may|can|could|is|are|do|should|must|when|allowed|am)\\b.*\\b${LIMB}\\b.*\\b(?:in|inside|into|there|near|now)\\b`,
      '\\b(?:may|can|could|should|do|must|am|are|when|is)\\b.*\\b(?:go|reach|enter|lean|climb|step|look|peer|breathe) (?:in|inside|into)\\b',
      '^(?:may|can|could|should) (?:i|we|somebody|anybody) (?:enter|go on|begin|carry on|continue)\\b',
    ],
  ],
  ['safe', ['\\b(?:un)?safe(?:ly|ty)?\\b(?! (?:solvent|valve|wire|data|goggles|glasses|factor))']],
  [
    'locks-off',
    [
      `\\b(?:take|get|pull|bring|cut|remove|unlock)\\b.*\\b(?:pad)?locks?\\b.*\\b(?:off|away|down|out)\\b`,
      '\\b(?:take|get|pull|come|comes|cut) off (?:\\w+ ){0,2}(?:pad)?locks?\\b',
      '^(?:can|may|could|should|when|do|must|how)\\b.*\\b(?:remove|cut|unlock)\\b.*\\b(?:pad)?locks?\\b',
      '\\b(?:pad)?locks? (?:come|comes|be taken|go) off\\b',
      '\\b(?:pad)?locks? (?:still |all |really |have to |need to |must |to )*(?:stay|stays|remain|remains|be left|left|kept|keep) (?:\\w+ )?(?:on|in place|there|hanging|where they are)\\b',
      '^(?:do|does|must|should|will|can|may|have|are)\\b.*\\b(?:pad)?locks? (?:still |all |really |have to |need to |must |to )*(?:stay(?:ing)?|remain(?:ing)?|hang(?:ing)?)\\b',
      '\\b(?:leave|keep) (?:all |the |my |our |these |those )*(?:pad)?locks? (?:on|in place|there|hanging|where they are)\\b',
      '\\bhow long\\b.*\\b(?:pad)?locks?\\b.*\\b(?:on|stay|hang|remain)\\b',
    ],
  ],
  [
    'release',
    [
      '\\bget (?:it|this|that|the stop|stop) released\\b',
      '\\breleas(?:e|es|ed) (?:it|this|that|the stop|a stop|stop)\\b',
    ],
  ],
  [
    'witness',
    [
      '\\bwho\\b.*\\b(?:witness|stand there|countersign|signs? (?:here|this|for))',
      '\\b(?:can|may|must|should|am) .*\\b(?:be|do|play) (?:the |a |an |my (?:own )?)?witness\\b',
      '^(?:can|may|could|should) (?:i|we|he|she|my \\w+|(?:the|a|an) \\w+) witness(?: this| it)?(?: (?:over|by|on|via) (?:the |a )?\\w+)?$',
      '\\b(?:phone|telephone|radio|video|photo|picture)\\b.*\\b(?:witness|say so|sign|look|see)\\b',
      '\\bwitness\\w*\\b.*\\b(?:phone|telephone|radio|video|photo|picture)\\b',
    ],
  ],
  [
    'allowed',
    [
      '\\b(?:am i|are we|is (?:he|she|anybody|somebody|a \\w+|my \\w+)) (?:even |really )?(?:allowed|permitted|entitled|supposed)\\b',
      '^may (?:i|we)(?: do (?:this|that|it))?$',
      '^who (?:is allowed|may|can|must|has to|decides|signs)\\b',
    ],
  ],
  [
    'now',
    [
      '^(?:and |so |but )?what(?: (?:do|should|must|can) (?:i|we) do)?(?: now| next| here| then)?$',
      '^(?:and |so )?what (?:comes|happens|is) (?:next|now)$',
      '^(?:and |so )?(?:what|how|where) (?:do|should|must|can) (?:i|we) (?:do first|start(?: here| with)?|begin(?: here| with)?|go first|go on|carry on)(?: first| now| next)?$',
    ],
  ],
]

const COMPILED = PATTERNS.map(([about, any]) => [about, new RegExp(any.join('|'), 'i')] as const)

/** What of it is asked, or null where the line is no such question; as it was keyed, with its slips put right, or as supposed. */
export function safetyAsked(line: string): SafetyAsked | null {
  const text = plainOf(line)
  const found = aboutOf(text)
  if (found !== null) return found
  const mended = harmMended(text)
  const heard = mended === text ? null : aboutOf(mended)
  if (heard !== null) return heard
  // `what if the lock is off`: what is said of harm that happened is said of harm that is feared.
  const [feared = ''] = mended.replace(FEARED, '').split(/ (?:and|while|when|but) /)
  const about = !FEARED.test(mended) || NOT_YET.test(feared) ? null : aboutOf(feared)
  return about !== null && SAID.includes(about) ? about : null
}

const FEARED =
  /^(?:and |so |but )?(?:what|wat|waht)(?: (?:do|should|must|shall) (?:i|we|you) do| happens| then| about it| now)?,? (?:if|when|in case)(?: suddenly| just)? /i

/** What was never on is not off: it is asked of the sheet. */
const NOT_YET = /^(?:there (?:is|are|was|were) (?:no|not)\b.*|(?!.*\b(?:and|while|when)\b).*\byet)$/i

const aboutOf = (text: string): SafetyAsked | null =>
  COMPILED.find(([, pattern]) => pattern.test(text))?.[0] ?? null

function plainOf(line: string): string {
  return line
    .trim()
    .replaceAll('\u2019', "'")
    .replace(/^(?:ask[:,]? )/i, '')
    .replace(/[\s?.!]+$/, '')
    .replace(/,? (?:please|now|right now|here)$/i, '')
    .replace(/\s+/g, ' ')
}

/** What is said of them without a question mark too: nobody who keys these has time for one. */
const SAID: readonly SafetyAsked[] = ['hurt', 'no-answer', 'starts', 'off']

/** An alarm alone may stand among the words that a hold point asks for. */
const SOUNDS =
  /\b(?:sounds?|sounding|rings|ringing|rang|went off|goes off|beeps|beeping|smells?|hiss(?:es|ing)?|hear|heard|feel|felt|leak\w*|blow\w*)\b|\bgas (?:is|comes|came|com+ing|keeps?|flows?)\b|\bis gas\b|\b(?:bit|little|some|lots?) of (?:gas|flow|pressure|air)\b|\bstill .*\b(?:gas|flow|pressure)\b|\btheres? (?:a |some )?(?:little |bit of )?(?:gas|flow|pressure)\b|\bwater\b/i

/** Whether a line tells of harm, in words of its own: two at least, as one may be a tag or a slip in a word. */
export function tellsOfHarm(line: string, heard: 'mended' | 'as keyed' = 'mended'): boolean {
  const about = heard === 'mended' ? safetyAsked(line) : aboutOf(plainOf(line))
  const isSaid =
    about !== null && (SAID.includes(about) || (about === 'alarm' && SOUNDS.test(harmMended(line))))
  return isSaid && /\p{L}{2}.*\s.*\p{L}{2}/u.test(line)
}

/** Harm told as it is: no question, and nothing supposed. */
export function isTold(line: string): boolean {
  const text = line.trim()
  return tellsOfHarm(text) && !text.endsWith('?') && !SUPPOSED.test(text)
}

const SUPPOSED =
  /^(?:ask\b|what|why|how|where|when|which|who|is|are|am|was|were|can|could|may|might|must|do|does|did|has|have|if|suppose|will|would|should|in case)\b/i

/** That somebody is on the phone or the radio. */
export const BY_WIRE = /\b(?:phone|telephone|radio|video|photo|picture)\b/i

/** A nut may be left alone, and evidence may say so. */
const OF_ONESELF = /\b(?:i|i['\u2019]?m|im|we|my|our|nobody|no one|noone|partner|mate)\b/i

/** Said of who is there, or is not, and no answer to anything: it is answered with or without a question mark. */
export function saysWhoIsThere(line: string): boolean {
  const about = safetyAsked(line)
  const isSaid = (about === 'alone' && OF_ONESELF.test(line)) || (about === 'witness' && BY_WIRE.test(line))
  return isSaid && /\p{L}.*\s.*\p{L}{2}/u.test(line)
}
