// A job for people who hear it: what went on record, then what is asked, which is the last line before they key. Hazards, how and
// where are told once at a step, and again after an interruption or when they are asked for.
import { createOnce } from '../app/once.ts'
import type { Session, Shown } from '../app/session.ts'
import { askingOf } from '../core/aloud/asked-line.ts'
import { interrupts } from '../core/aloud/of-entry.ts'
import { type PromptPieces, promptPieces } from '../core/aloud/prompt-pieces.ts'
import type { Entry } from '../core/job/entries.ts'
import { next } from '../core/job/next.ts'
import type { Block, Row, SheetStyle } from '../core/sheet/block.ts'
import { type FootText, foot } from '../core/sheet/foot.ts'
import { linearLines, linearText, marked } from '../core/sheet/linear.ts'
import { entryBlocks, toldShort } from '../core/sheet/shown-block.ts'
import { helpInLines } from '../core/talk/tell-about.ts'
import { wantedLine } from '../core/talk/wanted.ts'
import { TAKEN, takenText, withoutTwice } from './taken.ts'

export interface PlainOut {
  readonly write: (text: string) => void
}

export interface Teller {
  /** A job that is taken up: how it was opened, how much stands in it, and that it was taken up; the rest is there to be asked for. */
  readonly takenUp: (list: readonly Shown[]) => void
  readonly shown: (list: readonly Shown[]) => void
  /** `anew`: hazards and all the rest once more. */
  readonly prompt: (anew?: boolean) => void
  /** Whether time alone has changed what people have to hear with the question: a lapse that is near, a wait that is over. */
  readonly time: () => boolean
}

const WORDS = 'Words at any question: help, safe, stop. The word where tells the step once more, whole.'

export function createTeller(session: Session, style: SheetStyle, out: PlainOut): Teller {
  const { defs } = session.engine
  const once = createOnce()
  /** Said once in a run: the words there are, and how a question is left. */
  const ever = new Set<string>()
  /** What a verdict was said to rest on, until something interrupts. */
  let onRecord = new Set<string>()
  /** The last verdict that was told of each step. */
  const verdicts = new Map<string, readonly Block[]>()
  let title = ''
  let by = ''
  let stood = ''
  let isWarned = false
  let isAnew = false

  const say = (text: string): void => out.write(`${text}\n`)
  const textOf = (row: Row): string => linearText(row, style)

  /** A verdict that is told anew is told short. */
  const blocksOf = ({ entry: taken, state }: Extract<Shown, { kind: 'entry' }>): readonly Block[] => {
    const blocks = entryBlocks(session.defsAt(taken), state, taken, style)
    if (taken.type !== 'verdict.given') return blocks
    const before = verdicts.get(taken.step) ?? []
    verdicts.set(taken.step, blocks)
    return toldShort(blocks, before)
  }

  const entry = (one: Extract<Shown, { kind: 'entry' }>): void => {
    if (interrupts(one.entry)) {
      isAnew = true
      onRecord = new Set()
    }
    for (const [i, block] of blocksOf(one).entries()) {
      // Who and when is told where it is another than before.
      const right = block.right ?? ''
      const who = right === '' || right === by ? '' : `, ${right}`
      if (right !== '') by = right
      if (i === 0 && TAKEN.includes(one.entry.type)) {
        const rows = block.rows.map(textOf)
        say(marked(takenText(block.margin, rows, title) + who, style))
        // What was just picked is not named again at its first reading.
        if (one.entry.type === 'instrument.picked') for (const text of rows) once.add(text)
        continue
      }
      const isVerdict = one.entry.type === 'verdict.given'
      if (isVerdict) for (const row of block.rows) onRecord.add(textOf(row).replace(/^HOLD: /, ''))
      const [first = '', ...rest] = linearLines(isVerdict ? withoutTwice(block.rows) : block.rows, style)
      const isAlarm = /^(?:stop|gate)\.|^evidence\.failed$/.test(one.entry.type)
      const head = block.margin === '' || isAlarm ? first : `${block.margin} ${first}`
      for (const text of [who === '' ? head : head.replace(/\.$/, '') + who, ...rest])
        say(marked(text, style))
    }
  }

  /** A step by its sheet, a place within it by its number. */
  const heading = ({ view }: PromptPieces, isNew: boolean, { sheet }: FootText): void => {
    if (view.title === '' || once.has(view.title)) return
    once.add(view.title)
    title = view.title
    const isPlaced = /\d/.test(sheet.replace(/ of .*/, ''))
    const place = view.margin.includes('.') ? `${view.margin} ` : ''
    say(
      `${isNew ? '\n' : ''}${marked(`${isNew && isPlaced ? `${sheet}. ` : ''}${place}${textOf({ text: title, tone: 'strong' })}`, style)}`,
    )
  }

  const onceEach = (rows: readonly Row[], known: ReadonlySet<string> = new Set()): void => {
    for (const text of rows.map(textOf)) {
      if (text === '' || once.has(text) || known.has(text)) continue
      once.add(text)
      // Named in full once, an instrument is not named again by its tag alone.
      once.add(text.replace(/^(With [\w-]+), .*$/, '$1'))
      say(text)
    }
  }

  /** What lapses and when, a wait, an open STOP: where it is another than before, and STOP always. */
  const standing = (now: FootText): void => {
    const stop = now.stands.filter((text) => text.startsWith('STOP'))
    const rest = now.stands.filter((text) => !stop.includes(text))
    const key = rest.map(withoutMinutes).join()
    if (key !== stood && key !== '') say(`${rest.map(withoutAge).join('. ')}.`)
    stood = key
    for (const text of stop) say(`${text}.`)
  }

  const prompt = (anew = false): void => {
    const { state, talk, now } = session.snapshot()
    const told = promptPieces(defs, state, talk, style)
    const isNew = once.at(told.step, anew || isAnew)
    if (anew) onRecord = new Set()
    isAnew = false
    const below = foot(defs, state, now)
    const asking = askingOf(defs, state, told)
    heading(told, isNew, below)
    // Whoever is to come out hears it each time, whatever else is asked.
    for (const row of told.hazard) if (AT_ONCE.test(row.text)) say(textOf(row))
    onceEach(told.hazard.filter(({ text }) => !AT_ONCE.test(text)))
    if (below.warning !== null) say(below.warning)
    isWarned = below.warning !== null
    standing(below)
    if (!told.isQuestion) {
      onceEach([...told.what, ...told.where])
      if (isNew) onceEach(told.beside)
    }
    const isFaint = (row: Row) => row.tone === 'faint' && told.isQuestion
    onceEach(
      asking.once.filter((row) => !isFaint(row)),
      onRecord,
    )
    for (const text of [WORDS, ...asking.once.filter(isFaint).map(textOf)]) {
      if (ever.has(text)) continue
      ever.add(text)
      say(text)
    }
    for (const row of asking.each) say(textOf(row))
    const asked = textOf({ text: asking.asked, tone: 'strong' })
    if (asked !== '') say(asked.startsWith('Nothing is asked') ? asked : `Asked: ${asked}`)
  }

  /** What is asked is the last line anyway: said in an answer as well it would be heard twice. */
  const answer = (lines: readonly string[]): void => {
    const { state } = session.snapshot()
    const wanted = wantedLine(defs, state, next(defs, state))
    for (const line of lines.flatMap(helpInLines)) {
      const text = line
        .replace(/ Asked is: .*$/, '')
        .replace(wanted, '')
        .trim()
      if (text !== '') say(textOf({ text, tone: 'plain' }))
    }
  }

  const shown = (list: readonly Shown[]): void => {
    for (const one of list) {
      if (one.kind === 'entry') entry(one)
      else answer(one.lines)
    }
  }

  return {
    shown,
    takenUp: (list) => {
      const at = list.findLastIndex((one) => isEntry(one, 'job.taken-up'))
      if (at < 1) return shown(list)
      shown(list.slice(0, 1))
      if (at > 1) say(marked(`${at - 1} entries stand between: ${BETWEEN}`, style))
      // By whom and how the record was changed while nobody was here is heard once by whoever comes on.
      const left = list.slice(0, at).findLastIndex((one) => isEntry(one, 'job.left'))
      shown(list.slice(Math.max(0, left), at).filter((one) => isEntry(one, 'record.taken-in')))
      shown(list.slice(at))
    },
    prompt,
    time: () => {
      const { state, now } = session.snapshot()
      const below = foot(defs, state, now)
      const isSoon = below.warning !== null && !isWarned
      isWarned = below.warning !== null
      return isSoon || (below.stands.includes(WAIT_OVER) && !stood.includes(WAIT_OVER))
    },
  }
}

function isEntry(one: Shown, type: Entry['type']): boolean {
  return one.kind === 'entry' && one.entry.type === type
}

const BETWEEN =
  'readings tells what was read, open what is open, where how far it is; barover show has all of it.'
const AT_ONCE = /^COME OUT/
const WAIT_OVER = 'Wait is over'

function withoutAge(text: string): string {
  return text.replace(/\d+ min old, /, '')
}

/** What goes on by the minute is no change. */
function withoutMinutes(text: string): string {
  return withoutAge(text).replace(/^Wait: \d+ min left/, 'Wait')
}
