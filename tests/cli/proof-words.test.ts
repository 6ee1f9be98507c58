// While the hold points of a REAL job are proved the screen says which, every few seconds and no more.
import { expect, it } from 'vitest'
import { toldProof } from '../../src/cli/proof-words.ts'
import { gatesOf } from '../../src/core/job/gate.ts'
import { prove } from '../../src/core/proof/prove.ts'
import { gate, NO_START, smallDefs, tell } from '../helpers/small-job.ts'

const TWO = smallDefs([
  gate('isolated', ['start'], [NO_START]),
  gate('air', ['bad_air'], [NO_START]),
  tell('work', { exposes: ['start', 'bad_air'] }),
])

function told(msEach: number): string[] {
  const lines: string[] = []
  let now = 0
  const engine = toldProof(
    TWO,
    (line) => lines.push(line),
    () => {
      now += msEach
      return now
    },
  )
  expect(prove(TWO, { engine }).is).toBe('proved')
  return lines
}

it('tells what is proved at once, without the tag that is to be read off the plate', () => {
  const lines = told(0)
  expect(lines).toHaveLength(2)
  expect(lines[0]).toContain('the 2 hold points of this job, Small job')
  expect(lines.join(' ')).not.toContain(TWO.machine.machine)
})

it('tells each hold point as it is begun where that takes its time', () => {
  expect(gatesOf(TWO)).toHaveLength(2)
  expect(told(4000).slice(2, 5)).toEqual([
    '  hold point 1 of 2: isolated',
    '  hold point 2 of 2: air',
    '  hold points done; now the work between them',
  ])
})
