// What stands between a job and its close: each by name, with what is keyed for it; and nothing once it is closed.
import { describe, expect, it } from 'vitest'
import { toClose } from '../../../src/core/talk/to-close.ts'
import { GATE_LINES, Walk } from '../../helpers/example.ts'
import { smallAtSize, smallDone, smallStart } from '../../helpers/reviewed.ts'

const of = (walk: Walk) => toClose(walk.engine.defs, walk.state)

describe('what stands in the way of closing', () => {
  it('names what nobody is clear of, the steps left, the word by radio with its lead, and what hangs by number', () => {
    const walk = new Walk().toGate().keys('sign on', 'ML').throughTheRest()
    const lines = of(walk.keys('1', 'radio', 'KH', 'run it', 'ML', 'leave'))
    expect(lines).toEqual([
      expect.stringMatching(
        /^ALL OUT is missing at hold point 2 .*At the machine, by barover resume\. Sign on, then ALL OUT\.$/,
      ),
      expect.stringMatching(
        /^1 step is not done, of \d+: the first is \d+ .*, at the machine, by barover resume\.$/,
      ),
      expect.stringMatching(/^NOT COUNTERSIGNED: .*radio from KH.*\. KH signs, by the word countersign\.$/),
      expect.stringMatching(/^Still on by the record: L-101, L-102, L-103, L-104, L-105 and L-106\./),
    ])
  })

  it('names a STOP with its cause and the two words for it, and one whose cause is not told with the word for that', () => {
    const told = of(new Walk().toBore().keys('stop', '1', 'smells of gas', 'RO'))
    expect(told[0]).toMatch(
      /^STOP not released \(entry \d+\), gas: .*smells of gas\. .*release lets the job go on, close/,
    )
    expect(of(new Walk().toBore().keys('stop'))[0]).toMatch(
      /its cause is not told\. The words: cause tells it; then/,
    )
  })

  it('names a finding, and what was placed and who has seen it', () => {
    const found = of(smallAtSize().keys('9.5033', '2', 'a score at 3', ''))
    expect(found).toEqual([expect.stringMatching(/^UNDECIDED: NC-1 .*by the word dispose/)])
    const placed = smallStart()
    placed.bring({ do: 'place', what: 'sling', where: 'on the hook', number: 'S-4' })
    placed.keys('NO START', 'KH', '1', '1', '9.5033', '1', '')
    expect(of(placed)).toEqual([
      expect.stringMatching(
        /^NOT ACCOUNTED FOR: sling, on the hook, S-4\. Two people see it and sign: taken/,
      ),
    ])
  })

  it('of a verdict says that a lead decides here, not at the machine', () => {
    expect(of(new Walk().toVerdict()).join('\n')).toMatch(/the first is \d+ .*, by the word dispose/)
  })

  it('is nothing of a closed job, and of a job whose gate stands open names no ALL OUT', () => {
    expect(of(smallDone())).toEqual([])
    expect(of(new Walk().toGate().keys(...GATE_LINES)).join('\n')).not.toContain('ALL OUT')
  })
})
