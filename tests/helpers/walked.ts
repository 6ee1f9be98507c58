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

/**
 * Keys an answers file of `examples` as the plain driver does: time passes, acts, and then the line is heard. PINs are keyed and
 * taken as right. `key` is in place of just keying the line, with its number in the file.
 */
export function playAnswers(
  walk: Walk,
  [site, name]: readonly [string, string],
  key: (text: string, line: number) => void = (text) => {
    walk.key(text)
  },
): Walk {
  const file = join(ROOT, 'examples', site, name)
  const answers = readAnswers(readFileSync(file, 'utf8'), file)
  if (!answers.ok) throw new Error(answers.error.say)
  walk.autoPin = false
  walk.pinsAreRight = true
  walk.stepMs = 0
  let step = 0
  for (const line of answers.value) {
    if (line.kind === 'clock') walk.now = line.at
    else if (line.kind === 'step') step = line.ms
    else if (line.kind === 'wait') walk.wait(line.ms / 60_000)
    else {
      walk.wait(step / 60_000).bring({ do: 'tick' })
      key(line.text === 'done' ? '' : line.text, line.line)
    }
  }
  return walk
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
