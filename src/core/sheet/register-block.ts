// What the register of temporary things looks like on the sheet.
import type { Entry } from '../job/entries.ts'
import { openThings, thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'
import { type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'

type ThingEntry = Extract<
  Entry,
  { type: 'thing.placed' | 'thing.seen' | 'thing.accounted' | 'things.handed-on' }
>

/** `state` is the one after the entry. */
export function registerRows(state: State, entry: ThingEntry): Row[] {
  const named = (seq: number) => {
    const thing = state.things.find((t) => t.seq === seq)
    return thing === undefined ? `entry ${seq}` : thingText(thing)
  }
  switch (entry.type) {
    case 'thing.placed':
      return [row(`Placed: ${named(entry.seq)}`, 'strong')]
    case 'thing.seen':
      return [row(`Looked at by ${entry.person}${bySign(entry.signed)}: ${named(entry.of)}`)]
    case 'thing.accounted':
      return [
        row(`Accounted for by ${entry.people.join(' and ')}${bySign(entry.signed)}: ${named(entry.of)}`),
      ]
    case 'things.handed-on':
      return [
        row(`Handed on, still open, by ${entry.person}${bySign(entry.signed)}: ${entry.to}`, 'caution'),
        ...entry.of.map((seq) => row(`  ${named(seq)}`)),
      ]
  }
}

/** What is open when the job closes: nothing stays behind without a word. */
export function stillOpenRows(state: State): Row[] {
  return openThings(state).map((thing) => row(`  STILL PLACED: ${thingText(thing)}`, 'caution'))
}
