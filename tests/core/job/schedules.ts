// Random schedules of a job: right lines, wrong lines, waiting, clocks that move, leaving and taking up, old inputs again.
import fc from 'fast-check'
import { admit } from '../../../src/core/job/admit.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { isStopAsk } from '../../../src/core/talk/ask-stop.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import type { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import type { Moment } from './invariants.ts'

export type Action =
  | { readonly do: 'right'; readonly salt: number }
  | { readonly do: 'line'; readonly text: string }
  | { readonly do: 'wait'; readonly minutes: number }
  | { readonly do: 'tick' | 'leave' | 'take-up' }
  /** `told`: the shell saw it against the running clock; otherwise the engine has to notice for itself. */
  | { readonly do: 'clock'; readonly seconds: number; readonly told: boolean }
  | { readonly do: 'old'; readonly which: number }
  /** `half`: the question is left open. */
  | { readonly do: 'people'; readonly word: string; readonly salt: number; readonly half: boolean }

export const LINES = [
  ...[
    '',
    'y',
    'Y',
    'yes',
    '1',
    '2',
    '3',
    '0',
    '30',
    '20.9',
    '4',
    'nan',
    '1e999',
    '-',
    '9.5030',
    '9.60',
    '99',
    '71.2',
  ],
  ...[
    'NO START',
    'no flow',
    'ALL OUT',
    'L-101',
    'L-102',
    'RO',
    'ML',
    'KH',
    'PB',
    'TS',
    'because it is so',
    'release',
    'placed',
    'taken',
    'accounted',
    'hand on',
    'safe',
    'close',
    'cause',
    'same',
    '5',
    '?',
  ],
  ...[
    'n/a',
    'back',
    'note',
    'note all fine',
    'why',
    'help',
    'readings',
    'correct',
    'instrument',
    'open',
    'deviation',
    'notice',
    'not attended',
    'stop',
    '!',
    'leave',
    'done',
  ],
]

/** Words that take back, or let pass: each begins a question that right lines go on with. */
const TAKING_BACK = [
  ...['correct', 'correct', 'back', 'n/a', 'instrument', 'deviation'],
  ...['notice', 'not attended', 'not attended'],
]

/** Lines that mean something to the kinds of evidence that only some jobs have. */
export const KINDS_LINES = [
  ...['ALL SHUT IN', 'no rise', 'METER ANSWERED', 'P-RO1', 'B-1', '5000', '0.45', 'inspected today'],
]

const actionOf = (lines: readonly string[]): fc.Arbitrary<Action> =>
  fc.oneof(
    { weight: 30, arbitrary: fc.record({ do: fc.constant('right' as const), salt: fc.nat(5) }) },
    {
      weight: 6,
      arbitrary: fc.record({ do: fc.constant('line' as const), text: fc.constantFrom(...lines) }),
    },
    {
      weight: 3,
      arbitrary: fc.record({ do: fc.constant('line' as const), text: fc.constantFrom(...TAKING_BACK) }),
    },
    {
      weight: 3,
      arbitrary: fc.record({
        do: fc.constant('wait' as const),
        minutes: fc.constantFrom(0.1, 4, 9, 16, 29.9, 31),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({ do: fc.constantFrom('tick' as const, 'leave' as const, 'take-up' as const) }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        do: fc.constant('clock' as const),
        seconds: fc.constantFrom(-1.9, -3, -120, -3600, 7, 900),
        told: fc.boolean(),
      }),
    },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('old' as const), which: fc.nat(30) }) },
  )

export const scheduleOf = (lines: readonly string[]): fc.Arbitrary<Action[]> =>
  fc.array(actionOf(lines), { minLength: 20, maxLength: 120, size: 'max' })

export const schedule = scheduleOf(LINES)

/** People coming, going, handing over, and their words: kinds of their own, so that the other searches stay as they were. */
const people: fc.Arbitrary<Action> = fc.record({
  do: fc.constant('people' as const),
  word: fc.constantFrom('sign on', 'sign off', 'hand over', 'countersign'),
  salt: fc.nat(5),
  half: fc.boolean(),
})

export const scheduleWithPeople: fc.Arbitrary<Action[]> = fc.array(
  fc.oneof({ weight: 11, arbitrary: actionOf([...LINES, 'radio']) }, { weight: 1, arbitrary: people }),
  { minLength: 20, maxLength: 120, size: 'max' },
)

/** Performs one action on the walk. `inputs` collects what was brought, for `old` to bring again. */
export function perform(walk: Walk, a: Action, inputs: Input[]): void {
  const on = (ms: number) => {
    walk.now = { ...walk.now, ms: walk.now.ms + ms }
  }
  switch (a.do) {
    case 'right':
      if (walk.state.left) walk.bring({ do: 'take-up' })
      else right(walk, a.salt, inputs)
      return
    case 'line':
      line(walk, a.text, inputs)
      return
    case 'wait':
      on(a.minutes * 60_000)
      return
    case 'clock':
      on(a.seconds * 1000)
      if (a.told) walk.bring({ do: 'clock-moved', seconds: a.seconds })
      return
    case 'people':
      line(walk, a.word, inputs)
      if (!a.half && walk.talk.ask !== null)
        line(walk, rightLine(walk.engine.defs, walk.state, walk.talk, a.salt), inputs)
      return
    case 'old': {
      const old = inputs[inputs.length - 1 - a.which]
      if (old !== undefined) walk.bring(old)
      return
    }
    default:
      walk.bring({ do: a.do })
  }
}

/** One right line; every other time also the rest of a question about a STOP, so that schedules get past them. */
function right(walk: Walk, salt: number, inputs: Input[]): void {
  for (let n = 0; n < 5; n++) {
    line(walk, rightLine(walk.engine.defs, walk.state, walk.talk, salt), inputs)
    const { ask } = walk.talk
    if (salt % 2 === 0 || ask === null || !(isStopAsk(ask) || ask.kind.startsWith('release'))) return
  }
}

function line(walk: Walk, text: string, inputs: Input[]): void {
  const heard = hear(walk.engine.defs, walk.state, walk.talk, text)
  if (heard.input !== null) inputs.push(heard.input)
  walk.key(text)
}

/** The moment as it is once time has acted, without going there. */
export function momentOf(walk: Walk): Moment {
  const ticked = admit(walk.engine, walk.state, { do: 'tick' }, walk.now, walk.others())
  return {
    defs: walk.engine.defs,
    entries: [...walk.entries, ...ticked.entries],
    state: ticked.state,
    nowMs: walk.now.ms,
  }
}
