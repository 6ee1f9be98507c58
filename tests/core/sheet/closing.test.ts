// How a job ends on the sheet: places whose repeats never agreed are named, and no end reads as if all were measured.
import { describe, expect, it } from 'vitest'
import { outcomeOf } from '../../../src/core/job/outcome.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { Walk } from '../../helpers/example.ts'
import { grooves } from '../../helpers/grooves.ts'
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

describe('what stays on the machine', () => {
  const shown = (walk: Walk) => {
    const view = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    return view.ask.map(({ text }) => text)
  }

  it('is said at the last sheet, before the Enter that closes the job, and on the sheet as it closes', () => {
    const walk = new Walk().toVerdict()
    const stays =
      'Left on the machine, by the record: 6 locks, L-101 at E-1, L-102 at E-2, L-103 at V-11, L-104 at V-12, L-105 at V-13, L-106 at V-17; ' +
      'keyed at its hold points: NO START, NO FLOW, BLOCKED BOTH WAYS, METER ANSWERED.'
    walk.keys('1', 'KH', 'Good to run on, none given.')
    expect(walk.prompt.kind).toBe('tell')
    expect(shown(walk)).toEqual(['The last sheet: behind it the job closes.', stays, 'Enter when it is done'])
    walk.key('')
    const rows = entryBlocks(walk.engine.defs, walk.state, walk.last, STYLE).flatMap((block) => block.rows)
    expect(rows.map(({ text }) => text)).toContain(stays)
  })

  it('with a finding that no lead decided says that it is decided first', () => {
    const look = {
      id: 'look',
      kind: 'observe',
      title: 'Surface',
      text: 'Look.',
      conditions: [
        { id: 'sound', label: 'Sound' },
        { id: 'cracked', label: 'A crack', note: true, finding: true },
      ],
    }
    const walk = new Walk(smallDefs([look, tell('brief')]), 'PRACTICE').keys(
      'RO',
      'TC-401-1',
      '2',
      'at the bottom',
    )
    expect(walk.prompt.kind).toBe('tell')
    expect(shown(walk)[0]).toBe('The last sheet: behind it a lead decides on NC-1, then the job closes.')
  })

  it('is not said where another sheet is to come', () => {
    expect(shown(new Walk().keys('RO', 'TC-401-1'))).toEqual(['Enter when it is done'])
  })
})

/** Side clearance judged as found, at most 0.008 in, decided on, and measured once more where `again` is given. */
function judged(found: string, decide: readonly string[], again: readonly string[] = []) {
  const walk = grooves(again.length > 0).keys(found, ...decide, ...again)
  expect(walk.last.type).toBe('job.closed')
  const [block] = entryBlocks(walk.engine.defs, walk.state, walk.last, STYLE)
  return { walk, rows: (block?.rows ?? []).map(({ text }) => text) }
}

const REWORK = ['2', 'KH', 'new grooves']
const REPLACE = ['3', 'KH', 'new rings']

describe('the closing line', () => {
  it('of a job with one verdict that stays is that verdict', () => {
    const { walk, rows } = judged('0.004', [])
    expect(rows[0]).toBe('Job closed with ACCEPT.')
    expect(walk.last).toEqual(expect.not.objectContaining({ as_left: expect.anything() }))
  })

  it('tells the verdict as found, what was done about it and the verdict as left', () => {
    const { walk, rows } = judged('0.012', REPLACE, ['0.004'])
    expect(rows.slice(0, 2)).toEqual([
      'Job closed. Verdict as found REWORK, as left ACCEPT.',
      '  2 worn_judged: as found REWORK; renewed, decided by KH; as left ACCEPT at 5 fresh_judged',
    ])
    expect(walk.last).toMatchObject({ outcome: 'REWORK', as_left: 'ACCEPT' })
    expect(walk.state.asLeft).toBe('ACCEPT')
  })

  it('says so where the part was worked on and not measured again', () => {
    const { walk, rows } = judged('0.012', REWORK)
    expect(rows.slice(0, 2)).toEqual([
      'Job closed. Verdict as found REWORK, as left not measured again.',
      '  2 worn_judged: as found REWORK; to be reworked, decided by KH; not measured again',
    ])
    expect(walk.last).toMatchObject({ as_left: 'not measured again' })
  })

  it('never reads as fit where what was measured again is not', () => {
    const { rows } = judged('0.012', REWORK, ['0.011', '4', 'KH', 'runs on', 'rule MT-2', '4000 h', '91000'])
    expect(rows[0]).toBe(
      'Job closed. Verdict as found REWORK, as left REWORK. Runs on by concession: NC-2 until 95000 h on the counter.',
    )
    expect(rows[2]).toMatch(
      /^ {2}5 fresh_judged: measured again REWORK; runs on by concession of rule MT-2, .*decided by KH; left at REWORK$/,
    )
  })
})
