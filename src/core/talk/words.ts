// The few words that work at any prompt. Plain English and the trade's own; anything else answers the prompt.

import { withoutUnseen } from '../lib/text.ts'

export const WORDS = [
  { word: 'stop', says: 'STOP: blocks everything, asks why after. Or key !' },
  { word: 'safe', says: 'MAKE SAFE: what to do, whom to call. Drawn: Tab too' },
  { word: 'why', says: 'reason; why taper' },
  { word: 'ask', says: 'a question, or ...?' },
  { word: 'where', says: 'how far; next' },
  { word: 'correct', says: 'mend what was keyed' },
  { word: 'readings', says: 'all so far; changes' },
  { word: 'back', says: 'to the last answer' },
  { word: 'open', says: 'what is still open' },
  { word: 'note', says: 'into the log' },
  { word: 'attach', says: 'a photo, a scan' },
  { word: 'n/a', says: 'it cannot be read' },
  { word: 'placed', says: 'something temporary' },
  { word: 'taken', says: 'it is accounted for' },
  { word: 'deviation', says: 'a lead permits one' },
  { word: 'notice', says: 'of a witness point' },
  { word: 'instrument', says: 'out of calibration' },
  { word: 'sign on', says: 'sign off, hand over' },
  { word: 'aloud', says: 'read out; aloud off' },
  { word: 'leave', says: 'take it up later' },
] as const

/** Words that help leaves to itself, to their neighbour or to the sheet, which names them where they are of use. */
export const UNLISTED = [
  'help',
  'sign off',
  'hand over',
  'countersign',
  'changes',
  'limits',
  'show',
  'next',
  'aloud off',
] as const

export type Word = (typeof WORDS)[number]['word'] | (typeof UNLISTED)[number]

/** What people say for them. */
const SAID: ReadonlyMap<string, Word> = new Map([
  ['handover', 'hand over'],
  ['accounted', 'taken'],
  ['where am i', 'where'],
  ['where are we', 'where'],
  ['what next', 'next'],
  ['what is next', 'next'],
  ["what's next", 'next'],
  ['show readings', 'readings'],
  ['show limits', 'limits'],
  ['the limits', 'limits'],
  ['show all', 'show'],
  ['list', 'show'],
  ['list all', 'show'],
  ['go back', 'back'],
  ['read aloud', 'aloud'],
  ['aloud on', 'aloud'],
])

/** Keys that name themselves with an escape sequence, such as an arrow hit on the way. */
const KEY_SEQUENCES = /\u001b(?:\[[0-?]*[ -/]*[@-~]|O[@-~])?/g

/**
 * A line that is only "stop", or the one key, is STOP everywhere; said or pressed several times, one after the other, or
 * with what cannot be seen around it, it is no less. A question mark makes no question of it: that has more words.
 */
export function isStop(line: string): boolean {
  const plain = withoutUnseen(line.replace(KEY_SEQUENCES, '')).trim()
  return /^(?:!|stop)(?:[\s.,!?]|stop)*$/i.test(plain)
}

/** A line that asks for the make-safe sheet, wherever it is keyed. */
export function isMakeSafe(line: string): boolean {
  return /^(?:make\s+)?safe[\s.!?]*$/i.test(line.trim())
}

export function wordIn(line: string): Word | null {
  const plain = line
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .replaceAll('\u2019', "'")
  // A question mark makes one of these no other thing; a single word with one is asked about, and not done.
  const said = SAID.get(plain.replace(/ ?[?.]+$/, '')) ?? plain
  return WORDS.find(({ word }) => word === said)?.word ?? UNLISTED.find((word) => word === said) ?? null
}

export const ASK_HOW =
  'Ask what? Key it in one line: ask what runout is. Or end the line with a question mark.'

export const PIN_DROPPED =
  'Figures keyed where a PIN was asked or could have been are dropped and kept nowhere: key the answer anew.'

/** What note alone does, said wherever the words of a line are kept for it. */
export const NOT_NOTED =
  'None of it is on record yet: note alone puts these words there; or note, and other words behind it.'
