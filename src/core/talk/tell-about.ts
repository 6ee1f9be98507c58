// Answers to help, why and readings: words about the job that go on no record.
import { asKind, type Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { placeResult, placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { bareWorked, placeName, placeNumber, readingText, workedText } from './names.ts'
import { sums } from './sums.ts'
import { peopleLine } from './where.ts'
import { WORDS } from './words.ts'

export function helpLines(defs: Definitions, state: State): string[] {
  const safe = `To be safe first: ${defs.machine.site.emergency}`
  const practice = state.practice === null ? [] : PRACTICE_HELP
  return [
    ...practice,
    'A figure and Enter answer a reading. At any prompt:',
    ...wordRows(),
    peopleLine(state),
    safe,
  ]
}

const PRACTICE_HELP = [
  'In practice look and measure ask the machine; quick behind them is a hurried hand.',
  'hint says where to look, and costs. fault lists what can be hidden.',
  'wait lets a wait that was begun go by; wait 40 as many minutes.',
]

/** Short ones two to a row, so that a small screen still shows the first of them above the question. */
function wordRows(): string[] {
  const rows: string[] = []
  for (const { word, says } of WORDS) {
    const told = `${word.padEnd(10)} ${says}`
    const last = rows[rows.length - 1]
    const isSecond = last !== undefined && last.length < FIRST - 1 && told.length < FIRST - 1
    if (isSecond) rows[rows.length - 1] = last.padEnd(FIRST) + told
    else rows.push(told)
  }
  return rows
}

/** A row of the list above as lines of their own, for people who hear it; any other line as it is. */
export function helpInLines(line: string): string[] {
  const rows = wordRows()
  if (!rows.includes(line)) return [line]
  return WORDS.filter(({ word, says }) => line.includes(`${word.padEnd(10)} ${says}`)).map(
    ({ word, says }) => `${word}: ${says}`,
  )
}

/** Columns of the first of two words with what it does; both together keep within a sheet of 80. */
const FIRST = 32

export function whyLines(defs: Definitions, state: State, prompt: Prompt): string[] {
  if (prompt.kind === 'decide') {
    const { step, scope } = asKind(prompt.step, 'decide')
    const verdict = state.verdicts[scope + step.about]
    if (verdict !== undefined) return sums(defs, verdict.verdict, { state, step: scope + step.about })
  }
  if (prompt.kind === 'doubt') return doubtLines(prompt)
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : null
  const given = justGiven(defs, state)
  if (given.length > 0)
    return [
      ...given.flatMap(({ id, title, verdict }) => [
        `${title}: ${verdict.result.verdict}, because:`,
        ...sums(defs, verdict, { state, step: id }),
      ]),
      ...(placed?.step.why === undefined ? [] : [`And why of ${placed.step.title}: ${placed.step.why}`]),
    ]
  const last = lastVerdict(defs, state)
  if (placed?.step.why !== undefined) return [placed.step.why]
  if (last !== null) return sums(defs, last.verdict, { state, step: last.id })
  return ['The procedure gives no further reason here.']
}

/** Why the figure that waits is doubted, what each way on does with it, and what the step is for. */
function doubtLines({ doubt, step }: Extract<Prompt, { kind: 'doubt' }>): string[] {
  const keyed = doubt.typed.trim()
  return [
    `${keyed} is doubted: it is ${doubt.why}. It counts for nothing until one of the three is keyed.`,
    ...(doubt.shown === undefined ? [] : [doubt.shown]),
    `1 drops it, for a reading measured anew; 2 drops it, for the figure keyed again; 3 keeps ${keyed} as it is, with your reason beside it on record.`,
    ...(step.step.why === undefined ? [] : [`And why of ${step.step.title}: ${step.step.why}`]),
  ]
}

/** The verdicts that stand at the end of the sheet, nothing after them: what somebody has before their eyes who asks why. */
function justGiven(defs: Definitions, state: State) {
  const all = defs.steps.flatMap(({ id, step }) => {
    const one = state.verdicts[id]
    return one === undefined ? [] : [{ id, title: step.title, ...one }]
  })
  const newest = all.sort((a, b) => b.seq - a.seq)
  return newest.filter(({ seq }, n) => seq === state.seq - n).reverse()
}

function lastVerdict(defs: Definitions, state: State) {
  const judges = defs.steps.filter((s) => state.verdicts[s.id] !== undefined)
  const last = judges[judges.length - 1]
  const verdict = last === undefined ? undefined : state.verdicts[last.id]?.verdict
  return last === undefined || verdict === undefined ? null : { id: last.id, verdict }
}

export function readingLines(defs: Definitions, state: State): string[] {
  const lines = defs.steps.flatMap((s) => {
    if (s.step.kind !== 'read') return []
    const placed = asKind(s, 'read')
    return placesOf(placed).flatMap((place) => {
      const result = placeResult(placed, place, state)
      const [first] = result.readings
      if (first === undefined) return []
      const taken = result.readings.map((r) => readingText(defs, r)).join(';  ')
      const spread =
        placed.step.quantity === 'length' && result.spread !== null && result.readings.length > 1
          ? `  spread ${bareWorked(defs, first, result.spread)}`
          : ''
      const mean =
        placed.step.quantity === 'length' && result.si !== null && result.readings.length > 1
          ? `  counts as ${workedText(defs, first, result.si)}`
          : ''
      return [
        `${placeNumber(defs, s.id, place.key)} ${placeName(defs, s.id, place.key)}`,
        `      ${taken}${spread}${mean}`,
      ]
    })
  })
  return lines.length === 0 ? ['There are no readings yet.'] : lines
}
