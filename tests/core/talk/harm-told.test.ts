// Harm as it is told in a hurry, at the prompts where it happens: heard, answered at once.
import { describe, expect, it } from 'vitest'
import { safetyAsked, tellsOfHarm } from '../../../src/core/talk/safety-asked.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'

const HARM: Readonly<Record<string, readonly string[]>> = {
  alarm: [
    'theres a bit of gas coming from the crank end bleed',
    'gas coming out of the bleed',
    'still a bit of flow at the crank end',
    'gas is comming out',
    'bit of gas coming out the bleed',
    'there is a bit of gas',
    'its blowing a bit',
    'the bleed is leaking',
    'water coming in',
    'i still feel some flow',
  ],
  hurt: [
    'i cut my hand',
    'my arm is stuck',
    'its hard to breath',
    'he crushed his left thumb',
    "can't breathe in here",
  ],
  starts: [
    'they are starting it',
    'somebody is barring it over',
    'the engine is running',
    'the operator started the machine',
  ],
  off: ['no lock on V-12', 'theres no lock on V-12', 'V-12 has no lock', 'lock missing on V-12'],
}
const CALM = [
  'no flow',
  'there is no gas',
  'no gas coming out',
  'no flow at the crank end',
  'the pressure gauge reads 0',
  'how do I start it',
  'is there gas in here',
  'the bore is dry',
  'water jacket is dry',
  'which lock is on V-12',
  'the air drill is ready',
  'clear of people',
]

describe('harm', () => {
  it.each(Object.entries(HARM).flatMap(([about, all]) => all.map((line) => [line, about] as const)))(
    '%j is heard as %s',
    (line, about) => {
      expect(safetyAsked(line)).toBe(about)
      expect(tellsOfHarm(line)).toBe(true)
    },
  )

  it.each(CALM)('%j tells of none', (line) => {
    expect(tellsOfHarm(line)).toBe(false)
  })

  it('is heard where NO FLOW is asked: nothing of it counts, and how it comes on record is said', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, 'NO START')
    const before = walk.entries.length
    walk.key('theres a bit of gas coming from the crank end bleed')
    expect(walk.said.join('\n')).toMatch(/FIRST: come out[\s\S]*None of it is on record: note/)
    expect(walk.entries).toHaveLength(before)
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'bleeds' } })
  })

  it('is heard where a figure is asked, and nothing is read of it', () => {
    for (const line of Object.values(HARM).flat()) {
      const walk = new Walk().toBore().keys('9.5033')
      const before = walk.entries.length
      walk.key(line)
      expect(walk.said.join('\n'), line).toMatch(/FIRST: come out/)
      expect(walk.entries, line).toHaveLength(before)
    }
  })
})
