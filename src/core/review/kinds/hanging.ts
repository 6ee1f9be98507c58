// Locks, blinds and tags that by the record still hang on the machine, when the job has ended or as it stands open: number, name and
// where.

import { itemLabel } from '../../job/item-label.ts'
import { hanging, type Keyed } from '../../job/locks-on.ts'
import { list } from '../../lib/wording.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, count, entriesOf, type Look, named, sentence, when } from '../look.ts'
import { lastStart, onAt, thingsText } from '../starts.ts'

export function stillHanging(look: Look): Found[] {
  const { on } = hanging(look.defs, look.state)
  if (look.state.closed === null) return on.length === 0 ? [] : [onNow(look, on)]
  const tags = on.filter(isTag)
  const locks = on.filter((one) => !isTag(one))
  return [
    ...(locks.length === 0
      ? []
      : [
          found(
            look,
            locks,
            `STILL ON by the record: ${kindsOf(locks)}, ${list(locks.map((one) => one.shown))}`,
            `The record does not tell them off. Whoever hung them takes them off, or another job holds the machine by them. ${WHAT_TO_DO}`,
            0,
          ),
        ]),
    ...(tags.length === 0
      ? []
      : [
          found(
            look,
            tags,
            `Still on by the record: ${count(tags.length, 'tag')}, ${list(tags.map((one) => one.shown))}`,
            `The record does not tell them off. ${WHAT_TO_DO}`,
            1,
          ),
        ]),
  ]
}

/** A closed job is never told off again: what is seen goes beside it. */
const WHAT_TO_DO =
  'Look at each, at the machine or on the part: taken off by whoever hung it, or it stays, and why; a lead puts what was seen on record, by barover remark.'

/** As it has to be while people work, and nobody else's list: whoever was not there has to know what hangs. */
function onNow(look: Look, on: readonly Keyed[]): Found {
  return {
    kind: 'hung',
    what: `On by the record, the job is open: ${thingsText(on)}, ${list(on.map(({ shown }) => shown))}`,
    sentences: [
      ...on.map((one) => deviceLine(look, one)),
      ...startedWhileOn(look, on),
      'What hung at a hold point that fell since counts as on until it is told off.',
    ],
    entries: on.map(({ seq }) => seq),
    open: false,
  }
}

function found(look: Look, on: readonly Keyed[], what: string, last: string, grave: number): Found {
  const said = remarksOn(look, on)
  const silent = on.filter(({ shown }) => !said.some(({ text }) => names(text, shown)))
  const isTold = silent.length === 0
  const by = list([...new Set(said.map(({ person }) => person))])
  return {
    kind: 'hanging',
    what: isTold ? `${what}; each remarked on by ${by}` : what,
    sentences: [
      ...on.map((one) => deviceLine(look, one)),
      ...startedWhileOn(look, on),
      ...said.map(
        (entry) => `Remarked on by ${byWhom(look, entry)}, as said: ${sentence(clause(entry.text))}`,
      ),
      ...(isTold || said.length === 0 ? [] : [`No remark names ${list(silent.map(({ shown }) => shown))}.`]),
      isTold ? TOLD : last,
    ],
    entries: [...on, ...said].map(({ seq }) => seq),
    // Words take nothing off: that a lead looked at each and said so is all that ends the asking.
    open: !isTold,
    grave,
  }
}

/** It is never said that one is off: the record tells what was keyed, and what a lead said of it. */
const TOLD = 'The record does not tell them off: it has the words above, by whoever signed them, and no more.'

/** Remarks after the close in which one of them stands by its number. */
function remarksOn(look: Look, on: readonly Keyed[]) {
  return entriesOf(look, 'remark.made').filter(({ text }) => on.some(({ shown }) => names(text, shown)))
}

/** Whole: T-9 is not named by T-90. A number without a letter is named only behind a word for what it is on: `12 h` names no lock 12. */
function names(text: string, shown: string): boolean {
  const number = shown.trim().toUpperCase()
  const said = text.toUpperCase()
  if (/^\d+$/.test(number))
    return new RegExp(
      `\\b(?:LOCK|TAG|BLIND|NUMBER|NO)S?\\.?\\s+(?:\\d+(?:\\s*,\\s*|\\s+AND\\s+))*${number}\\b`,
    ).test(said)
  return said.split(/[^\p{L}\p{N}-]+/u).includes(number)
}

/** A start with a lock on, or with a tag that forbids it, is what a lead asks about first. */
function startedWhileOn(look: Look, on: readonly Keyed[]): string[] {
  const start = lastStart(look)
  if (start === null) return []
  const then = new Set(onAt(look, start).map(({ seq }) => seq))
  const both = on.filter(({ seq }) => then.has(seq)).map(({ shown }) => shown)
  const at = `${named(start.placed)}, ${when(look, start.move.entry)}`
  return both.length === 0
    ? []
    : [`By the record it was started while ${list(both)} ${both.length === 1 ? 'was' : 'were'} on: ${at}.`]
}

const isTag = ({ item }: Keyed) => item.evidence.kind === 'numbers' && item.evidence.of === 'tag'

/** `6 locks and 2 blinds`. */
function kindsOf(on: readonly Keyed[]): string {
  const blinds = on.filter(({ item }) => item.evidence.kind === 'numbers' && item.evidence.of === 'blind')
  const locks = on.length - blinds.length
  return list([
    ...(locks === 0 ? [] : [count(locks, 'lock')]),
    ...(blinds.length === 0 ? [] : [count(blinds.length, 'blind')]),
  ])
}

/** A lock names its point; what does not is told by what its hold point asked for. */
function deviceLine(look: Look, one: Keyed): string {
  const { item, gate, shown } = one
  const by = `${one.by ?? 'nobody known'} ${when(look, one)}`
  const asked =
    item.point !== null || item.person !== null || !('ask' in item.evidence)
      ? ''
      : `: ${clause(item.evidence.ask)}`
  return sentence(
    `${shown}, ${itemLabel(look.defs, item)}, keyed ${by} at ${named(gate)}${asked}${otherText(look, one)}`,
  )
}

/** Where another was keyed in its place it may hang elsewhere, or nowhere: that is looked for. */
function otherText(look: Look, { shown }: Keyed): string {
  const other = entriesOf(look, 'evidence.given').find(({ was }) => was === shown)
  return other === undefined
    ? ''
    : `; ${other.shown} was keyed in its place ${when(look, other)}, so look where ${shown} is`
}
