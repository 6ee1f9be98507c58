// What a figure means that somebody has before their eyes: 18 on a gas meter, a number of a list, a figure of a verdict. Held against the
// limit of the line that is asked, or of the gas that is named; nothing is taken by it, and no figure is called good.
import { findReading } from '../job/admit-change.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import { GAS_UNITS, readGas } from '../job/evidence-gas.ts'
import { gateState, gatesOf, itemByKey } from '../job/gate.ts'
import { isLittleOxygen } from '../job/little-oxygen.ts'
import { next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { gasPassage } from '../papers/limit-passages.ts'
import { standingReadings } from './correct.ts'
import { instrumentName, nonconformanceText } from './names.ts'
import { offerLines, offersAt } from './offered.ts'
import { readingFigureLines } from './reading-asked.ts'
import { termLines } from './terms.ts'
import { whyKnown } from './why-number.ts'

const NUMBER = '(-?\\d+(?:[.,]\\d+)?)'
const UNIT = '(%|per ?cent|ppm|% ?lel|% ?vol(?:ume)?|lel|vol)'
const GAS = '(oxygen|o2|lel|flammables?|h2s|hydrogen sul(?:f|ph)ide)'
/** What a reading is keyed in; it stays with the figure. */
const SIZE = '(?: ?(?:in|inch|inches|mm|deg ?[fc]|psig?|barg?|kpa))?'
const TAIL = `(?: ?${UNIT})?(?: (?:of |for )?(?:the )?${GAS})?`
const PLACE = '(?: (?:here|there|now|then|inside|outside|in there|on the meter|where (?:i|we|people) stand))*'
const FIGURE = `${NUMBER}${SIZE}${TAIL}${PLACE}`
const CALLED = ` (?:breathable|dangerous|deadly|harmful|critical|normal|poor|believable|likely|possible|plausible|a problem|(?:too |still |not |all |a bit |really |very )*(?:much|many|high|low|little|big|large|small|wide|worn|warm|hot|cold|right|wrong|correct|accurate|ok|okay|good|bad|fine|enough|allowed|acceptable|accepted|close|within)(?: (?:its |the )?(?:limits?|spec|tolerance))?(?: or (?:bad|not|no|too \\w+|wrong|worn|high|low|small))?|out(?: of (?:its |the )?(?:limits?|spec|tolerance|range))?|(?:with)?in(?:side)? (?:its |the )?(?:limits?|spec|tolerance|range)|over|under)${PLACE}`
const OF_FIGURE = [
  new RegExp(
    `^(?:and |so |but )?what(?: (?:do|should|must|shall|can) (?:i|we) do (?:if|when))?(?:'s| is| does| do| would| will| about| if)?(?: (?:it|the meter|the figure|a figure of|a reading of|number|i|we|a|an|the|is|was|reads?|shows?|says?|get|have|wrong with|of))*? ${NUMBER}${TAIL}${PLACE}(?: (?:mean|say|tell(?: me| us)?|stand for|be))?${PLACE}$`,
    'i',
  ),
  new RegExp(
    `^(?:is|would|was|are|will) (?:a |an |the |my )?(?:reading |figure )?(?:of )?${FIGURE}(?: be)?${CALLED}(?: (?:for|on|with|by) (?:the|a|an|this|my|our) \\w+)?$`,
    'i',
  ),
  new RegExp(`^${FIGURE}(?: is| be| was)?${CALLED}$`, 'i'),
  new RegExp(
    `^(?:the |my |our )?(?:meter|gauge|micrometer|thermometer|instrument|figure|it) (?:now )?(?:shows?|reads?|says?|gives?|is at) (?:only |just )?${FIGURE}[,;.]? (?:what now|now what|what then|what do (?:i|we) do(?: now)?|what does (?:it|that) mean|is (?:it|that|this)${CALLED})$`,
    'i',
  ),
  new RegExp(
    `^(?:how|what) (?:about|if|is with|would be)(?: (?:it|i|we|the figure|the reading|is|was|reads?|get|got|have|key|shows?))*(?: (?:a|an))? ${FIGURE}$`,
    'i',
  ),
  new RegExp(
    `^(?:does|do|would|will) ${FIGURE} (?:pass|fail|do|count|go|fit|mean (?:it is )?(?:good|bad|worn)|look (?:right|good|bad|ok))\\b.*$`,
    'i',
  ),
  new RegExp(
    `^(?:i|we) (?:get|got|have|read|measured?) ${FIGURE}[,;.]? ?(?:is|and is|would)? ?(?:it|that|this)?${CALLED}$`,
    'i',
  ),
]
/** Not of the figure first: what if the oxygen is 18. */
const OF_GAS = new RegExp(
  `^(?:and |so |but )?(?:what )?(?:happens )?(?:if|when|is|about|with) (?:the |my |our )?${GAS} (?:is |was |reads? |shows? |falls to |drops to |rises to |goes to |at |of |only |just )+${NUMBER}(?: ?${UNIT})?${PLACE}$`,
  'i',
)

type GasName = keyof typeof GAS_UNITS

/** Null: no figure is asked about. */
export function figureLines(defs: Definitions, state: State, text: string): string[] | null {
  const found = figureIn(text)
  if (found === null) return null
  const { typed, keyed, gas } = found
  const prompt = next(defs, state)
  // So many readings, and no size.
  if (/^\d$/.test(typed) && /\benough\b/i.test(text) && prompt.kind === 'read') return null
  if (gas === null) {
    const choice = choiceLines(defs, state, prompt, typed)
    if (choice !== null) return choice
    const known = recordLines(defs, state, Number(typed))
    // What is asked here is held against its own size first; a number of a sheet is that where what it means is asked.
    const isMeaning = /^what(?:'s| is| does)\b/i.test(text)
    const isKnown = known.length > 0 || whyKnown(defs, state, typed) !== null
    const reading = isMeaning && isKnown ? null : readingFigureLines(defs, state, keyed, !isMeaning)
    if (reading !== null) return [...reading, ...known]
    if (known.length > 0) return known
  }
  const lines = gasLines(defs, prompt, gas, typed)
  if (lines.length > 0) return lines
  return (
    whyKnown(defs, state, typed) ?? [
      ...fellLines(state, prompt),
      `${typed} alone stands nowhere on this sheet or among what was taken.`,
      'Say what it is of, as: what does 18 % oxygen mean. why and a number of a sheet tells its sums.',
    ]
  )
}

interface Figure {
  readonly typed: string
  /** With the unit that stood behind it, as a reading is keyed. */
  readonly keyed: string
  readonly gas: GasName | null
}

function figureIn(text: string): Figure | null {
  const of = OF_FIGURE.map((pattern) => pattern.exec(text)).find((one) => one !== null)
  const [whole = '', figure, unit, name] = of ?? []
  if (figure !== undefined) {
    const size = new RegExp(`${figure.replace('.', '\\.')}(${SIZE})`, 'i').exec(whole)?.[1] ?? ''
    const isWord =
      /^ ?in$/i.test(size) && /\bin (?:its |the )?(?:limits?|spec|tolerance|range|there)\b/i.test(whole)
    const typed = figure.replace(',', '.')
    return { typed, keyed: isWord ? typed : `${typed}${size}`, gas: gasNamed(unit, name) }
  }
  const [, gas, read] = OF_GAS.exec(text) ?? []
  const typed = read?.replace(',', '.')
  return typed === undefined ? null : { typed, keyed: typed, gas: gasNamed(undefined, gas) }
}

function gasNamed(unit: string | undefined, name: string | undefined): GasName | null {
  const said = `${unit ?? ''} ${name ?? ''}`.toLowerCase()
  if (/oxygen|o2/.test(said)) return 'oxygen'
  if (/lel|flammable/.test(said)) return 'flammable'
  return /ppm|h2s|hydrogen/.test(said) ? 'hydrogen_sulfide' : null
}

/** Of the line that is asked; of a gas that is named and is another, each place where this job reads it. */
function gasLines(defs: Definitions, prompt: Prompt, gas: GasName | null, typed: string): string[] {
  const here = prompt.kind === 'evidence' && prompt.item.evidence.kind === 'gas' ? prompt.item.evidence : null
  const all = gatesOf(defs).flatMap((gate) =>
    gate.step.evidence.flatMap((one) => (one.kind === 'gas' ? [one] : [])),
  )
  const ofLine = here === null ? [] : [here]
  const asked = gas === null || ofLine.some((one) => gasOf(defs, one) === gas) ? ofLine : all
  const once = asked.filter((one, i) => asked.findIndex(({ limit }) => limit === one.limit) === i)
  const told = once.flatMap((evidence) => {
    const limitGas = gasOf(defs, evidence)
    if (limitGas === null || (gas !== null && limitGas !== gas)) return []
    const read = readGas(defs, evidence, `${typed} ${GAS_UNITS[limitGas]}`)
    if (!read.ok) return [read.error.say]
    const { limit, shown, outside, reading } = read.value
    const [name] = gasPassage(defs, limit).text.split(':')
    return [
      `${shown}, ${name}: ${outside === null ? 'not out of its limit.' : `OUT OF ITS LIMIT, ${outside}.`}`,
      ...(isLittleOxygen(defs, limit, reading.si) ? [NO_AIR] : []),
      `  The limit${evidence === here ? ' of this line' : ''}: ${gasPassage(defs, limit).text}`,
      outside === null ? ALONE : AS_READ,
    ]
  })
  // What is done then is the same at each place: told once, last.
  const then = [AS_READ, ALONE].filter((line) => told.includes(line))
  return [...told.filter((line) => !then.includes(line)), ...then]
}

const AS_READ =
  'Read there, it is keyed as it was read: everybody comes out and stands clear, and the hold point is shut.'
const ALONE = 'One figure opens nothing: the hold point wants each of its lines, and its witness.'
const NO_AIR = 'Nobody can breathe that: no head goes in, whatever passes there.'

function gasOf(defs: Definitions, { limit }: { readonly limit: string }): GasName | null {
  return defs.machine.site.gas.limits.find(({ id }) => id === limit)?.gas ?? null
}

/** What felled a hold point was likely the very figure. */
function fellLines(state: State, prompt: Prompt): string[] {
  const why = prompt.kind === 'clear' ? gateState(state, prompt.gate.id).why : null
  return why === null ? [] : [`The hold point fell: ${why.replace(/\.+$/, '')}.`]
}

/** Where the figure stands on record: evidence of a hold point, or a reading. */
function recordLines(defs: Definitions, state: State, value: number): string[] {
  const shown = gatesOf(defs).flatMap((gate) =>
    Object.entries(gateState(state, gate.id).given).flatMap(([key, given]) => {
      const item = itemByKey(defs, gate, key)
      if (item?.evidence.kind !== 'gas' || Number.parseFloat(given.shown) !== value) return []
      const limit = defs.machine.site.gas.limits.find(
        ({ id }) => item.evidence.kind === 'gas' && id === item.evidence.limit,
      )
      return limit === undefined
        ? []
        : [
            `On record, hold point ${gate.number}, ${gasPassage(defs, limit).text.split(':')[0]}: ${given.shown}.`,
            ...(given.si !== null && isLittleOxygen(defs, limit, given.si) ? [NO_AIR] : []),
            `  The limit: ${gasPassage(defs, limit).text}`,
          ]
    }),
  )
  const read = standingReadings(defs, state).flatMap(({ seq, text }) =>
    findReading(state, seq)?.value === value ? [`On record: ${text}.`] : [],
  )
  return [...shown, ...read.slice(0, MOST)]
}

/** More would push the question off the screen. */
const MOST = 3

/** A number of the list that lies open. */
function choiceLines(defs: Definitions, state: State, prompt: Prompt, typed: string): string[] | null {
  if (!/^\d{1,2}$/.test(typed)) return null
  const label = choicesAt(defs, state, prompt)[Number(typed) - 1]
  if (label === undefined) return null
  const word = prompt.kind === 'decide' ? offersAt(state, prompt.step)[Number(typed) - 1]?.choice : undefined
  return [
    `In the list that is asked here, ${typed} is: ${label}.`,
    ...(word === undefined ? [] : termLines(word)),
  ]
}

function choicesAt(defs: Definitions, state: State, prompt: Prompt): string[] {
  switch (prompt.kind) {
    case 'pick':
      return prompt.options.map(({ id }) => instrumentName(defs, id))
    case 'observe':
      return asKind(prompt.step, 'observe').step.conditions.map(({ label }) => label)
    case 'decide':
      return offerLines(offersAt(state, prompt.step)).map((line) => line.replace(/^\d+ +/, ''))
    case 'confirm':
      return ['it is so', 'it is not so, and what is seen instead is asked']
    case 'doubt':
      return [
        'the figure is dropped, and the place is measured again',
        'the figure is dropped as mistyped, and keyed again in full',
        'the figure is kept, with your reason',
      ]
    case 'findings':
      return prompt.open.map((one) => nonconformanceText(defs, one))
    default:
      return []
  }
}
