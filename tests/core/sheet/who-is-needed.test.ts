// Who a job takes is on its first sheet, and who may sign a decision stands beside it before a choice is keyed.
import { describe, expect, it } from 'vitest'
import { neededText } from '../../../src/core/kit/needed.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'
import { SHIPPED, shippedDefs } from '../../helpers/shipped-jobs.ts'
import { walkExample } from '../../helpers/walked.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }
const view = (walk: Walk) => promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
const texts = (rows: readonly { readonly text: string }[]) => rows.map(({ text }) => text)

describe('who is needed', () => {
  it('is said on sheet 1: how many, with which part on which sheet, and on no sheet after it', () => {
    const walk = new Walk().keys('RO', 'TC-401-1')
    expect(view(walk).margin).toBe('1')
    expect(texts(view(walk).rows)).toContain(
      'Needed: two people at least, one of them a lead who does not measure. Sheet 2: a mechanic or lead who did none of it witnesses a hold point. Perhaps sheet 19: a lead who did not measure decides on a verdict.',
    )
    walk.keys('')
    expect(texts(view(walk).rows).join('\n')).not.toContain('Needed')
  })

  it('stands at a hold point that is the first sheet until something of it is given', () => {
    const walk = new Walk(shippedDefs('turn-plug.yaml')).keys('RO', 'TC-401-1')
    expect(walk.prompt.kind).toBe('evidence')
    expect(texts(view(walk).rows)).toContain(neededText(walk.engine.defs))
  })

  it('is short for the longest job too, and one is enough where nobody has to vouch', () => {
    for (const name of SHIPPED) expect(neededText(shippedDefs(name)).length, name).toBeLessThan(700)
    expect(neededText(shippedDefs('running-data.yaml'))).toBe('Needed: one, who does the work and keys it.')
    expect(neededText(shippedDefs('turn-plug.yaml'))).toMatch(/^Needed: two people at least\. /)
  })
})

describe('a decision', () => {
  const atDecision = () => {
    let at: Walk | null = null
    walkExample((walk) => {
      if (walk.prompt.kind === 'decide') at ??= walk.copy()
    })
    if (at === null) throw new Error('no decision')
    return at as Walk
  }
  const named = (walk: Walk) => texts(view(walk).ask).find((text) => /may decide/i.test(text))

  it('names the leads who may sign it, at the choice and at the initials', () => {
    const walk = atDecision()
    expect(named(walk)).toBe('May decide: KH K. Haas or PB P. Bright')
    walk.key('1')
    expect(walk.talk.ask?.kind).toBe('dispose-who')
    expect(named(walk)).toBe('May decide: KH K. Haas or PB P. Bright')
  })

  it('leaves out a lead who measured or keys, and says so where nobody is left', () => {
    const walk = atDecision()
    const by = (who: string) => {
      const twin = walk.copy()
      const readings = Object.entries(walk.state.readings)
      twin.state = {
        ...walk.state,
        readings: Object.fromEntries(
          readings.map(([key, list]) => [key, list.map((r) => ({ ...r, by: who }))]),
        ),
      }
      return twin
    }
    const verdict = Object.values(walk.state.verdicts)[0]
    expect(verdict?.verdict.readings.length).toBeGreaterThan(0)
    expect(named(by('PB'))).toBe('May decide: KH K. Haas')
    const both = by('PB')
    const on = Object.entries(both.state.verdicts).map(([id, one]) => [id, { ...one, on: ['KH'] }])
    both.state = { ...both.state, doer: 'KH', verdicts: Object.fromEntries(on) }
    expect(named(both)).toBe(
      'Nobody of the crew file may decide: it takes a lead who neither measured nor keyed.',
    )
  })
})
