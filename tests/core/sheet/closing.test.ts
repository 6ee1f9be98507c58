// How a job ends on the sheet: places whose repeats never agreed are named, and no end reads as if all were measured.
import { describe, expect, it } from 'vitest'
import { outcomeOf } from '../../../src/core/job/outcome.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { Walk } from '../../helpers/example.ts'
import { smallDefs, tell } from '../../helpers/small-job.ts'

const STYLE = { width: 79, record: 'PRACTICE' as const, ascii: true }

const READ = {
  id: 'edge_bore',
  kind: 'read',
  title: 'Counterbore',
  quantity: 'length',
  of: 'counterbore',
  with: 'gauge',
  drawing: 'none',
  stations: [
    { id: 'head', label: 'head end', at: -0.2 },
    { id: 'crank', label: 'crank end', at: 1.2 },
  ],
  how: { inside_micrometer: 'Swing.', bore_gauge: 'Rock.' },
  repeats: { at_least: 2, at_most: 3, within: '0.0005 in' },
  plausible: { from: 'counterbore', below: '0.03 in', above: '0.03 in' },
}

function closed(...readings: string[]): { walk: Walk; text: string } {
  const walk = new Walk(smallDefs([tell('brief'), READ]), 'PRACTICE')
  walk.keys('RO', 'TC-401-1', '', '1', ...readings)
  const { state, last } = walk
  expect(last.type).toBe('job.closed')
  const blocks = entryBlocks(walk.engine.defs, state, last, STYLE)
  return { walk, text: blocks.map((block) => plainText(layOut(block, STYLE))).join('\n') }
}

const SETTLED = ['9.7501', '9.7502']
const APART = ['9.7401', '9.7501', '9.7601']

describe('the end of a job', () => {
  it('names each place that came to HOLD, and is HOLD itself where nothing was judged', () => {
    const { walk, text } = closed(...SETTLED, ...APART)
    expect(outcomeOf(walk.engine.defs, walk.state)).toBe('HOLD')
    expect(walk.last).toMatchObject({ outcome: 'HOLD' })
    expect(text.replace(/\n.*?\| +/g, ' ')).toContain(
      'HOLD: 2.2 Counterbore, crank end: 3 readings never agreed within 0.0005 in',
    )
    expect(text).not.toContain('head end')
  })

  it('says nothing of places where all agreed', () => {
    const { walk, text } = closed(...SETTLED, ...SETTLED)
    expect(walk.last).toMatchObject({ outcome: 'NONE' })
    expect(text).not.toContain('HOLD')
  })
})
