// The table of the load question on a sheet of 80 and of 40 columns, in ASCII, and its sums.
import { describe, expect, it } from 'vitest'
import { kitOf } from '../../../src/core/kit/kit.ts'
import { layOut, plainText, type SheetStyle } from '../../../src/core/sheet/block.ts'
import { briefingBlocks } from '../../../src/core/sheet/briefing.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { becauseRows } from '../../../src/core/sheet/verdict-block.ts'
import { whyLines } from '../../../src/core/talk/tell-about.ts'
import type { Walk } from '../../helpers/example.ts'
import { pocketVerdictOf, rg27, tc401 } from '../../helpers/pocket-job.ts'

const style = (width: number): SheetStyle => ({ width, record: 'EXAMPLE', ascii: true })

function sheet(walk: Walk, width: number): string[] {
  const given = walk.entries.findLast((entry) => entry.type === 'verdict.given')
  if (given === undefined) throw new Error('not judged')
  const blocks = entryBlocks(walk.engine.defs, walk.state, given, style(width))
  return plainText(blocks.flatMap((block) => layOut(block, style(width)))).split('\n')
}

describe('the load question on the sheet', () => {
  const over = rg27()
  const result = pocketVerdictOf(over).result

  it('has a row for each opening, told apart by words, and marks the one recommended', () => {
    const lines = sheet(over, 80)
    const rows = lines.filter((line) => /(clear|over|OUT)$/.test(line))
    expect(rows).toHaveLength(result.table.length)
    const [set] = rows.filter((line) => line.includes('SET'))
    const at = result.table.find(({ opening }) => opening === result.recommended)
    expect(set).toContain((at?.turns ?? 0).toFixed(2))
    expect(set).toContain(`${((at?.capacityShare ?? 0) * 100).toFixed(1)} %`)
    expect(set).toContain(((at?.loadW ?? 0) / 1000).toFixed(1))
    expect(set).toMatch(/clear$/)
    expect(rows.filter((line) => / now /.test(line))).toHaveLength(1)
    for (const line of rows.slice(0, rows.indexOf(set ?? ''))) expect(line).toMatch(/over$/)
  })

  it.each([80, 40])('is no wider than %i columns, all of it in ASCII, every figure on it', (width) => {
    const lines = sheet(over, width)
    for (const line of lines) {
      expect(line.length).toBeLessThanOrEqual(width)
      expect(line).toMatch(/^[\x20-\x7e]*$/)
    }
    const text = lines.map((line) => line.replace(/^EXAMPLE[ 0-9]*\| */, '')).join(' ')
    for (const { loadW } of result.table) expect(text).toContain((loadW / 1000).toFixed(1))
    for (const one of [
      '( REWORK )',
      'throw 1',
      'throw 2',
      'Allowed for',
      'Not allowed for',
      'turns from shut',
    ])
      expect(text.replace(/ +/g, ' ')).toContain(one)
  })

  it('has open and shut in words where there is nothing between', () => {
    const rows = sheet(tc401(), 80).filter((line) => /(clear|over|OUT)$/.test(line))
    expect(rows.map((line) => /(shut|open)/.exec(line)?.[1])).toEqual(['shut', 'open'])
    expect(sheet(tc401(), 80).join('\n')).toContain('( ACCEPT )')
  })

  it('says what holds it, and shows no table where nothing was worked out', () => {
    const apart = sheet(rg27({ load: '260' }), 80).join('\n')
    expect(apart).toContain('HOLD: Computed and measured driver load are apart')
    expect(apart).not.toMatch(/(clear|over|OUT)$/m)
  })

  it('says why in few lines beside the decision', () => {
    const { defs } = over.engine
    const because = (walk: Walk) =>
      becauseRows(defs, pocketVerdictOf(walk))
        .map(({ text }) => text)
        .join('\n')
    expect(because(over)).toContain('Set the pocket to')
    expect(because(rg27({ suction: '1.45', load: '190' }))).toContain('that is enough')
    expect(because(rg27({ load: '260' }))).toContain('apart')
    expect(becauseRows(defs, pocketVerdictOf(over)).length).toBeLessThanOrEqual(3)
  })

  it('shows the sums on why: target, correction, each stage, and the load that follows', () => {
    const lines = whyLines(over.engine.defs, over.state, over.prompt).join('\n')
    for (const part of [
      '225.0 kW x 0.950 = 213.8 kW',
      'Correction',
      'Stage 1: Ps 3.10',
      'Stage 2: Ps',
      'Gulf 1996, p. 83-85',
    ])
      expect(lines).toContain(part)
    const held = rg27({ load: '260' })
    expect(whyLines(held.engine.defs, held.state, held.prompt).join('\n')).toContain(
      'Nothing could be worked out',
    )
  })

  it('is briefed in words before the job', () => {
    const text = JSON.stringify(
      briefingBlocks(over.engine.defs, kitOf(over.engine.defs, '2026-05-18'), style(80)),
    )
    expect(text).toContain('rod load, reversal and discharge temperature of every cylinder')
  })
})
