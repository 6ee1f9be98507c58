// How a figure is worked out, and what has to be at hand. The program works figures out; by hand it is done by the same definition. Of
// a tool that no sheet names that is said.
import type { BoreCharacteristic } from '../bore/bore-judge-input.ts'
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { stem, wordsOf } from '../papers/ask-words.ts'
import { atHandLines } from './at-hand.ts'
import { termLines } from './terms.ts'

const WORK =
  '(?:work(?:ed|s|ing)? ?(?:it |this |that |the \\w+ )?out|calculat(?:e|ed|es|ing)|comput(?:e|ed|es)|figure(?:d|s)? ?(?:it |the \\w+ )?out|reckon(?:ed)?|get|got|find|found|tell|told|determine[ds]?|measure[ds]?|arrive at|come by|read|see|check|judge[ds]?|add(?:ed)? up)'
const NAMES: readonly (readonly [BoreCharacteristic, RegExp])[] = [
  ['taper', /\btapers?\b|\btapered\b/],
  ['out-of-round', /\bout[- ]of[- ]round(?:ness)?\b|\bovality\b|\boval\b|\broundness\b|\bround\b/],
  ['spread', /\bspread\b/],
  ['largest-diameter', /\blargest(?: diameter| bore)?\b/],
]
const HOW = [
  `^how (?:do|does|can|should|must|would|is|are|to|did) ?(?:i|we|you|one|it|barover|out[- ]of[- ]round(?:ness)?|ovality|taper|(?:the )?spread(?: of all)?|(?:the )?largest(?: diameter)?|the \\w+)?(?: \\w+)? ?${WORK}\\b.*`,
  `^(?:what is|show me|give me|tell me|is there|explain) (?:the |a )?(?:formula|sum|sums|arithmetic|way|equation|calculation|maths?)\\b.*`,
  `^(?:do|must|should) (?:i|we) (?:have to |need to )?${WORK}\\b.*`,
]

/** As `boreForm` reckons them. */
const BY_HAND: Readonly<Record<BoreCharacteristic, string>> = {
  taper:
    'By hand: in one direction, the largest size along the bore less the smallest, any two stations; so for each direction, and the greater counts.',
  'out-of-round':
    'By hand: at one station, the larger of its two directions less the smaller; so at each station, and the greatest counts.',
  spread: 'By hand: the largest of all sizes less the smallest, whatever the place or direction.',
  'largest-diameter': 'By hand: the largest of all sizes.',
}
const SAYS: Readonly<Record<BoreCharacteristic, string>> = {
  taper: 'taper',
  'out-of-round': 'round',
  spread: 'spread',
  'largest-diameter': 'largest',
}

const NEED =
  '^(?:do|does|will|would|should|must|shall) (?:i|we|you|one|anybody|this job|the job)(?: (?:really|still|also|even|have to|need to|not))* (?:need|want|bring|take|get|have|use|fetch|carry|require|wear)(?: (?:to (?:have|use|bring|get|wear|put on)))? (?:an? |any |some |the |my |another |special |more )*([a-z][a-z -]*?)(?: (?:for (?:this|it|that|here|the \\w+|this \\w+)|here|now|with me|in there|to (?:see|look|measure|do) .*|along|at hand|first))*$'
const WHAT_TOOLS =
  /^(?:what|which)(?: other| else)? (?:(?:tools?|gear|kit|equipment|instruments?|gauges?|things?|stuff)\b.*\b(?:need|needed|bring|take|want|wanted|fetch|use|get|have|for)\b|(?:do|should|must|will) (?:i|we) (?:need|bring|take|fetch|want)(?: (?:with me|to bring|for (?:this|it|the \w+)|here|now|along|first))*$)/
const NO_TOOL =
  /\b(?:to|it|this|that|him|her|them|one|me|somebody|someone|anybody|help|initials?|pin|time|permit|lock|locks|partner|mate|lead|witness|mechanic|people|person|man|signature|reading|readings|place|again|more|all|break|rest|name|photo)\b/

const compiled = HOW.map((one) => new RegExp(one))
const NEED_ASKED = new RegExp(NEED)

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function howAskedLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  if (WHAT_TOOLS.test(text)) return toolLines(defs)
  if (compiled.some((one) => one.test(text))) {
    const name = NAMES.find(([, pattern]) => pattern.test(text))?.[0]
    if (name !== undefined) return workedLines(defs, state, name)
  }
  const thing = NEED_ASKED.exec(text)?.[1]
  if (thing === undefined || NO_TOOL.test(thing)) return null
  return WORN.test(thing) ? wornLines(defs, state, thing, now) : thingLines(defs, thing)
}

/** Null: this job judges no such figure. */
function workedLines(defs: Definitions, state: State, name: BoreCharacteristic): string[] | null {
  const judge = defs.steps
    .flatMap((one) => asBoreJudge(one) ?? [])
    .find(({ step }) => step.against.includes(name))
  if (judge === undefined) return null
  const from = stepById(defs, judge.scope + judge.step.inputs.diameters)
  const isThere = state.verdicts[judge.id] !== undefined
  return [
    ...termLines(name.replaceAll('-', ' ')),
    `Barover works it out at sheet ${judge.number}, ${judge.step.title}, from the places of sheet ${from.number}, ${from.step.title}, each brought to 20 degC: you key the readings.`,
    BY_HAND[name],
    `why ${SAYS[name]} shows the sums${isThere ? '' : ' once it is judged'}; the limit stands there too.`,
  ]
}

/** All that a step says to those who do it. */
function wordsIn({ step }: PlacedStep): string[] {
  return [
    'text' in step ? step.text : undefined,
    step.hazard,
    ...(step.kind === 'confirm' ? [step.seen] : []),
    ...(step.kind === 'read' ? Object.values(step.how) : []),
    ...(step.kind === 'gate' ? step.evidence.flatMap((one) => ('ask' in one ? [one.ask] : [])) : []),
  ].flatMap((one) => one ?? [])
}

const MOST = 3

/** Where the sheets name it; where none does, that, and what is asked for. Null: more than a thing is asked about. */
function thingLines(defs: Definitions, thing: string): string[] | null {
  const wanted = wordsOf(thing).map(stem)
  if (wanted.length === 0 || wanted.length > 3) return null
  const holds = (text: string) => {
    const words = new Set(wordsOf(text).map(stem))
    return wanted.every((word) => words.has(word))
  }
  const named = defs.steps.flatMap((placed) => {
    const sentence = wordsIn(placed)
      .flatMap((text) => text.match(/[^.]+\.?/g) ?? [])
      .find(holds)
    return sentence === undefined ? [] : [`Step ${placed.number}, ${placed.step.title}: "${sentence.trim()}"`]
  })
  const term = termLines(thing)
  const more = named.length - MOST
  if (named.length > 0)
    return [
      `The sheets of this job speak of it:`,
      ...named.slice(0, MOST).map((line) => `  ${line}`),
      ...(more > 0 ? [`  and ${more} more`] : []),
      ...term,
    ]
  return [
    `No sheet of this job asks for "${thing}". What the site permit asks for counts all the same.`,
    ...term,
    ...toolLines(defs),
  ]
}

/** What people wear, and what they breathe from. */
const WORN =
  /\b(?:masks?|respirators?|air ?packs?|breathing (?:air|apparatus|set)|scba|ba|harness(?:es)?|lifelines?|gloves?|goggles|glasses|helmets?|hard hats?|ear (?:plugs?|defenders?|muffs?)|boots|overalls|coveralls|ppe|face shields?|visors?)\b/
const BREATHED = /\b(?:masks?|respirators?|air ?packs?|breathing|scba|ba)\b/

/** The permit says what is worn; none of it makes up for a hold point. */
function wornLines(defs: Definitions, state: State, thing: string, now: Instant): string[] {
  const named = thingLines(defs, thing) ?? []
  return [
    'What is worn says the site permit, and it comes first.',
    ...(BREATHED.test(thing)
      ? [
          'No mask makes up for a gas figure out of its limit: come out, stand clear. The hold point knows no way round it.',
        ]
      : []),
    ...(named[0]?.startsWith('No sheet') ? [`No sheet of this job speaks of "${thing}".`] : named),
    ...atHandLines(defs, state, now),
  ]
}

/** Instruments by what they are for; tools stand in the text of their sheets. */
function toolLines(defs: Definitions): string[] {
  const used = new Set(
    defs.steps.flatMap((placed) => {
      const { step } = placed
      if (step.kind === 'read') return [`${asKind(placed, 'read').scope}${step.with}`, step.with]
      return step.kind === 'gate' ? step.evidence.flatMap((one) => ('with' in one ? [one.with] : [])) : []
    }),
  )
  const seats = defs.seats.filter(({ id }) => used.has(id))
  return [
    'Instruments that this job asks for, by its procedure:',
    ...seats.slice(0, MOST + 2).map(
      ({ kinds, for: use }) =>
        `  ${list(
          kinds.map((kind) => kind.replaceAll('_', ' ')),
          'or',
        )}: ${use}`,
    ),
    ...(seats.length > MOST + 2 ? [`  and ${seats.length - MOST - 2} more`] : []),
    'Tools stand in the text of each sheet: next shows what comes. Which instruments serve today: barover kit.',
  ]
}
