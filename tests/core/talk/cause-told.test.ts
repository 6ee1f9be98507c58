// The words of a STOP against the cause that was picked for it by number.
import { describe, expect, it } from 'vitest'
import { STOP_CAUSES } from '../../../src/core/job/stop-causes.ts'
import { stricterTold } from '../../../src/core/talk/cause-told.ts'
import { Walk } from '../../helpers/example.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'

const saidOn = (walk: Walk, ...lines: readonly string[]): string => {
  const from = walk.said.length
  walk.keys(...lines)
  return walk.said.slice(from).join('\n')
}

describe('the words of a STOP', () => {
  it.each([
    ['gas', 'the lock on V-11 is off', 'safeguard'],
    ['gas', 'gas at the bleed, and the lock on V-11 is off', 'safeguard'],
    ['other', 'KH cut L-103', 'safeguard'],
    ['mistake', 'he cut his hand', 'hurt'],
    ['no-sense', 'the crank turned a bit', 'moved'],
    ['pressure', 'hiss at the plug; it turned', 'moved'],
    ['mistake', 'smell near the bench', 'gas'],
    ['mistake', 'the lock on V-11 is off, smell near the bench', 'safeguard'],
  ] as const)('picked as %s, "%s", tell of %s', (cause, words, told) => {
    expect(stricterTold(cause, words)).toBe(told)
  })

  it.each([
    ['gas', 'smell near the bench'],
    ['gas', 'smell of paint, nobody is hurt'],
    ['other', "the machine didn't start"],
    ['mistake', 'paint thinner, L-103 is on'],
    ['no-sense', 'a figure that makes no sense'],
    ['pressure', 'a hiss at the plug'],
  ] as const)('picked as %s, "%s", tell of nothing worse', (cause, words) => {
    expect(stricterTold(cause, words)).toBeNull()
  })

  it('are never held against a cause that nobody may lift', () => {
    for (const { id, releasable } of STOP_CAUSES)
      if (!releasable) expect(stricterTold(id, 'he is hurt and the lock on V-11 is off')).toBeNull()
  })

  it('are told at once, to the lead who lifts it, and to the lead who reads the log', () => {
    const walk = new Walk().toGate().keys('stop', '1')
    expect(saidOn(walk, 'gas at the bleed, the lock on V-11 is off')).toContain(
      'These words tell of cause 4 in the list, a lock, block or blind was off or wrong. The cause is the worst of what it was: back, twice, picks another.',
    )
    // As it says: back, twice, is the list.
    const back = new Walk().toGate().keys('stop', '1', 'gas, the lock on V-11 is off', 'back', 'back', '4')
    expect(back.talk.ask).toMatchObject({ kind: 'stop-why', cause: 'safeguard' })
    walk.keys('ML')
    expect(saidOn(walk, '1')).toBe(
      'Its words tell of cause 4 in the list, a lock, block or blind was off or wrong. The cause is the worst of what it was: back, then 3, says it again.',
    )
    expect(saidOn(walk, 'back', '3')).toContain('4 a lock, block or blind was off or wrong')
    walk.keys('back')
    walk.bring({ do: 'release-stop', person: 'KH', answer: 'hung it again' })
    expect(only(reviewed(walk), 'stop').sentences).toContain(
      'Its words tell of cause 4 in the list, a lock, block or blind was off or wrong; picked was cause 1 in the list, gas: a smell or a meter alarm.',
    )
  })

  it('that tell of nothing worse add no line', () => {
    const walk = new Walk().toGate().keys('stop', '1')
    expect(saidOn(walk, 'smell near the bench', 'ML', '1')).not.toMatch(/words tell of/)
  })
})
