// A word that is none, where a number or a choice is asked for: the nearest word that is one.
import type { Prompt } from '../job/next.ts'
import { nearest } from '../lib/wording.ts'
import { UNLISTED, WORDS } from './words.ts'

/** n/a is left out: what is close to it is more likely a figure that was not one. */
const ANYWHERE = [...WORDS.map(({ word }) => word), ...UNLISTED].filter((word) => word !== 'n/a')

const HERE: Readonly<Partial<Record<Prompt['kind'], readonly string[]>>> = {
  tell: ['done'],
  stopped: ['release', 'cause', 'close'],
  'stop-cause': ['same'],
  'open-things': ['hand on'],
}

const CHOICES: readonly Prompt['kind'][] = [
  'pick',
  'evidence',
  'doubt',
  'late',
  'tell',
  'confirm',
  'observe',
  'decide',
  'read',
  'held',
  'stopped',
  'stop-cause',
  'open-things',
]

/** One sentence, or null where the line is no word or is near to none. */
export function meantLine(prompt: Prompt, line: string): string | null {
  const text = line.trim()
  if (!CHOICES.includes(prompt.kind) || !/^[a-z]{3,}(?: [a-z]+)?$/i.test(text)) return null
  const near = nearest(text, [...(HERE[prompt.kind] ?? []), ...ANYWHERE])
  return near === undefined || near === text.toLowerCase()
    ? null
    : `Did you mean ${near}? Nothing was taken; help lists the words.`
}
