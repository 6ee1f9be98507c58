// Questions about the sheet that lies open: who is needed for it, of which end it speaks, whether a place has been read often enough,
// whether what was found by eye counts, what tells two terms apart. Told from the job and its procedure; nothing is taken by them.

import { asKind, type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { mayWitness } from '../job/evidence-words.ts'
import { gateState, gatesOf, itemsOf } from '../job/gate.ts'
import { current, next, type Prompt } from '../job/next.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { type Place, type PlaceResult, placeResult, placesOf } from '../job/places.ts'
import { pendingPoint } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { stem, wordsOf } from '../papers/ask-words.ts'
import { alikeWithin } from './alike-within.ts'
import { watchedLines } from './answer-asked.ts'
import { choicesApart, decisionLines } from './decision-asked.ts'
import { mayDecide, maySignPoint, peopleText } from './may-sign.ts'
import { bareReading, deciderText, findingText, placeName, spreadText } from './names.ts'
import { offersAt } from './offered.ts'
import { termLines } from './terms.ts'
import { peopleLine } from './where.ts'

const WHO = [
  "^(?:and |so )?(?:who|whom|whose|what people|which people|how many people)(?:'s| is| are| do| does| must| has| have| should| will| else| signature| i| we)*? (?:needed|wanted|required|necessary|asked for|called for|need(?:s)?|want(?:s)?|must be|has to be|have to be|should be|needs to be)(?: (?:to be |to )?(?:here|there|for (?:this|it|that)|present|now|to stand by|at (?:this|the) (?:hold point|step|sheet)|for (?:this|the) (?:hold point|step|sheet|witness)))*$",
  '^(?:do|must|should) (?:i|we) (?:still )?(?:need|have to have|want) (?:somebody|someone|anybody|anyone|another (?:man|person|one|mechanic|lead)|a (?:second|2nd) (?:man|person|one|mechanic|lead|signature)|a (?:lead|mechanic|mate|partner|witness)|other people|more people)(?: else)?(?: (?:for (?:this|it|that)|here|now|with me))*$',
  '^(?:is|are) (?:a|another|the) (?:second (?:man|person)|lead|mechanic|witness|partner|mate)s? (?:needed|wanted|required|necessary)(?: (?:here|now|for (?:this|it)))*$',
]
/** Who has the last word about a part. */
const DECIDER = '^who (?:decides|judges|says|has the (?:say|last word)|makes the (?:decision|call))\\b.*'
const END =
  '(?:it|this|that|meant|asked|wanted|here|am i(?: at| on)?|are we(?: at| on)?|do (?:i|we|you) (?:measure|read|take|start|begin|look|open|use|stand|mean|hold|go)\\b.*|should (?:i|we|it) .*|does (?:it|this|that|the sheet|the step) (?:mean|speak of|want)|of (?:the|this) (?:cylinder|bore|machine|piston|rod)|is (?:it|this|that|meant|asked|wanted|here|asked for|to be (?:measured|read))(?: here| now)?|now|first|please)'
const WHICH_END = [
  `^(?:and |so )?(?:at |on |from |in |of )?(?:which|what) (?:end|opening)(?: ${END})*$`,
  `^(?:and |so )?(?:at |on |from |in |of )?(?:which|what) (?:side|head|cover|face)(?: ${END})+$`,
  '^(?:is (?:it|this|that) |do you mean |at )?(?:the )?(?:head[ -]end|crank[ -]end|he|ce)(?: or (?:the |at the )?(?:crank[ -]end|head[ -]end|ce|he))(?: here| now)?$',
  '^is (?:it|this|that|here) (?:at |on )?(?:the )?(?:head|crank)[ -]end$',
]
const COUNT_WORD =
  '(?:first|second|third|fourth|fifth|last|next|one|two|three|four|five|\\d(?:st|nd|rd|th)?|once|twice|another)'
const ONE = '(?:one|reading|figure|repeat|measurement|value|time|times|ones|readings|repeats)'
const REPEATS = [
  `^(?:is|are|was|were|will|would) (?:the |this |that |my |these |those |it )?(?:${COUNT_WORD} )?(?:${ONE} )?(?:be |now |already )?(?:enough|sufficient|the last(?: one)?|agreeing|close enough|near enough)(?: (?:now|here|for (?:this|it|this place|the place)))*$`,
  '^(?:does|do|will|did) (?:the |this |that |my |these |those )?(?:first|second|third|fourth|last|late|two|three|\\d(?:st|nd|rd|th)?)? ?(?:one|reading|figure|repeat|measurement|value|ones|readings|repeats)s? (?:count|agree|settle it|do|suffice)(?: (?:now|here|too|as well|already))*$',
  `^how (?:many|much|often)(?: more| other)? ?(?:${ONE}|times)?(?: more)? ?(?:do|must|should|shall|have|has|is|are|to) (?:i|we|it|to|still|needed|this|one)? ?(?:still )?(?:have to |need to )?(?:be )?(?:read|measure|measured|take|need|needed|do|repeat|wanted|asked|here|want|enough)\\b.*`,
  `^(?:do|must|should|have) (?:i|we) (?:still )?(?:have to |need to |need |to )?(?:read|measure|take|do|repeat|a|another|one|it)(?: (?:it|this|that|here|again|a|an|another|${COUNT_WORD}|more|once|time|times|${ONE}|place|anew))*$`,
  `^why (?:a |the |is there a |do i need a |must i (?:read|measure|take) (?:it )?(?:a )?)?(?:third|fourth|second|another|again|one more|once more|3rd|2nd|4th)(?: (?:${ONE}|time|again))*$`,
  `^(?:one|two|how many|once) more(?: ${ONE})?$`,
]
const OF_FINDING =
  '^(?:(?:does|do|will|did|would|is|are|was|has|have) (?:the|a|an|this|that|my|such a)|(?:do|are)|(?:what|how) (?:about|is with|happens? (?:with|to|about|now with)|becomes? of|does) (?:the|a|an|this|that)|who (?:decides|looks) (?:about|on|at) (?:the|this|that)|why (?:does|is|did) (?:the|a|this|that)) ([a-z]+)(?: (?:i|we) (?:found|saw|noted|keyed))?(?: (?:not|also|too|ever|even|still))*(?: (?:count(?:s|ed)?|matter|judged|in(?:cluded)?|in it|in (?:the|this) (?:verdict|judgement|figures?)|part of (?:it|the verdict)|change (?:it|anything|the verdict)|make (?:a|any) difference|looked at|forgotten|decided|considered|taken into account|go in(?:to it)?|mean for it|do to the verdict|then|now|on record|noted|a finding|for (?:the|this) verdict|serious|bad))*$'
const DIFFERENCE = [
  "^(?:what(?:'?s| is| are)? |tell me |explain )?(?:the )?differences?(?: between)? (?:an? |the )?(.+?) (?:and|or|to|from) (?:an? |the )?(.+)$",
  '^differences? ([a-z-]+) ([a-z-]+)$',
  '^(?:how|in what) (?:does|do|is|are) (?:an? |the )?(.+?) (?:differ|different) from (?:an? |the )?(.+)$',
  '^(?:is|are) (?:an? |the )?(.+?) (?:the same|different|any different|other|the same thing)(?: thing)? (?:as|from|than|to) (?:an? |the )?(.+)$',
  '^(?:how|in what) (?:do|are) (?:an? |the )?(.+?) and (?:an? |the )?(.+?) (?:differ|different)$',
  '^(?:do|should|must|shall|would) (?:i|we|a lead) (?:take |choose |pick |key |decide |use )?(?:an? |the )?([a-z-]+) or (?:an? |the )?([a-z-]+)(?: here| now)?$',
  '^(?:what is )?(?:is it )?(?:an? )?([a-z-]+(?: [a-z-]+)?) (?:vs\\.?|versus|or) (?:an? )?([a-z-]+(?: [a-z-]+)?)$',
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const DECIDES =
  /^(?:can|may|could|should|must|does|is) (?:i|we|he|she|the \w+|a \w+|my \w+|\w{2,4}) (?:allowed to |have to )?(?:accept|decide|reject|approve|sign|choose|pick|say)/i
const WHY_STANDARD =
  /^why\b.*\b(?:measure|check|read|set|do|need|use|test)\b.*\b(?:ring|standard|set-?check|master|rod)\b/i
const [WHO_ASKED, END_ASKED, REPEATS_ASKED] = [
  compiled([...WHO, DECIDER]),
  compiled(WHICH_END),
  compiled(REPEATS),
]
const [FINDING_ASKED, DIFFERENCE_ASKED] = [new RegExp(OF_FINDING, 'i'), compiled(DIFFERENCE)]

/** Null: the question is none of these. `text`: without what stands behind its last word. */
export function sheetAskedLines(defs: Definitions, state: State, text: string): string[] | null {
  const is = (patterns: readonly RegExp[]) => patterns.some((one) => one.test(text))
  if (is(WHO_ASKED))
    return [...(/^(?:and |so )?how many/i.test(text) ? atLeastLines(defs) : []), ...whoLines(defs, state)]
  const two = DIFFERENCE_ASKED.map((one) => one.exec(text)).find((one) => one !== null)
  const apart =
    two === undefined || two === null ? null : choicesApart(defs, state, two[1] ?? '', two[2] ?? '')
  if (apart !== null) return apart
  const { kind } = next(defs, state)
  if ((kind === 'decide' || kind === 'findings') && DECIDES.test(text)) return whoLines(defs, state)
  const choices = decisionLines(defs, state, text)
  if (choices !== null) return choices
  if (WHY_STANDARD.test(text) && isAtStandard(defs, state)) return STANDARD
  if (is(END_ASKED)) return endLines(defs, state)
  if (is(REPEATS_ASKED)) return repeatLines(defs, state, /\bagain|anew\b/i.test(text))
  const found = FINDING_ASKED.exec(text)?.[1]
  if (found !== undefined) return findingLines(defs, state, found)
  return two === undefined || two === null ? null : differenceLines(defs, two[1] ?? '', two[2] ?? '')
}

/** Of the ring that a gauge is set on, and of no ring of a piston. */
const STANDARD = [
  'The standard is a size that is known, and no part of the machine: read before and after, it tells how far off the gauge is.',
  'A gauge that reads it wrong by more than its record allows measures nothing: what it read since the check before is in doubt.',
]

function isAtStandard(defs: Definitions, state: State): boolean {
  const step = current(defs, state)?.placed.step
  return step?.kind === 'read' && step.plausible.from === 'standard'
}

/** Where a hold point wants a witness nobody does the job alone. */
function atLeastLines(defs: Definitions): string[] {
  const witnessed = gatesOf(defs).find((gate) => gate.step.evidence.some(({ kind }) => kind === 'witness'))
  return witnessed === undefined
    ? []
    : [
        `Two people at least: hold point ${witnessed.number} wants a witness who did none of it. Nobody does this job alone.`,
      ]
}

/** Said of who is needed: no role is guessed, and no name stands for somebody who looks. */
export function whoLines(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  const here = whoHere(defs, state, prompt)
  const from = (current(defs, state)?.placed.number ?? 1) + (here.length > 0 ? 1 : 0)
  const ahead = whoAhead(defs, state, from)
  return [
    ...(here.length > 0
      ? here
      : ['What is asked here is keyed by whoever is at the keyboard: nobody else is named for it.']),
    ...(ahead.length === 0 ? [] : ['Still to come in this job:', ...ahead]),
    peopleLine(state),
    ...(isExposed(defs, state) ? [OUTSIDE] : []),
    SITE,
  ]
}

const OUTSIDE =
  'Nobody reaches in without somebody outside who can call for help. Common practice, no source.'

function isExposed(defs: Definitions, state: State): boolean {
  const step = current(defs, state)?.placed.step
  return step !== undefined && 'exposes' in step && (step.exposes ?? []).length > 0
}

const SITE = 'Who has to be there stands in the site permit too; where it asks for more, it counts.'

/** What the very prompt wants, where that is somebody by role. */
function whoHere(defs: Definitions, state: State, prompt: Prompt): string[] {
  if (prompt.kind === 'evidence' && prompt.item.evidence.kind === 'witness') {
    const { roles } = prompt.item.evidence
    const fits = mayWitness(defs, state, prompt.gate, prompt.item.evidence)
    return [
      `Needed here: a witness, a ${list(roles, 'or')} of the crew who did none of it and looks for themselves.`,
      ...may(peopleText(fits), fits.length),
    ]
  }
  if (prompt.kind === 'point' || prompt.kind === 'review') {
    const fits = maySignPoint(defs, state, prompt.step)
    return [
      `Needed here: a ${list(pendingPoint(state, prompt.step)?.roles ?? [], 'or')} who did none of this.`,
      ...may(peopleText(fits), fits.length),
    ]
  }
  if (prompt.kind === 'decide') {
    const choice = offersAt(state, prompt.step).find(({ barred }) => barred === null)?.choice ?? 'hold'
    const fits = mayDecide(defs, state, { step: prompt.step.id, choice })
    return [
      'Needed here: a lead who took none of the readings and did not key them.',
      ...may(peopleText(fits), fits.length),
    ]
  }
  if (prompt.kind === 'findings') return ['Needed here: a lead, who decides and did not do that work.']
  if (prompt.kind === 'countersign') return ['Needed here: the lead who said it by radio, to sign for it.']
  return []
}

const may = (people: string, count: number) =>
  count === 0 ? ['Nobody of the crew file fits it now.'] : [`May: ${people}.`]

/** More would push the question off a small screen. */
const MOST = 4

/** Whom later sheets ask for by role: hold points that are not complete, points of the work, decisions of a lead. */
function whoAhead(defs: Definitions, state: State, from: number): string[] {
  const told = defs.steps.filter(({ number }) => number >= from).flatMap((placed) => whoAt(state, placed))
  const more = told.length - MOST
  return [...told.slice(0, MOST), ...(more > 0 ? [`  and ${more} more sheets that ask for somebody`] : [])]
}

function whoAt(state: State, placed: PlacedStep): string[] {
  const { step, number } = placed
  if (step.kind === 'gate')
    return gateState(state, placed.id).status === 'open'
      ? []
      : step.evidence.flatMap((one) => {
          if (one.kind === 'witness')
            return [`  hold point ${number}: a witness, a ${list(one.roles, 'or')} who did none of it`]
          return one.kind === 'numbers' && one.per === 'person' && (one.at_least ?? 0) > 1
            ? [`  hold point ${number}: at least ${one.at_least} people, each with a number of their own`]
            : []
        })
  const point = pendingPoint(state, placed)
  if (point !== null)
    return [`  sheet ${number}, ${step.title}: a ${list(point.roles, 'or')} who did none of it`]
  return step.kind === 'decide' && state.dispositions[placed.id] === undefined
    ? [`  sheet ${number}, ${step.title}: a lead who did not measure, if it is asked`]
    : []
}

const NAMES_END = /\b(?:head|crank|outer|each|both|either) ends?\b|\b(?:head|crank)-end\b/i

/** What the sheet itself says of an end, and what the two are called. */
function endLines(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  const place = prompt.kind === 'read' ? placeName(defs, prompt.step.id, prompt.place.key) : ''
  const said = textsAt(prompt).filter((text) => NAMES_END.test(text))
  const here = [
    ...(NAMES_END.test(place) ? [`Here: ${place}.`] : []),
    ...said.slice(0, 2).map((text) => `The sheet says: "${text}"`),
  ]
  return [
    ...(here.length > 0 ? here : ['What is asked here names no end.']),
    ...termLines('head end'),
    ...termLines('crank end'),
  ]
}

/** Its own words; a line that goes by the place of the one before it, with those of that. */
function textsAt(prompt: Prompt): string[] {
  if (prompt.kind === 'evidence') {
    const { evidence } = prompt.item
    const all = prompt.gate.step.evidence
    const before = all.slice(0, all.findIndex(({ id }) => id === evidence.id) + 1).reverse()
    const asks = before.flatMap((one) => ('ask' in one ? [one.ask] : []))
    const from = asks.findIndex((ask) => !/\bsame place\b/i.test(ask))
    return asks.slice(0, from + 1).reverse()
  }
  if (!('step' in prompt)) return []
  const { step } = prompt.step
  return [
    ...('text' in step && step.text !== undefined ? [step.text] : []),
    ...(step.kind === 'confirm' ? [step.seen] : []),
  ]
}

/** How often the place is read, what is in and what is left; of the place before it where none of this one is in. */
function repeatLines(defs: Definitions, state: State, again: boolean): string[] | null {
  const prompt = next(defs, state)
  const last = lastRead(defs, state)
  if (prompt.kind === 'evidence') return onceLines(defs, state, prompt)
  if (prompt.kind !== 'read' && prompt.kind !== 'doubt')
    return again || last === null
      ? null
      : ['No repeats are asked here.', `Read last: ${placeLine(defs, state, last.step, last.place)}`]
  const at = prompt.kind === 'read' ? prompt : last
  if (at === null) return ['No reading is in yet.']
  const placed = asKind(prompt.step, 'read')
  const here = prompt.kind === 'read' ? prompt.place : placeOf(placed, prompt.doubt.place)
  if (here === undefined) return ['No reading is in yet.']
  const before = last !== null && last.place.key !== here.key ? [last] : []
  return [
    ...(prompt.kind === 'doubt'
      ? [`${prompt.doubt.typed.trim()} counts for nothing until its question is answered.`]
      : []),
    `Here: ${placeLine(defs, state, placed, here)}`,
    ruleLine(defs, placed),
    ...before.map(({ step, place }) => `Before it: ${placeLine(defs, state, step, place)}`),
  ]
}

function onceLines(
  defs: Definitions,
  state: State,
  { gate }: Extract<Prompt, { kind: 'evidence' }>,
): string[] {
  const items = itemsOf(defs, state, gate)
  const shown = items.filter(({ key }) => gateState(state, gate.id).given[key] !== undefined).length
  return [
    'Each line of a hold point is keyed once, and none is passed by a second figure.',
    `Hold point ${gate.number}: ${shown} of ${items.length} shown.`,
  ]
}

type ReadStep = Parameters<typeof placesOf>[0]

function placeOf(placed: ReadStep, key: string): Place | undefined {
  return placesOf(placed).find((one) => one.key === key)
}

function lastRead(
  defs: Definitions,
  state: State,
): { readonly step: ReadStep; readonly place: Place } | null {
  const all = Object.values(state.readings)
    .flat()
    .filter(({ correctedBy, voidBy }) => correctedBy === null && voidBy === null)
  const newest = all.reduce<(typeof all)[number] | null>(
    (one, other) => (one === null || other.seq > one.seq ? other : one),
    null,
  )
  if (newest === null) return null
  const step = asKind(stepById(defs, newest.step), 'read')
  const place = placeOf(step, newest.place)
  return place === undefined ? null : { step, place }
}

/** `Bore, CENTRE, TOP TO BOTTOM: 2 taken, 9.5033 in and 9.5039 in, spread 0.0006 in; one more is asked.` */
function placeLine(defs: Definitions, state: State, placed: ReadStep, place: Place): string {
  const result = placeResult(placed, place, state)
  const { readings, spread } = result
  const taken = readings.map((one) => `${bareReading(defs, one)} ${one.unit}`)
  const apart =
    spread === null || readings.length < 2 ? '' : `, spread ${spreadText(defs, state, place.key, spread)}`
  const figures = taken.length === 0 ? 'none taken' : `${taken.length} taken, ${list(taken)}${apart}`
  return `${placeName(defs, placed.id, place.key)}: ${figures}; ${leftText(placed, result)}.`
}

function leftText({ step: { repeats } }: ReadStep, { state, readings }: PlaceResult): string {
  const { at_least: least, at_most: most } = repeats
  const missing = least - readings.length
  switch (state) {
    case 'settled':
      return readings.length === 1 ? 'enough' : 'enough, as they agree'
    case 'unsettled':
      return 'no more are taken, and they do not agree: what rests on it is HOLD'
    case 'not-applicable':
      return 'entered as not applicable'
    case 'more':
      if (missing > 0) return `at least ${missing} more ${missing === 1 ? 'is' : 'are'} asked`
      return `they lie too far apart, so one more is asked, ${most - readings.length} more at the most`
  }
}

/** As the readings are combined: those in the middle have to agree. */
function ruleLine(defs: Definitions, { step: { repeats, title } }: ReadStep): string {
  const { at_least: least, at_most: most, within } = repeats
  return least === 1
    ? `${title}: one reading is enough; up to ${most} can stand.`
    : `${title}: at least ${least} readings, ${most} at the most; enough once those in the middle lie within ${alikeWithin(defs, within)}.`
}

/** Of what was found by eye: where it is put down, what it is then, and that no figure has it in it. Null: no sheet looks for it. */
function findingLines(defs: Definitions, state: State, word: string): string[] | null {
  const wanted = stem(word)
  const has = (label: string) => wordsOf(label).some((one) => stem(one) === wanted)
  const looked = defs.steps.flatMap(({ number, step }) =>
    step.kind !== 'observe'
      ? []
      : step.conditions
          .filter(({ label, finding }) => finding === true && has(label))
          .map(({ label }) => `Sheet ${number}, ${step.title}: "${label}"`),
  )
  if (looked.length === 0) return null
  const found = nonconformances(defs, state).filter(
    (nc) => nc.stands && stepById(defs, nc.step).step.kind === 'observe' && has(findingText(defs, state, nc)),
  )
  return [
    ...looked.slice(0, MOST),
    'Put down there it is a nonconformance: open until a lead has decided on it, whatever the figures come to.',
    'No size has it in it: ACCEPT of sizes says nothing of what was seen.',
    ...(found.length === 0
      ? ['By the record none such was found on this job.']
      : found.map(
          (nc) =>
            `On record: ${findingText(defs, state, nc).replace(/\.$/, '')}; ${nc.decided === null ? 'OPEN, a lead decides on it before the job ends' : `${nc.decided.choice}, decided by ${deciderText(nc.decided)}`}.`,
        )),
  ]
}

/** Both terms beside each other; null where not both are known, as half an answer would be taken for the whole. */
function differenceLines(defs: Definitions, one: string, other: string): string[] | null {
  const isVerdict = [one, other].some((word) => /^(?:accept|monitor)$/i.test(word.trim()))
  // Beside MONITOR the other is a verdict too, and not the decision of that name.
  const called = (name: string) => (isVerdict ? singular(name).toUpperCase() : singular(name))
  const [first, second] = [termLines(called(one)), termLines(called(other))]
  if (first.length === 0 || second.length === 0) return null
  return [...first, ...second, ...(isVerdict ? watchedLines(defs) : [])]
}

const singular = (name: string) => name.trim().replace(/^(?:an? |the )/i, '')
