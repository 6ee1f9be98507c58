// A word by radio that the lead denies is told as none, wherever it is told.
import { expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

const told = (agrees: '1' | '2') => {
  const walk = new Walk().toVerdict().keys('sign on', 'ML')
  walk.keys('1', 'radio', 'KH', 'run it, none given', 'ML')
  expect(walk.state.dispositions).not.toEqual({})
  walk.bring({ do: 'countersign', person: 'KH', agrees: agrees === '1' })
  expect(walk.entries.some(({ type }) => type === 'disposition.countersigned')).toBe(true)
  const verdict = reviewed(walk).exceptions.find(({ kind }) => kind === 'verdict')
  return (verdict?.sentences ?? []).join('\n')
}

it('that was denied is no decision of a lead', () => {
  expect(told('2')).toMatch(/NO DECISION, KH says it was not said by radio; keyed as: accept, by KH by radio/)
  expect(told('2')).not.toContain('A lead’s decision')
})

it('that was said so stands as one', () => {
  expect(told('1')).toMatch(
    /A lead’s decision, no verdict: accept, by KH by radio, heard and keyed by ML, countersigned by KH/,
  )
})
