// What hangs on what: a verdict on every reading it was made from, a rule on nothing that does not stand any more.
import { describe, expect, it } from 'vitest'
import type { PlacedStep } from '../../../src/core/job/definitions.ts'
import { hangsOn, valuesForRules } from '../../../src/core/job/values.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'

const JUDGE = 'bore_judged'

describe('a verdict', () => {
  it('hangs on every reading it was made from, one by one, so that none is changed behind its back', () => {
    const walk = new Walk().toVerdict()
    const { defs } = walk.engine
    const seqs = walk.state.verdicts[JUDGE]?.verdict.readings ?? []
    const read = Object.values(walk.state.readings).flat()
    const steps = new Set(read.filter((r) => seqs.includes(r.seq)).map((r) => r.step))
    expect([...steps].sort()).toEqual(
      [
        ...['part_temp_before', 'gauge_temp_before', 'set_before', 'bore', 'strip_diameter'],
        ...['counterbore', 'part_temp_after', 'gauge_temp_after', 'set_after'],
      ].sort(),
    )
    for (const step of steps)
      expect([step, hangsOn(defs, step)]).toEqual([step, expect.arrayContaining([JUDGE])])
  })

  it.each(['part_temp_before', 'gauge_temp_after', 'set_after', 'counterbore'])(
    'falls when %s is corrected, and its disposition with it',
    (step) => {
      const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given')
      expect(walk.state.dispositions.disposition?.void).toBe(false)
      const old = Object.values(walk.state.readings)
        .flat()
        .find((r) => r.step === step)
      walk.bring({ do: 'correct', of: old?.seq ?? -1, typed: old?.typed ?? '', why: 'keyed for another' })
      const corrected = walk.entries.find((entry) => entry.type === 'reading.corrected')
      expect(corrected).toMatchObject({ voids: expect.arrayContaining([JUDGE, 'disposition']) })
      expect(walk.state.dispositions.disposition?.void).toBe(true)
    },
  )
})

describe('a disposition', () => {
  it('hangs on its verdict, also where no condition names it', () => {
    const when = /^ {4}when: \{ rule: 'bore_judged != "ACCEPT"', unknown: do \}\n/m
    const defs = exampleDefs({ procedure: (text) => text.replace(when, '') })
    expect(defs.steps.find((step) => step.id === 'disposition')?.rule).toBeNull()
    expect(hangsOn(defs, JUDGE)).toContain('disposition')
    expect(hangsOn(defs, 'bore')).toContain('disposition')
  })
})

describe('a rule', () => {
  const placed = (walk: Walk, id: string) =>
    walk.engine.defs.steps.find((step) => step.id === id) as PlacedStep
  const known = (walk: Walk, applies = true) =>
    valuesForRules(walk.engine.defs, walk.state, placed(walk, 'disposition'), () => applies).has(JUDGE)

  it('is told by a verdict that stands, and by none that is void or was skipped', () => {
    const walk = new Walk(exampleDefs()).toVerdict()
    expect(known(walk)).toBe(true)
    expect(known(walk, false)).toBe(false)
    const verdict = walk.state.verdicts[JUDGE]
    if (verdict === undefined) throw new Error('nothing was judged')
    walk.state = { ...walk.state, verdicts: { [JUDGE]: { ...verdict, void: true } } }
    expect(known(walk)).toBe(false)
  })
})
