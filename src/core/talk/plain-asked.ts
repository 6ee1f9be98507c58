// Questions that somebody asks who sits before it for the first time: where a PIN stands, what initials or a pin are, whether a permit
// is needed, which machine it is. Told from the job, its crew file and its record; where the job knows nothing of it, that is said.
import { type Definitions, personById } from '../job/definitions.ts'
import { gateState, gatesOf, itemByKey } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import type { State } from '../job/state.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import { quotedLines } from './answer-asked.ts'
import { peopleLine } from './where.ts'

type Told = (defs: Definitions, state: State) => string[]

/** `crew.yaml, beside the machine record of TC-401-1`. */
export function crewFile({ machine }: Definitions): string {
  return `${machine.uses.crew}, beside the machine record of ${machine.machine}`
}

/** As the STOP sheet says it: where nothing stands for a machine, one signs as the others with keys that are printed for everybody. */
export function practisedAlone(defs: Definitions, { record }: State): string[] {
  return record === 'REAL' || defs.crew.invented !== true
    ? []
    : [`${record}: alone, sign as the others too. The example PINs stand at the head of ${crewFile(defs)}.`]
}

const PIN: Told = (defs, { record }) =>
  record !== 'REAL' && defs.crew.invented === true
    ? [
        `This crew is invented: its PINs stand in the comment at the head of ${crewFile(defs)}, and those of the example in the README.`,
        'Of a real crew nobody’s PIN stands anywhere, and nobody keys that of another.',
      ]
    : [
        'A PIN stands nowhere: whoever it belongs to knows it, and nobody else keys it.',
        'A new one is made with barover pin; its line goes into the crew file.',
      ]

const TWO_PINS: Told = (defs, state) => [
  'A PIN is 4 to 12 figures by which somebody signs for what they keyed. It is not shown and not looked up.',
  ...(quotedLines(defs, state, 'crosshead pin') ?? [
    'Of a pin as a part the papers of this job say nothing.',
  ]),
]

const PERMIT: Told = (defs, state) => [
  'Barover gives out no permit: site rules say which is needed, and they come first.',
  ...(quotedLines(defs, state, 'permit') ?? ['The papers of this job say nothing of one.']),
]

const ITSELF: Told = (defs) => [
  'No: a witness is somebody else, who did none of it. There is no way round that.',
  ...gatesOf(defs).flatMap((gate) =>
    gate.step.evidence.flatMap((one) =>
      one.kind === 'witness' ? [`Hold point ${gate.number}: ${one.ask}`] : [],
    ),
  ),
]

/** What is on record of what blocks the crank, and that the record is not the crank. */
export const blockLines: Told = (defs, state) => {
  const told = gatesOf(defs).flatMap((gate) => {
    const { given, struck } = gateState(state, gate.id)
    const known = [
      ...Object.entries(given).map(([key, one]) => ({ ...one, key, fell: false })),
      ...struck
        .filter(({ item }) => given[item] === undefined)
        .map((one) => ({ ...one, key: one.item, fell: true })),
    ]
    return known.flatMap(({ key, shown, at, by, fell }) => {
      const item = itemByKey(defs, gate, key)
      if (item === null || !TURNING.test(`${itemLabel(defs, item)} ${shown}`)) return []
      const stamp = readStamp(at)
      const when = stamp === null ? 'at a time that cannot be read' : clockOf(stamp)
      return [
        `By the record, ${itemLabel(defs, item)}: ${shown}, keyed ${when} by ${by ?? 'nobody known'}; ${fell ? 'FALLEN since' : 'it stands'}.`,
      ]
    })
  })
  return [
    ...(told.length === 0 ? ['By the record: nothing that blocks it was keyed on this job.'] : told),
    'The record holds no crank: look at the block and at the locks themselves.',
  ]
}

const WHO_IN: Told = (defs, state) => {
  const gates = gatesOf(defs).flatMap((gate) => {
    const { status, mustClear } = gateState(state, gate.id)
    if (mustClear)
      return [
        `Hold point ${gate.number} has fallen and nobody keyed ${gate.step.clear_words}: people may be in there.`,
      ]
    return status === 'open' ? [`Hold point ${gate.number} is complete: people may be in behind it.`] : []
  })
  return [
    'Barover cannot see who is in: count heads at the place.',
    peopleLine(state),
    ...(gates.length === 0 ? ['By the record no hold point is complete now.'] : gates),
  ]
}

/** What keeps the crank still; a block valve shuts off gas. */
const TURNING = /\b(?:block(?:ed)?(?! valve)|barring)\b/i

/** Until the plate was read its tag stands nowhere on screen, so that nobody copies it from here. */
const MACHINE: Told = ({ machine, procedure }, { machineNamed }) =>
  machineNamed ? named(machine, procedure) : PLATE

const PLATE = [
  'The one that this job was opened for. Its tag is not told here, so that nobody copies it from here.',
  'Read the plate on the cylinder you stand at, and key what it says: Barover says whether it is the one.',
  'If the plate is gone or cannot be read, a lead finds out which machine it is before anything is done.',
]

const named = (machine: Definitions['machine'], procedure: Definitions['procedure']) => [
  `This job, ${procedure.title}, is for ${machine.machine}: ${machine.title}, by its machine record, edition ${machine.edition}.`,
  'Whether you stand at it says the plate on the cylinder alone.',
]

const LOCK_NUMBER: Told = () => [
  'On the lock itself, or on the tag that hangs on it. Barover has no list of them: what you read there is keyed.',
  'which lock goes where lists the points; where a number was keyed wrong: correct.',
]

const AGAIN: Told = () => [
  'No, only what rests on what was wrong: before anything is put right, its question names all that becomes void.',
  'correct puts one thing right, back the last answer. What has lapsed or fallen is asked again by itself.',
]

const ROUND: Told = (defs, state) =>
  quotedLines(defs, state, 'out of round') ?? ['The papers of this job say nothing of it.']

const ASKED: readonly (readonly [RegExp, Told])[] = [
  [
    /^(?:what|where)\b.*\bpins? (?:of|for) \w+|^(?:what|where) (?:is|are|do i (?:find|get)|can i find) .*\b(?:my|his|her|their|the|example|[a-z]{2}'?s) pins?\b/i,
    PIN,
  ],
  [/^what(?:'s| is| does) (?:a |an |the )?pins?(?: mean)?$/i, TWO_PINS],
  [/\b(?:need|have|get|without|where is) (?:a|the|any)? ?(?:\w+ )?permits?\b/i, PERMIT],
  [
    /^(?:can|may|could) i (?:be (?:my own|the) witness|witness (?:myself|it myself|for myself|my own \w+))/i,
    ITSELF,
  ],
  [
    /^is (?:the |my )?(?:crank|crankshaft|shaft|rotation|block) (?:still )?(?:locked|blocked|held|secured|on|in)(?: now| place)?/i,
    blockLines,
  ],
  [
    /^(?:who|how many) (?:is|are) (?:still )?(?:in|inside|in there)$|^is (?:anybody|anyone|somebody|someone) (?:still )?(?:in|inside|in there)$/i,
    WHO_IN,
  ],
  [
    /^(?:(?:on |at |for )?(?:which|what) (?:machine|compressor|cylinder|throw|unit|plate|tag)(?: number)?(?: (?:is|am|are|should|must|do|does|was|will|shall|has)\b.*| now| here)?$|(?:is|am|are) (?:this|it|i|we) (?:at |on )?the right (?:machine|compressor|cylinder|throw|unit|one)\b.*)/i,
    MACHINE,
  ],
  [
    /^where (?:do|can|could|is) (?:i |we )?(?:find |get |read )?(?:the|a|my) lock(?:'s)? numbers?/i,
    LOCK_NUMBER,
  ],
  [
    /^(?:do|must|should) (?:i|we) (?:have to |need to )?(?:do|start|begin) (?:all of it|all of this|everything|it all|the whole \w+|over)(?: again| anew)?/i,
    AGAIN,
  ],
  [/^how (?:do|can|should) (?:i|we) (?:measure|read|find|get) (?:the )?out.of.round(?:ness)?/i, ROUND],
]

/** Null: the question is none of these. */
export function plainAskedLines(defs: Definitions, state: State, question: string): string[] | null {
  const text = question
    .trim()
    .replaceAll('\u2019', "'")
    .replace(/[\s?.!]+$/, '')
  const id = /^(?:who|what) (?:is|are) (\w{2,4})$/i.exec(text)?.[1]
  const person = id === undefined ? undefined : personById(defs, id.toUpperCase())
  if (person !== undefined) return [`${person.id}, from the crew file: ${person.name}, ${person.role}.`]
  const told = ASKED.find(([pattern]) => pattern.test(text))?.[1]
  return told === undefined ? null : told(defs, state)
}
