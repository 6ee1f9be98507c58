// The walked example: every answer of the shipped answers file, and the job as it stood before each.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readAnswers } from '../../src/plain/answers.ts'
import { ROOT, Walk } from './example.ts'

export const ANSWERS = join(ROOT, 'examples', 'tc-401', 'answers.txt')

export function exampleAnswers(): string[] {
  const read = readAnswers(readFileSync(ANSWERS, 'utf8'), ANSWERS)
  if (!read.ok) throw new Error(read.error.say)
  return read.value.flatMap((line) => (line.kind === 'answer' ? [line.text] : []))
}

/** Calls `at` before every answer, and once more when the job is over. */
export function walkExample(at: (walk: Walk, answered: number) => void): Walk {
  const walk = new Walk()
  walk.autoPin = false
  for (const [i, line] of exampleAnswers().entries()) {
    at(walk, i)
    walk.key(line)
  }
  at(walk, exampleAnswers().length)
  return walk
}
