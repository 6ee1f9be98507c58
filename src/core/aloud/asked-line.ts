// The last line before a person keys, where nothing is drawn: what is asked, with its unit. And what is said before it.
import type { Definitions } from '../job/definitions.ts'
import { type Item, wantsAnother } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import type { State } from '../job/state.ts'
import type { Row } from '../sheet/block.ts'
import { LISTED } from '../talk/correct.ts'
import { wantedLine } from '../talk/wanted.ts'
import { UNIT_WORDS } from './in-words.ts'
import type { PromptPieces } from './prompt-pieces.ts'

export interface Asking {
  /** Said once at a step, and again only where it says something else. */
  readonly once: readonly Row[]
  /** What is chosen from, and what is to be done at once: said each time. */
  readonly each: readonly Row[]
  /** Without its first word; empty where nothing is asked. */
  readonly asked: string
}

export function askingOf(defs: Definitions, state: State, told: PromptPieces): Asking {
  const { prompt, view } = told
  if (told.isQuestion) {
    const more = view.listsPart || view.choices.length > LISTED ? view.more : []
    const rows = [...view.choices.slice(0, LISTED), ...more, ...view.ask]
    const last = rows.findLast((r) => r.tone === 'strong')
    const rest = rows.filter((r) => r !== last)
    return {
      once: rest.filter((r) => r.tone === 'faint'),
      each: rest.filter((r) => r.tone !== 'faint'),
      asked: withUnit(last?.text ?? '', view.unit),
    }
  }
  switch (prompt.kind) {
    case 'read':
      return readAsking(told)
    case 'evidence':
      return { once: evidenceRows(prompt.item, view.ask), each: [], asked: evidenceAsked(defs, state, told) }
    case 'sign-on':
    case 'tag':
      return { once: [], each: [], asked: view.ask.map(({ text }) => text).join(' ') }
    case 'tell':
      // Behind what is said before Enter, such as what stays on as the job ends, the last row only says Enter again.
      return { once: view.ask.slice(0, -1), each: [], asked: wanted(defs, state, told) }
    case 'doubt': {
      // What is doubtful was told with the doubt, right before.
      const isSaid = prompt.doubt.seq === state.seq
      const rows = view.ask.filter((r) => !isSaid || (r.tone !== 'caution' && r.tone !== 'faint'))
      return { ...parted(rows), asked: wanted(defs, state, told) }
    }
    case 'held':
      return { ...parted(view.ask.filter((r) => r.tone !== 'stamp')), asked: wanted(defs, state, told) }
    default: {
      const { asked, rest } = lastStrong(view.ask)
      return { ...parted(rest), asked: asked === '' ? wanted(defs, state, told) : asked }
    }
  }
}

/** `7.3 Again, afresh, inch`; the instrument stands before it, once. */
function readAsking({ view, ask, with: with_ }: PromptPieces): Asking {
  const [first, ...rest] = ask
  const how = with_.map((r) => ({ ...r, text: r.text.replace(/^\([^)]*\) with /, 'With ') }))
  const unit = view.unit === '' ? '' : `, ${unitSaid(view.unit)}`
  return { once: [...how, ...rest], each: [], asked: `${view.margin} ${first?.text ?? ''}${unit}` }
}

/** The line that only says again what the last one asks is left out. */
function evidenceRows(item: Item, rows: readonly Row[]): readonly Row[] {
  const { kind } = item.evidence
  const isTwice =
    kind === 'locks' ||
    kind === 'words' ||
    (kind === 'numbers' && !wantsAnother(item)) ||
    (kind === 'lift' && item.part === 'inspected')
  return isTwice ? rows.slice(0, 1) : rows
}

function evidenceAsked(defs: Definitions, state: State, told: PromptPieces): string {
  const { prompt, view } = told
  if (prompt.kind !== 'evidence' || view.unit === '') return wanted(defs, state, told)
  return `${itemLabel(defs, prompt.item)}, ${unitSaid(view.unit)}`
}

/** What a word keyed out of habit is told, without its own first word. */
function wanted(defs: Definitions, state: State, { prompt }: PromptPieces): string {
  return wantedLine(defs, state, prompt).replace(/^Asked (?:is|are) /, '')
}

/** `The right figure, in full (in)`: a unit in brackets is told in words. */
function withUnit(text: string, unit: string): string {
  return unit === '' ? text : text.replace(` (${unit})`, `, ${unitSaid(unit)}`)
}

/** A unit as it is said, to be read as well: its letters are not parted. */
function unitSaid(unit: string): string {
  return (UNIT_WORDS[unit] ?? unit).replace('L E L', 'LEL').replace('P S I', 'psi')
}

/** The question where it stands last, as at a signature; elsewhere what is chosen from does. */
function lastStrong(rows: readonly Row[]): { readonly asked: string; readonly rest: readonly Row[] } {
  const last = rows.findLastIndex((r) => r.tone !== 'faint')
  const row = rows[last]
  if (row === undefined || row.tone !== 'strong') return { asked: '', rest: rows }
  return { asked: row.text, rest: rows.filter((_, i) => i !== last) }
}

const CHOSEN = /^(?:\d+|[a-z][a-z ]*?) {2}/
const AT_ONCE = /^COME OUT/

function parted(rows: readonly Row[]): { once: readonly Row[]; each: readonly Row[] } {
  const isEach = ({ text, tone }: Row) => tone === 'stamp' || CHOSEN.test(text) || AT_ONCE.test(text)
  return { once: rows.filter((r) => !isEach(r)), each: rows.filter(isEach) }
}
