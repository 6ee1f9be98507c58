// Conditions in words that a mechanic can sign: nothing of a rule's own text is ever shown.
import { describe, expect, it } from 'vitest'
import { hazardName, stepById } from '../../../src/core/job/definitions.ts'
import { ruleWords } from '../../../src/core/job/rule-words.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'
import { type Raw, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

const LOOK = {
  id: 'look',
  kind: 'observe',
  title: 'The rod',
  conditions: [
    { id: 'sound', label: 'Sound' },
    { id: 'scored', label: 'Scored' },
    { id: 'bent', label: 'Bent' },
  ],
}
const SEEN = { id: 'wiped', kind: 'confirm', title: 'Wiped', seen: 'Dry.' }
const STEPS: Raw[] = [LOOK, SEEN, readOne('size', { title: 'Size' })]

const said = (rule: string, more: Raw = {}) => {
  const defs = smallDefs([...STEPS, tell('then', { when: { rule, unknown: 'hold' } })], [], {}, more)
  return ruleWords(defs, stepById(defs, 'then'))
}

describe('a condition in words', () => {
  it.each([
    ['look == "scored"', 'step 1, The rod, finds "Scored"'],
    ['look != "sound"', 'step 1, The rod, finds anything but "Sound"'],
    ['!(look == "sound")', 'step 1, The rod, finds anything but "Sound"'],
    ['look == "scored" || look == "bent"', 'step 1, The rod, finds "Scored" or "Bent"'],
    ['look != "scored" && look != "bent"', 'step 1, The rod, finds anything but "Scored" or "Bent"'],
    ['look in ["scored", "bent"]', 'step 1, The rod, finds "Scored" or "Bent"'],
    ['wiped == "seen"', 'step 2, Wiped, is seen to be so'],
    ['wiped != "seen"', 'step 2, Wiped, is not seen to be so'],
    ['machine.acting == "double"', 'the machine record gives its acting as double'],
    [
      'machine.running_surface != "solid_bore"',
      'the machine record gives its running surface as anything but solid bore',
    ],
    [
      'wiped == "seen" && look == "bent"',
      'step 2, Wiped, is seen to be so; and step 1, The rod, finds "Bent"',
    ],
    [
      '!(wiped == "seen" && look == "bent")',
      'step 2, Wiped, is not seen to be so; or step 1, The rod, finds anything but "Bent"',
    ],
    [
      'look == "bent" || (wiped == "seen" && machine.acting == "single")',
      'step 1, The rod, finds "Bent"; or (step 2, Wiped, is seen to be so; and the machine record gives its acting as single)',
    ],
    ['size > length("9.5 in")', 'step 3, Size, asks for it'],
    ['size > length("9.5 in") || size < length("9.4 in")', 'step 3, Size, asks for it'],
    ['size > machine.nominal', 'step 3, Size, and the machine record ask for it'],
  ])('%s', (rule, words) => {
    expect(said(rule)).toBe(words)
  })

  it('of a value names the steps it rests on', () => {
    const value = { id: 'over', title: 'Oversize', kind: 'length', is: 'size - machine.nominal' }
    expect(said('over > length("0 in")', { values: [value] })).toBe('step 3, Size, asks for it')
  })

  it('and hazards hold no program text in the whole piston pull', () => {
    const defs = shippedDefs('piston-pull.yaml')
    const words = defs.steps.flatMap((placed) =>
      [...placed.inside, placed].map((one) => ruleWords(defs, one)),
    )
    const hazards = defs.steps.flatMap(({ step }) => [
      ...(step.exposes ?? []),
      ...('lets_in' in step ? (step.lets_in ?? []) : []),
      ...(step.kind === 'gate' ? step.holds : []),
    ])
    for (const id of hazards) expect(defs.hazards.map((hazard) => hazard.id)).toContain(id)
    expect(hazardName(defs, 'lowered')).toBe('piston, rod or head coming down on the way back in')
    expect(words.filter((one) => one !== '').length).toBeGreaterThan(50)
    for (const one of words) expect(one).not.toMatch(/[=!<>&|]|\b[a-z]+_[a-z]+|machine\./)
  })
})
