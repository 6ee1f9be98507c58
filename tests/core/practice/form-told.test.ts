// What is told of the form of a bore in truth, and of what was named, never speaks against each other.
import { expect, it } from 'vitest'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, practiceDefs, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const defs = practiceDefs()
const faults = faultsFor(defs)
const numberOf = (id: string) => 1 + faults.findIndex((one) => one.id === id)

/** A session as far as the question what was hidden. */
function judged(seed: number): Walk {
  const stops: Trainee = (walk) => (walk.prompt.kind === 'finish' ? false : careful(walk))
  return session(seed, 1, stops, defs).walk
}

function says(walk: Walk, type: string): string {
  const entry = walk.entries.findLast((one) => one.type === type)
  if (entry === undefined) throw new Error(`no ${type}`)
  return (lessonOn(defs, walk.state, entry)?.says ?? []).join('\n')
}

const FROM_WHERE = 'A form counts as hidden only from where it takes the bore beyond a limit'

it('a bore that is worn within its limits has its form with its size, as ordinary wear', () => {
  let seed = 1
  while (drawFaults(faults, seed, 1).length > 0) seed++
  const told = says(judged(seed), 'verdict.given')
  expect(told).toMatch(
    /form: (barrel|hourglass), wider (in the middle|at the ends) by \d\.\d{4} in|form: \w+/,
  )
  expect(told).toContain(
    'The bore is within its limits in truth: that is ordinary wear, and no hidden fault.',
  )
  expect(told).not.toContain(FROM_WHERE)
})

it('a barrel beyond a limit is told with its size, and from where one counts', () => {
  const told = says(judged(seedHiding('barrel', 1)), 'verdict.given')
  expect(told).toMatch(/form: barrel, wider in the middle by 0\.\d{4} in/)
  expect(told).toContain(FROM_WHERE)
  expect(told).not.toContain('ordinary wear, and no')
})

it('of several that are named right and wrong ones are told apart', () => {
  const walk = judged(seedHiding('barrel', 1))
  walk.key(`${numberOf('barrel')} ${numberOf('hourglass')}`)
  const told = says(walk, 'practice.named').split('\n')
  expect(told[0]).toBe('Wrong, though not all of it.')
  expect(told[1]).toBe('Right: The bore is wider in the middle: a barrel.')
  expect(told).toContain('Not hidden on this machine: The bore is wider at both ends: an hourglass.')
  expect(told.at(-1)).toContain(FROM_WHERE)
})

it('the list of what can be hidden says from where a form counts', () => {
  expect(judged(seedHiding('barrel', 1)).keys('fault').said.join('\n')).toContain(FROM_WHERE)
})
