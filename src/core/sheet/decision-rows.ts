// Nonconformances, dispositions and deviation permits on the sheet.
import { permitsFor } from '../job/admit-deviation.ts'
import { CHANGES_IT } from '../job/as-left.ts'
import { authorityText } from '../job/authority.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { nonconformances } from '../job/nonconformance.ts'
import type { State } from '../job/state.ts'
import { isOver, validityText } from '../job/validity.ts'
import { fellText, findingText } from '../talk/names.ts'
import { standingItems, undoneItems } from '../talk/open-items.ts'
import { type Block, type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'
import { titleOf } from './entry-words.ts'

/** The block of an entry that raised a nonconformance says so, with its number. */
export function withNonconformance(
  defs: Definitions,
  state: State,
  entry: Entry,
  block: Block,
  more: readonly Row[] = [],
): Block {
  const raised = nonconformances(defs, state).filter((nc) => nc.seq === entry.seq)
  const said = raised.map(({ name }) => row(`Nonconformance ${name}, open until a lead decides.`, 'caution'))
  return { ...block, rows: [...block.rows, ...more, ...said, ...fellRows(defs, state, entry)] }
}

/** What the same step came to before and no longer stands, said where it comes to something new. */
function fellRows(defs: Definitions, state: State, entry: Entry): Row[] {
  if (!('step' in entry)) return []
  const last = nonconformances(defs, state).findLast((nc) => nc.step === entry.step && nc.seq < entry.seq)
  const text = last === undefined ? null : fellText(defs, state, last)
  return text === null ? [] : [row(`Nonconformance ${text}.`)]
}

export function dispositionRows(
  defs: Definitions,
  state: State,
  entry: Extract<Entry, { type: 'disposition.set' }>,
): Row[] {
  const choice = entry.choice.toUpperCase()
  const sign = bySign(entry.signed)
  // Of a verdict it stands under the step that asks for it; a finding is named, as it is decided on at the end.
  const found = nonconformances(defs, state).filter(
    ({ step, decided }) => step === entry.step && decided?.seq === entry.seq,
  )
  const about = found.map((one) => row(findingText(defs, state, one)))
  if (entry.radio === undefined) {
    return [
      ...about,
      row(`Disposition by ${entry.person}${sign}: ${choice}`, 'strong'),
      row(`  ${entry.why}`),
      ...termsRows(defs, entry),
      ...unseenRows(defs, entry),
    ]
  }
  return [
    ...about,
    row(`Disposition by ${entry.person} BY RADIO, keyed by ${entry.radio.by}${sign}: ${choice}`, 'strong'),
    row(`  as it was said: ${entry.why}`),
    row(`  Open until ${entry.person} signs for it: countersign. The job does not close before.`, 'caution'),
  ]
}

/** Of a finding that was put right the entry before says how it was found, and none yet how it is. */
function unseenRows(defs: Definitions, entry: Extract<Entry, { type: 'disposition.set' }>): Row[] {
  const isFinding = defs.steps.find(({ id }) => id === entry.about)?.step.kind === 'observe'
  return isFinding && CHANGES_IT.includes(entry.choice)
    ? [row(`  by the word of ${entry.person}: nothing on record shows it as it is now`, 'caution')]
    : []
}

function termsRows(defs: Definitions, entry: Extract<Entry, { type: 'disposition.set' }>): Row[] {
  if (entry.authority === undefined || entry.valid === undefined) return []
  return [row(`  on the authority of ${authorityText(defs, entry.authority)}, ${validityText(entry.valid)}`)]
}

export function deviationRows(
  defs: Definitions,
  state: State,
  entry: Extract<Entry, { type: 'deviation.permitted' }>,
): Row[] {
  const number = state.deviations.findIndex((d) => d.seq === entry.seq) + 1
  return [
    row(
      `Deviation permit DP-${number} by ${entry.person}${bySign(entry.signed)} for ${titleOf(defs, entry.step)}`,
      'strong',
    ),
    row(`  ${entry.what}; because ${entry.why}`),
    row(`  on the authority of ${authorityText(defs, entry.authority)}, ${validityText(entry.valid)}`),
    row('  It changes no limit, no verdict and no hold point.'),
  ]
}

/** Permits beside a verdict and before whoever decides on it; `at` tells whether their day has passed. */
export function permitRows(defs: Definitions, state: State, judge: string, at: string): Row[] {
  return permitsFor(defs, state, judge).map(({ name, permit }) => {
    const over = isOver(permit.valid, at)
    return row(
      `Deviation permit ${name}, ${over ? 'LAPSED, ' : ''}${validityText(permit.valid)}: ${permit.what} (${permit.authority}). It changes no limit.`,
      over ? 'caution' : 'plain',
    )
  })
}

export function openRows(defs: Definitions, state: State): Row[] {
  return [
    ...undoneItems(defs, state).map((item) => row(`  open: ${item}`, 'caution')),
    ...standingItems(defs, state).map((item) => row(`  stands so: ${item}`)),
  ]
}

/** A decision that holds the work here: a decide step is asked with a standing one only while it waits. */
export function waitingRows(state: State, id: string): Row[] {
  const said = state.dispositions[id]
  if (said === undefined || said.void) return []
  return [
    row(`Decided ${said.choice} by ${said.person}: NOTHING GOES ON FROM HERE.`, 'caution'),
    row('Do the work, then key correct and read anew; or a lead decides anew:'),
  ]
}
