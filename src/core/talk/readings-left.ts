// How many readings are still to come, at this sheet and at those after it, and whether another instrument would give the same. Told from
// the procedure and what is in; of a gauge that read nothing here no figure is known.
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { applicability, current, next } from '../job/next.ts'
import { placeResult, placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { instrumentName } from './names.ts'
import { termLines } from './terms.ts'
import { timeLines } from './where.ts'

const READINGS =
  '(?:readings?|measurements?|figures?|numbers?|values?|diameters?|places?|spots?|stations?|positions?|repeats?|ones?|times?)'
const LEFT = '(?:left|to go|more|remaining|remain|to come|still|outstanding|missing|to do)'
const HOW_MANY = [
  `^how (?:many|much)(?: more| other)? ${READINGS}(?: more)?(?: (?:are|is|do|have|must|should|will|need|i|we|there|still|got|to|have to|need to))* ?(?:${LEFT}|take|taken|read|measure|measured|need|needed|be|in all|altogether|in total|wanted|asked)?(?: (?:take|read|measure|there|here|in all|altogether|in total|now|on this sheet|in this (?:sheet|step|job)|after (?:this|that)|to (?:do|go|take|read|measure)|for (?:this|the) \\w+|at (?:this|the) \\w+))*$`,
  `^how many(?: are| is)? (?:left|more|to go)$`,
  `^how many more(?: (?:do|must|should) (?:i|we))?(?: (?:have|need|to|still))*(?: (?:read|measure|take|do|key))?(?: .*)?$`,
  `^(?:what|which) ${READINGS}(?: (?:are|is|do|have|i|we))* (?:still )?${LEFT}(?: to .*)?$`,
  `^(?:are|is) (?:there )?(?:(?:any|many|more|that|this|the)(?: of)? ?)+(?:more |the )*${READINGS} ?(?:left|to go|to come|to do|more)?$`,
  `^${READINGS} (?:left|to go|remaining)$`,
]
const TOOL =
  '(?:one|meter|gauge|micrometer|instrument|thermometer|indicator|caliper|monitor|detector|gas meter|bore gauge|ring)'
const SAME = '(?:same|the same|as well|as good|different(?:ly)?|equal|agree|match|alike|better|instead)'
const OTHER_SAME = [
  `^(?:does|do|will|would|should|is|are|did|can|could|may|might) (?:the |an?|my |these |those |both |two |all )*(?:other|another|second|spare|different|two|both|2nd|new)?(?: of the)? ?${TOOL}s? (?:give|show|read|say|tell|do|be|come out|measure|get|agree|match|work)?\\b.*\\b(?:${SAME}|agree|match)\\b.*$`,
  `^(?:what|is it|does it matter|do i get)\\b.*\\b(?:with|on|by|from|if i use|which) (?:the |an? |another |a different )*(?:other|another|second|spare|different)? ?${TOOL}(?: i use| i take)?$`,
  `^(?:do|does|will|would) (?:both|the two|they|these)(?: ${TOOL}s?)? (?:agree|match|read|show|give)\\b.*`,
  `^(?:which|what)(?: of the two| one)? (?:is|reads?|are) (?:better|right|more (?:accurate|exact)|best|the better one|the best)$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [MANY_ASKED, SAME_ASKED] = [compiled(HOW_MANY), compiled(OTHER_SAME)]
/** More would push the question off a small screen. */
const MOST = 4

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function readingsLeftLines(defs: Definitions, state: State, text: string): string[] | null {
  if (MANY_ASKED.some((one) => one.test(text)) && !/\b(?:apart|out|over|under|wear|in a)\b/.test(text))
    return leftLines(defs, state)
  return SAME_ASKED.some((one) => one.test(text)) ? sameLines(defs, state) : null
}

interface Left {
  readonly number: number
  readonly title: string
  readonly places: number
  readonly done: number
  readonly least: number
  readonly each: number
  readonly perhaps: boolean
}

function leftAt(defs: Definitions, state: State, placed: PlacedStep): Left[] {
  if (placed.step.kind !== 'read') return []
  const way = applicability(defs, state, placed)
  if (way === 'skip') return []
  const read = asKind(placed, 'read')
  const results = placesOf(read).map((place) => placeResult(read, place, state))
  const open = results.filter((one) => one.state === 'more')
  const { at_least: each } = read.step.repeats
  // One that is asked once more, as those in do not agree, wants one at least.
  const least = open.reduce((sum, { readings }) => sum + Math.max(1, each - readings.length), 0)
  const { title } = read.step
  const { number } = placed
  return least === 0
    ? []
    : [
        {
          number,
          title,
          places: results.length,
          done: results.length - open.length,
          least,
          each,
          perhaps: way === 'hold',
        },
      ]
}

function leftLines(defs: Definitions, state: State): string[] {
  const at = current(defs, state)?.placed.number ?? 0
  const all = defs.steps.flatMap((placed) => leftAt(defs, state, placed))
  if (all.length === 0) return ['No reading is left in this job as it stands now.']
  const here = all.find(({ number }) => number === at)
  const after = all.filter(({ number }) => number !== at)
  // What hangs on an answer that is still to come is no part of the least: of two such sheets one may shut the other out.
  const total = all.reduce((sum, { least, perhaps }) => sum + (perhaps ? 0 : least), 0)
  const hangs = all.some(({ perhaps }) => perhaps)
    ? ', and those of the sheets that are only asked by an answer before them'
    : ''
  const more = after.length - MOST
  return [
    ...(here === undefined
      ? ['No reading is asked at this sheet.']
      : [
          `Sheet ${here.number}, ${here.title}: ${here.least} more at the least, ${here.done} of ${here.places} ${here.places === 1 ? 'place' : 'places'} done, ${here.each} at each.`,
        ]),
    ...(after.length === 0 ? [] : ['After it:']),
    ...after
      .slice(0, MOST)
      .map(
        ({ number, title, least, perhaps }) =>
          `  sheet ${number}, ${title}: ${least}${perhaps ? ', if it is asked' : ''}`,
      ),
    ...(more > 0 ? [`  and ${more} more ${more === 1 ? 'sheet' : 'sheets'} with readings`] : []),
    `${total} in all, at the least${hangs}: where repeats lie too far apart one more is asked.`,
    ...timeLines(defs, state),
  ]
}

/** Of those that could be picked, or the one in use. */
function sameLines(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  const seatId =
    prompt.kind === 'pick'
      ? prompt.seat.id
      : prompt.kind === 'read'
        ? asKind(prompt.step, 'read').step.with
        : prompt.kind === 'evidence' && 'with' in prompt.item.evidence
          ? prompt.item.evidence.with
          : null
  const seat = defs.seats.find(({ id }) => id === seatId)
  const fits =
    seat === undefined ? [] : defs.instruments.instruments.filter(({ kind }) => seat.kinds.includes(kind))
  const isMeter = fits.some(({ kind }) => kind === 'gas_meter')
  return [
    'Nobody knows before both have read: no two give quite the same, and Barover has no figure that was not keyed.',
    ...fits.slice(0, MOST).map((one) => `${instrumentName(defs, one.id)}: ${ownError(one)}.`),
    ...(isMeter ? METERS : [GAUGES, ...termLines('several gauges')]),
    'Where two differ, neither figure is picked for being liked: key what the one in use shows; the word instrument takes one off that is doubted.',
  ]
}

function ownError(one: Definitions['instruments']['instruments'][number]): string {
  if (one.kind === 'gas_meter')
    return one.flammable_sensor === 'catalytic'
      ? `sees what burns with a catalytic sensor, which needs at least ${one.needs_oxygen.at_least.text} of oxygen`
      : `sees what burns with an ${one.flammable_sensor} sensor${one.reads_in_inert === undefined ? '' : ', and reads in gas without air'}`
  const u = one.uncertainty
  return u === undefined
    ? 'no measuring error on record'
    : `may be off by ${u.expanded.text.replace('delta-', '')} (U, k = ${u.k}; ${u.source})`
}

const GAUGES =
  'Two are compared on the same standard, before and after: the set-check of each says how far it is off.'
const METERS = [
  'Each is tried on test gas by itself, and answers or does not.',
  'Where two gas meters differ, the worse figure is believed: come out, stand clear, and find out why. Common practice, no source.',
]
