// How a practice session looks on the sheet: what the machine showed, what was right and wrong, and the questions that only it asks.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { Prompt } from '../job/next.ts'
import type { PracticeBody, Practised } from '../job/practice.ts'
import type { State } from '../job/state.ts'
import { faultById, isFault } from '../practice/faults.ts'
import { governsText, isHoldAsked, judgedBy } from '../practice/governable.ts'
import { lessonOn } from '../practice/lesson.ts'
import { CALLED, NOTHING_GOVERNS } from '../talk/practice-words.ts'
import { type Block, type Row, row } from './block.ts'

/** What stands on its opening: how the machine is asked. */
export function practiceOpeningRows({ scenario }: Definitions, { seed, level, edition }: Practised): Row[] {
  const of = edition === undefined ? '' : `, edition ${edition}`
  return [
    ...(scenario === undefined ? [] : [row(`Scenario: ${scenario.title}. All of it is made up.`, 'strong')]),
    ...(scenario?.briefing ?? []).map((text) => row(`  ${text}`)),
    row(
      `Practice on a hidden machine: seed ${seed}, level ${level}${of}. Nothing here can be hurt.`,
      'strong',
    ),
    row('look and measure ask the machine where the sheet stands; then you key what is there.'),
    row(
      'measure quick is a hurried hand. fault lists what can be hidden. hint says where to look, and costs a mark, also where nothing is hidden: free, it would tell that.',
    ),
    row('wait lets a wait that was begun go by; wait 40 lets 40 minutes go by, as a break does.'),
    row('What you would not go in on you do not key: say stop, name it with fault, and leave.'),
  ]
}

export function practiceRows(defs: Definitions, entry: PracticeBody): Row[] {
  switch (entry.type) {
    case 'practice.asked':
      return [row(entry.shown, entry.alarm === true ? 'caution' : 'plain')]
    case 'practice.called': {
      const governs = judgedBy(defs, entry.step).filter((one) => entry.governs.includes(one))
      const by = governs.length === 0 ? '' : `, ${governs.map(governsText).join(' and ')} governs`
      return [row(`You decide: ${entry.verdict}${by}`, 'strong')]
    }
    case 'practice.named': {
      const names = entry.faults.map((id) => (isFault(id) ? faultById(id).name : id))
      return [row(`You name: ${names.length === 0 ? 'nothing was hidden' : names.join('; ')}`, 'strong')]
    }
    case 'practice.hinted':
      return [
        row(`Hint: ${entry.text}`),
        row(
          'It costs a mark, as any hint does, also where nothing is hidden: free, it would tell that.',
          'faint',
        ),
      ]
  }
}

/** Right or wrong, and why, right behind the answer; null: nothing to say. */
export function lessonBlock(defs: Definitions, state: State, entry: Entry): Block | null {
  const lesson = lessonOn(defs, state, entry)
  if (lesson === null || lesson.says.length === 0) return null
  const isWrong = lesson.marks.some(({ isRight }) => !isRight)
  const tone = lesson.isUnsafe ? 'strong' : isWrong ? 'caution' : 'faint'
  return {
    margin: '',
    rows: lesson.says.map((text, n) => row(text, n === 0 || lesson.isUnsafe ? tone : 'faint')),
  }
}

/** The two questions that only practice asks; null: none of them stands. */
export function practiceView(
  defs: Definitions,
  state: State,
  prompt: Prompt,
): {
  readonly margin: string
  readonly title: string
  readonly rows: readonly Row[]
  readonly ask: readonly Row[]
} | null {
  if (state.practice === null) return null
  if (prompt.kind === 'finish')
    return {
      margin: '',
      title: 'All done. What was hidden on this machine?',
      rows: [row('fault lists what it can be.')],
      ask: [row('The number of it, two with a space between, or 0 for nothing', 'strong')],
    }
  if (prompt.kind !== 'judge') return null
  const judged = judgedBy(defs, prompt.step.id)
  const isLoad = isHoldAsked(defs, prompt.step.id)
  return {
    margin: String(prompt.step.number),
    title: `${stepById(defs, prompt.step.id).step.title}: decide it before the sheet does`,
    rows: [
      row(
        isLoad
          ? 'look tells the sums: shut, as it stands, full open.'
          : 'readings shows all figures; limits all limits, the word beyond each and the measuring error.',
      ),
    ],
    ask: [
      ...CALLED.map((word, n) => row(`${n + 1}  ${word}`)),
      ...(judged.length === 0
        ? [row('Its word, as in: MONITOR', 'strong')]
        : [
            row(
              `What governs, the limit with the most of it used: ${judged.map(governsText).join(', ')}${isLoad ? `; or, at HOLD, ${NOTHING_GOVERNS}` : ''}`,
            ),
            row(`Word and what governs, as in: MONITOR ${governsText(judged[0] ?? '')}`, 'strong'),
          ]),
    ],
  }
}
