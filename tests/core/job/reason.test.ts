// A reason says something of the thing: what is keyed to be past the question is refused wherever one is asked.
import { describe, expect, it } from 'vitest'
import { reason } from '../../../src/core/job/refusals.ts'
import { BORE_LINES, Walk } from '../../helpers/example.ts'

describe('a reason', () => {
  it.each([
    'none',
    'NONE',
    'none given',
    'n/a',
    'N.A.',
    'nothing',
    'ok',
    'ok then',
    'I say so',
    'well then',
    'yes',
    'fine.',
    'no reason',
    'x',
    '-',
    '12',
  ])('is not %j', (typed) => {
    expect(reason(typed, 'The reason')).toMatchObject({ ok: false, error: { code: 'no-words' } })
  })

  it.each(['no wear', 'lock 12 on', 'rag left', 'seized', 'nothing was wrong', 'gauge fine, read by KH'])(
    'is %j',
    (typed) => {
      expect(reason(typed, 'The reason')).toEqual({ ok: true, value: typed })
    },
  )

  it('is asked of what was found, and of what is seen instead', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, '3', '9.7502')
    const found = { do: 'observe', step: 'surface', condition: 'cracked' } as const
    expect(walk.bring({ ...found, note: 'ok' })).toBe('no-words')
    expect(walk.bring({ ...found, note: 'hair line at the valve port' })).toBeNull()
  })

  it('is asked of a doubtful reading that is kept, of a correction and of a step that is not measured', () => {
    const kept = new Walk().toBore().keys('9.60', '3', 'none')
    expect(kept.state.readings['bore.head_end.vertical']).toBeUndefined()
    expect(
      new Walk()
        .toVerdict()
        .bring({ do: 'dispose', step: 'disposition', choice: 'rework', person: 'KH', why: 'none' }),
    ).toBe('no-words')
    expect(new Walk().toVerdict().bring({ do: 'reopen', step: 'strip', why: 'n/a' })).toBe('no-words')
  })
})
