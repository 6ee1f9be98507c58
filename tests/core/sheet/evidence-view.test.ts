// What a hold point shows of evidence that no longer stands.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'

function rows(walk: Walk): string[] {
  const view = promptView(walk.engine.defs, walk.state, walk.talk, {
    width: 79,
    record: 'EXAMPLE',
    ascii: true,
  })
  return view.rows.map((r) => r.text)
}

describe('evidence that fell', () => {
  it('is shown as void, the item asked for now among it, when the hold point is asked again whole', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102')
    walk.bring({ do: 'take-up' })
    walk.keys('RO')
    const shown = rows(walk).join('\n')
    expect(shown).toContain('[void] lock at main driver breaker, E-1, lock at barring motor breaker, E-2')
    expect(shown).toContain('[ ] lock at main driver breaker, E-1')
  })

  it('is not said twice when it was just taken back and is asked for', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102', 'back', 'yes')
    expect(rows(walk).filter((text) => text.includes('E-2'))).toEqual([
      '[ ] lock at barring motor breaker, E-2',
    ])
  })
})
