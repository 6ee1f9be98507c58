// What is asked and told of a sheet that is keyed in: under the number and in the words that stand on the paper.
import { describe, expect, it } from 'vitest'
import type { Row, SheetStyle } from '../../../src/core/sheet/block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { takenUpRows } from '../../../src/core/sheet/taken-up-rows.ts'
import type { Walk } from '../../helpers/example.ts'
import {
  END_LINES,
  FRONT_LINES,
  permitLines,
  SIGN_LINES,
  sheetJob,
  toJudge,
} from '../../helpers/filled-sheet.ts'

const STYLE: SheetStyle = { width: 79, record: 'EXAMPLE', ascii: false }
const texts = (rows: readonly Row[]) => rows.map(({ text }) => text).join('\n')
const asked = (walk: Walk) => texts(promptView(defs, walk.state, walk.talk, STYLE).ask)
const { defs } = sheetJob().engine
const atGate = (lines: number) =>
  sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO', ...permitLines().slice(0, lines))

describe('a line of a hold point', () => {
  it('is asked by its number on the paper, in the words there, with its unit and how it is keyed', () => {
    const walk = atGate(10)
    const { box } = walk.prompt as Extract<typeof walk.prompt, { kind: 'sheet' }>
    const evidence = box.placed?.step.kind === 'gate' ? box.placed.step.evidence : []
    const number = evidence.findIndex(({ id }) => id === box.item?.evidence.id) + 1
    expect(number).toBeGreaterThan(1)
    expect(asked(walk)).toMatch(new RegExp(`^${number}  .+\\nLine ${number}, oxygen .*, %vol\\n`))
    expect(asked(walk)).toMatch(/06:52 RO 20\.9 G-7/)
    expect(asked(walk.keys('06:52 RO'))).toMatch(/^06:52 RO, and behind it\?\n/)
  })
})

describe('a sheet that is taken up', () => {
  const whole = sheetJob().keys(...toJudge(), ...END_LINES, ...SIGN_LINES.slice(0, 4))

  it('says what is really asked next, and no work at a machine', () => {
    const end = texts(takenUpRows(defs, whole.state))
    expect(end).toMatch(/Next: .*; then a lead who keyed none of it compares it with the paper, and signs\./)
    expect(end).not.toMatch(/hold point|min of work|Void/)
    expect(texts(takenUpRows(defs, atGate(10).state))).toMatch(/then 2 .*: oxygen where people breathe\./)
  })

  it('names the box that is put right with its time and initials', () => {
    const walk = atGate(17).keys('06:53 RO 07:22', '-', '-', '06:53 RO', '-', '06:53 RO', '71.2')
    const list = walk.keys('correct').said.join('\n')
    expect(list).toMatch(/: 2026-03-14 06:53 RO 71\.2/)
    walk.keys('1')
    expect(asked(walk)).toMatch(/^Stands: .*: 2026-03-14 06:53 RO 71\.2/)
  })
})

describe('a decision of a verdict from paper', () => {
  const decided = (permit: readonly string[]) =>
    sheetJob().keys('RO', ...toJudge({ permit: [...permit] }).slice(1), ...END_LINES)

  it('tells the lead first where the sheet would have held the job', () => {
    const lacks = permitLines().map((line) => (line === '06:33 RO L-103' ? '-' : line))
    const walk = decided(lacks)
    expect(walk.prompt.kind).toBe('decide')
    expect(asked(walk)).toMatch(/On paper 2 Hold point .* WOULD HAVE HELD: .*blank\./)
  })

  it('says nothing of it where nothing would have', () => {
    const walk = decided(permitLines())
    expect(walk.prompt.kind).toBe('decide')
    expect(asked(walk)).not.toContain('WOULD HAVE HELD')
  })
})
