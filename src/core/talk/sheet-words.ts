// Lines at a job that is keyed from a paper sheet: a box as it stands, a figure that is doubted, the signatures, and what was keyed wrong.
import { wouldRefuse } from '../job/admit.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Input } from '../job/input.ts'
import type { Prompt } from '../job/next.ts'
import { type PaperState, rowOf, UNREAD_TEXT } from '../job/paper.ts'
import { type State, stands } from '../job/state.ts'
import { ask, type Heard, input, refused, say, signing } from './heard.ts'
import { leaveLines } from './make-safe.ts'
import { bareReading, placeName, placeNumber } from './names.ts'
import { boxName } from './sheet-names.ts'
import { type Word, wordIn } from './words.ts'

export interface SheetKeyed {
  readonly seq: number
  readonly step: string | null
  /** Nothing is keyed anew for it here: it is asked again at its own box. */
  readonly isAsked: boolean
  readonly text: string
}

export type SheetAsk =
  | {
      readonly kind: 'sheet-sure'
      readonly step: string | null
      readonly row: string
      readonly typed: string
      readonly why: string
    }
  | {
      readonly kind: 'sheet-rest'
      readonly step: string | null
      readonly row: string
      readonly typed: string
      readonly sure: boolean
    }
  | { readonly kind: 'sheet-which'; readonly items: readonly SheetKeyed[] }
  | { readonly kind: 'sheet-why'; readonly item: SheetKeyed }
  | { readonly kind: 'sheet-again'; readonly item: SheetKeyed; readonly why: string }

export const SHEET_QUESTIONS = {
  'sheet-sure': 'Keyed wrong, or does it stand so? 1 or 2',
  'sheet-rest': 'What stands behind the initials? - where that box is empty',
  'sheet-which': 'Which was keyed wrong? Its number',
  'sheet-why': 'Why is it changed? In words; what the sheet says is asked after',
  'sheet-again': 'What the sheet says there, in full; - for blank',
} as const

export function isSheetAsk(question: { readonly kind: string }): question is SheetAsk {
  return question.kind in SHEET_QUESTIONS
}

type SheetPrompt = Extract<Prompt, { kind: 'sheet' | 'sheet-doubt' | 'sheet-sign' }>

export function hearAtSheet(defs: Definitions, state: State, prompt: SheetPrompt, line: string): Heard {
  if (prompt.kind === 'sheet-sign')
    return signing(defs, state, line, { do: 'sheet-sign', as: prompt.as, person: line })
  if (prompt.kind === 'sheet-doubt') {
    const choice = (['mistyped', 'kept', 'unreadable'] as const)[Number(line.trim()) - 1]
    return choice === undefined
      ? say('Key 1, 2 or 3 first: nothing was taken.')
      : input({ do: 'sheet-doubt', choice })
  }
  const { placed, row } = prompt.box
  return hearBox(defs, state, { do: 'sheet-row', step: placed?.id ?? null, row, typed: line })
}

/** Taken as it stands where the sheet says so: a time that goes back, an instrument nobody has, a check mark of other files. */
const ODD: readonly string[] = ['sheet-time', 'sheet-unknown', 'sheet-mark']

/** A line at a box. What is odd in it is asked about before any of it is taken. */
function hearBox(defs: Definitions, state: State, line: Extract<Input, { do: 'sheet-row' }>): Heard {
  const { step, row, typed, sure = false } = line
  const refusal = wouldRefuse(defs, state, line)
  if (refusal !== null && ODD.includes(refusal.code))
    return ask(
      { kind: 'sheet-sure', step, row, typed, why: refusal.say },
      `${typed.trim()}: nothing was taken yet.`,
    )
  return refusal?.code === 'sheet-rest'
    ? ask(
        { kind: 'sheet-rest', step, row, typed, sure },
        `${typed.trim()} is time and initials alone. Nothing was taken yet: key what stands behind them.`,
      )
    : input(line)
}

/** `06:53 RO`, as the next line of the sheet begins. */
const NEXT_LINE = /^\d{1,2}:\d{2}(?:\s+(?:[A-Za-z]{1,5}|-))?(?:\s|$)/

/** Words that are of live work: what they do cannot come from a sheet. */
const LIVE: readonly Word[] = [
  ...(['n/a', 'placed', 'taken', 'deviation', 'notice', 'sign on', 'sign off'] as const),
  ...(['hand over', 'countersign'] as const),
]

/** Null: the word does what it does everywhere. */
export function sheetWord(defs: Definitions, state: State, word: Word): Heard | null {
  if (state.paper === null) return null
  if (LIVE.includes(word))
    return say(
      `${word} is of live work, and this is keyed from paper. A box that is blank is -; what else the sheet says is a note.`,
    )
  if (word !== 'correct' && word !== 'back') return null
  if (state.doubt !== null) return say('Say first what becomes of the figure that is doubted.')
  const items = keyedOf(defs, state).slice(0, MOST)
  return items.length === 0
    ? say('Nothing is keyed yet.')
    : ask({ kind: 'sheet-which', items }, ...items.map(({ text }, i) => `${i + 1}  ${text}`))
}

/** The last that were keyed; what lies further back is reached by its number on the sheet. */
const MOST = 40

/** What is keyed and stands, the last first. */
function keyedOf(defs: Definitions, state: State): SheetKeyed[] {
  const { paper } = state
  if (paper === null) return []
  const rows = Object.values(paper.rows).map(({ seq, step, row, text, time, who }) => ({
    seq,
    step,
    isAsked: step !== null && row === 'done' && state.done[step] !== undefined,
    text: `${numberOf(defs, step)}${boxName(defs, { step, row })}: ${text === null ? 'blank' : [time, who, text].filter((one) => one !== null && one !== '').join(' ')}`,
  }))
  const readings = Object.values(state.readings)
    .flat()
    .filter(stands)
    .map((r) => ({
      seq: r.seq,
      step: r.step,
      isAsked: false,
      text: `${placeNumber(defs, r.step, r.place)} ${placeName(defs, r.step, r.place)}: ${besideOf(paper, r.step, r.place)}${bareReading(defs, r)} ${r.unit}`,
    }))
  const unread = Object.entries(paper.unread)
    .filter(([place]) => state.notApplicable[place] !== undefined)
    .map(([place, { seq, is }]) => {
      const step = place.slice(0, place.indexOf('.'))
      return {
        seq,
        step,
        isAsked: true,
        text: `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}: ${besideOf(paper, step, place)}${UNREAD_TEXT[is]}`,
      }
    })
  return [...rows, ...readings, ...unread].sort((a, b) => b.seq - a.seq)
}

/** `2026-03-14 06:55 RO `: what stands beside the figures of a place. */
function besideOf(paper: PaperState, step: string, place: string): string {
  const { time, who } = rowOf(paper, step, place) ?? { time: null, who: null }
  return [time, who].map((one) => (one === null ? '' : `${one} `)).join('')
}

/** `7 `; nothing for the front and the end. */
function numberOf(defs: Definitions, step: string | null): string {
  const placed = defs.steps.find(({ id }) => id === step)
  return placed === undefined ? '' : `${placed.number} `
}

export function hearSheetAnswer(defs: Definitions, state: State, question: SheetAsk, line: string): Heard {
  // Where no words are asked it is the word, as at every prompt.
  if (wordIn(line) === 'leave' && question.kind !== 'sheet-why')
    return { ...input({ do: 'leave' }), say: leaveLines(defs, state) }
  switch (question.kind) {
    case 'sheet-sure': {
      const { step, row, typed } = question
      if (line.trim() === '2') return hearBox(defs, state, { do: 'sheet-row', step, row, typed, sure: true })
      return line.trim() === '1' ? say('Nothing was taken: key the box anew.') : ask(question, 'Key 1 or 2.')
    }
    case 'sheet-rest': {
      const { step, row, typed, sure } = question
      const rest = line.trim()
      if (rest === '' || NEXT_LINE.test(rest))
        return ask(question, 'Nothing was taken: - first, where that box is empty, then the next line.')
      return hearBox(defs, state, {
        do: 'sheet-row',
        step,
        row,
        typed: `${typed.trim()} ${rest}`,
        ...(sure ? { sure } : {}),
      })
    }
    case 'sheet-which': {
      const item = /^\d{1,2}$/.test(line.trim()) ? question.items[Number(line) - 1] : undefined
      if (item === undefined) return ask(question, `Key a number, 1 to ${question.items.length}.`)
      return ask({ kind: 'sheet-why', item }, ...(item.isAsked ? ['It is asked again at its box.'] : []))
    }
    case 'sheet-why': {
      const { item } = question
      return item.isAsked
        ? input({ do: 'sheet-correct', of: item.seq, typed: '-', why: line })
        : ask({ kind: 'sheet-again', item, why: line })
    }
    case 'sheet-again': {
      const what = { do: 'sheet-correct', of: question.item.seq, typed: line, why: question.why } as const
      const no = wouldRefuse(defs, state, what)
      // What the box does not take is keyed again, under the reason that was given.
      return no === null ? input(what) : refused(no, no.code === 'not-asked' ? null : question)
    }
  }
}
