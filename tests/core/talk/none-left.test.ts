// Where no instrument of a list may be used, whoever asks what to do is told what the screen says, and no number is asked for.
import { expect, it } from 'vitest'
import { exampleDefs, Walk } from '../../helpers/example.ts'

const NONE = exampleDefs({
  instruments: (text) => text.replace(/(due: )\d{4}-\d{2}-\d{2}/g, '$12025-01-01'),
})
const asked = (walk: Walk, line: string) => {
  const before = walk.said.length
  walk.keys(line)
  return walk.said.slice(before).join(' ')
}

it.each(['no meter left what do i do now', 'what now?', 'none of these is fit, what then?', 'nothing left?'])(
  '%j',
  (line) => {
    const walk = new Walk(NONE)
      .toGate()
      .keys('L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106', 'NO START', 'NO FLOW', 'BLOCKED BOTH WAYS')
    expect(walk.prompt.kind).toBe('pick')
    expect(asked(walk, line)).toMatch(/^None of these may be used.*open the job anew\./)
  },
)

it('is not told where one may be used', () => {
  const walk = new Walk()
    .toGate()
    .keys('L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106', 'NO START', 'NO FLOW', 'BLOCKED BOTH WAYS')
  expect(asked(walk, 'what now?')).not.toMatch(/None of these may be used/)
})
