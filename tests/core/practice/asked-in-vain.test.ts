// Where nothing is to be looked at none is wanted, and where look or measure shows nothing it is said what serves there.
import { expect, it } from 'vitest'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, session, type Trainee } from '../../helpers/trainees.ts'

const load = defsOf('pocket-load')
const bore = defsOf('bore-inspection')

const upTo = (stopsAt: (walk: Walk) => boolean, defs = bore): Walk => {
  const stops: Trainee = (walk) => (walk.talk.ask === null && stopsAt(walk) ? false : careful(walk))
  return session(3, 1, stops, defs).walk
}

it('the order for the pocket is decided, and no look is wanted for it', () => {
  const walk = upTo(
    ({ prompt }) => prompt.kind === 'observe' && prompt.step.step.id.startsWith('order'),
    load,
  )
  expect(walk.prompt.kind).toBe('observe')
  walk.keys('1')
  while (walk.talk.ask !== null) careful(walk)
  const entry = walk.entries.findLast(({ type }) => type === 'finding.observed')
  if (entry === undefined) throw new Error('no finding')
  expect(lessonOn(load, walk.state, entry)?.says.join(' ')).not.toContain('nobody looked')
})

it('of a load it is said which figure has the errors of measuring in it, and what a share of reversal is', () => {
  const { walk } = session(3, 1, careful, load)
  const entry = walk.entries.find(({ type }) => type === 'verdict.given')
  if (entry === undefined) throw new Error('no verdict')
  const told = lessonOn(load, walk.state, entry)?.says.join('\n') ?? ''
  expect(told).toMatch(
    /driver load [\d.]+ kW without any error of measuring; you keyed [\d.]+ kW by the meter; worked out [\d.]+ kW/,
  )
  expect(told).toMatch(/judged is what the driver load may be with the errors.*: \d+\s% of the target/)
  expect(told).toMatch(/without the errors it is \d+\s%/)
  expect(told).toContain('reversal: what is wanted of it at least, as a share of what is there')
})

it('at the witness it is the witness who looks', () => {
  const walk = upTo(({ prompt }) => prompt.kind === 'evidence' && prompt.item.evidence.kind === 'witness')
  walk.key('look')
  expect(walk.said.at(-1)).toMatch(/^Here it is the witness who looks/)
})

it('measure at a doubt says what comes first', () => {
  const walk = upTo(({ prompt }) => prompt.kind === 'read').keys('measure', '700.0')
  expect(walk.prompt.kind).toBe('doubt')
  walk.key('measure')
  expect(walk.said.at(-1)).toMatch(/^A figure waits here: 1 drops it, and measure then shows a new one/)
})
