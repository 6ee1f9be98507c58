// A numbered choice laid out for a terminal: whole words, whole options, and never more rows than there are. What is said beside it
// takes the place of its introduction, and where even so not all has room, its options are turned over, or what is said is; the
// introduction then comes after them.
import { asciiTwin, clean, cutWords, widthOf, wrap } from '../lib/text.ts'
import type { Choice } from '../talk/choice.ts'
import { marginRule } from './ruling.ts'

export interface ChoiceOn {
  readonly choice: Choice
  readonly columns: number
  readonly rows: number
  readonly ascii: boolean
  /** Said on a word, and not part of the choice. */
  readonly told: readonly string[]
  /** How many of the options, or of what is said, are turned over; beyond all options, of the lines of the introduction. */
  readonly from: number
}

export interface ChoiceLine {
  readonly text: string
  readonly strong: boolean
}

export interface ChoiceSheet {
  readonly lines: readonly ChoiceLine[]
  /** Before the line being keyed. */
  readonly margin: string
  /** Columns of the line being keyed. */
  readonly width: number
  /** Where Enter goes on; null where it turns nothing over. */
  readonly next: number | null
}

const MARGIN = 5
/** An option that is longer is a path or a name, and is cut so that it is seen. */
const MOST_LINES = 3

export function choiceSheet(on: ChoiceOn): ChoiceSheet {
  const { choice, columns, ascii, told } = on
  const rule = ` ${marginRule(ascii)} `
  const width = Math.max(8, columns - 1 - MARGIN - rule.length)
  const say = (text: string) => (ascii ? asciiTwin(clean(text)) : clean(text))
  const set = (margin: string, text: string, strong = false): ChoiceLine[] =>
    shortened(say(text), width).map((line, i) => ({
      text: `${(i === 0 ? margin : '').padStart(MARGIN)}${rule}${line}`,
      strong,
    }))
  const sheet = (lines: readonly ChoiceLine[], next: number | null): ChoiceSheet => ({
    lines,
    margin: `${'no.'.padStart(MARGIN)}${rule}`,
    width,
    next,
  })
  const end = [...set('0', choice.zero), ...set('Tab', 'Make safe')]
  const options = choice.options.map((text, i) => set(String(i + 1), text))
  // What is said is read whole.
  const said = told.flatMap((text) =>
    wrap(say(text), width).map((line) => ({ text: `${''.padStart(MARGIN)}${rule}${line}`, strong: false })),
  )
  // The line being keyed, and one row that the terminal keeps for itself.
  const room = on.rows - 2
  const title = set('', choice.title, true)
  // Sentences, and no path or name: they are never cut.
  const sentences = choice.lines.map((text) =>
    wrap(say(text), width, width > 30 ? 2 : 0).map((line) => ({
      text: `${''.padStart(MARGIN)}${rule}${line}`,
      strong: false,
    })),
  )
  const intro = sentences.flat()
  const all = options.flat()
  /** The introduction from a line of it on, a sentence never parted where it has room as a whole. */
  const introduced = (at: number): ChoiceSheet => {
    const shown: ChoiceLine[] = []
    let seen = 0
    for (const lines of sentences) {
      seen += lines.length
      if (seen <= at) continue
      const rest = lines.slice(Math.max(0, lines.length - (seen - at)))
      if (shown.length > 0 && shown.length + rest.length > room - 1) break
      shown.push(...rest)
    }
    const page = shown.slice(0, Math.max(1, room - 1))
    const to = at + page.length
    const next = to < intro.length ? options.length + to : 0
    return sheet([...page, ...set('', next === 0 ? BACK : 'Enter: go on.').slice(0, 1)], next)
  }
  for (const head of said.length > 0 || intro.length === 0 ? [title, []] : [[...title, ...intro]]) {
    const lines = [...head, ...all, ...end, ...said]
    if (lines.length <= room) return sheet(lines, null)
  }
  if (said.length > 0) {
    // There is no room for both: what is said is read first, and the choice comes back with Enter.
    const from = Math.min(on.from, said.length - 1)
    const fits = Math.max(1, room - 1)
    const next = from + fits < said.length ? from + fits : 0
    const lines = [
      ...said.slice(from, from + fits),
      ...set('', next === 0 ? BACK : 'Enter: go on.').slice(0, 1),
    ]
    return sheet(lines, next)
  }
  const isIntro = on.from >= options.length && on.from < options.length + intro.length
  if (isIntro) return introduced(on.from - options.length)
  // Whoever is new is told how to begin, if not at once.
  const low = set('0', `${choice.zero}   Tab: make safe`)
  const onward = intro.length === 0 ? [] : set('', NEW_HERE).slice(0, 1)
  for (const [head, last] of [
    [title, end],
    [title, low],
    [[], low],
  ] as const) {
    const lines = [...head, ...all, ...onward, ...last]
    if (intro.length > 0 && lines.length <= room) return sheet(lines, options.length)
  }
  const from = on.from < options.length ? on.from : 0
  const shown: ChoiceLine[] = []
  let next = from
  for (const option of options.slice(from)) {
    if (next > from && shown.length + option.length + end.length + 1 > room) break
    shown.push(...option)
    next++
  }
  const onto = next < options.length + Math.min(1, intro.length) ? next : 0
  const more = set(
    '',
    `Enter: ${onto === 0 ? 'the first' : 'more'}. ${from + 1} to ${next} of ${options.length}.`,
  )
  return sheet([...shown, ...more.slice(0, 1), ...end].slice(0, Math.max(1, room)), onto)
}

const BACK = 'Enter: the choice.'
const NEW_HERE = 'Enter: how to begin.'

function shortened(text: string, width: number): string[] {
  const hang = width > 30 ? 2 : 0
  const lines = wrap(text, width, hang)
  if (lines.length <= MOST_LINES || widthOf(text) < width) return lines
  const rest = lines.slice(MOST_LINES - 1).join(' ')
  const last = cutWords(rest.replace(/\s+/g, ' ').trim(), width - hang)
  return [...lines.slice(0, MOST_LINES - 1), `${' '.repeat(hang)}${last}`]
}
