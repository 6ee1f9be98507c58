// The check mark at the foot of a sheet is held against that of the files at once, and never put right by itself; leave is heard at
// the questions of a sheet.
import { describe, expect, it } from 'vitest'
import { checkMark, rowOf } from '../../../src/core/job/paper.ts'
import { FRONT } from '../../../src/core/job/paper-rows.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { fileCopies, type Walk } from '../../helpers/example.ts'
import { FRONT_LINES, MARKS, sheetJob } from '../../helpers/filled-sheet.ts'

const foot = ({ state }: Walk) => (state.paper === null ? undefined : rowOf(state.paper, null, FRONT.marks))
const MARK = checkMark(fileCopies())
const OTHER = `bore_inspection, edition 8, ${MARK.slice(0, -1)}${MARK.endsWith('0') ? '1' : '0'}`

describe('a check mark that is another', () => {
  it('is asked about before it is taken, without the one that would fit', () => {
    const walk = sheetJob().keys('RO', OTHER)
    expect(foot(walk)).toBeUndefined()
    expect(walk.talk.ask).toMatchObject({ kind: 'sheet-sure', typed: OTHER })
    const view = promptView(walk.engine.defs, walk.state, walk.talk, {
      width: 79,
      record: 'EXAMPLE',
      ascii: true,
    })
    const shown = JSON.stringify(view)
    expect(shown).toContain('1  keyed wrong: key it again')
    expect(shown).toContain('2  it stands so on the paper')
    expect(shown).not.toContain(MARK)
  })

  it('keyed wrong is keyed again, by hand', () => {
    const walk = sheetJob().keys('RO', OTHER, '1')
    expect(foot(walk)).toBeUndefined()
    expect(foot(walk.keys(MARKS))?.text).toBe(MARKS)
  })

  it('that stands so is recorded as it stands', () => {
    const walk = sheetJob().keys('RO', OTHER, '3')
    expect(foot(walk)).toBeUndefined()
    expect(foot(walk.keys('2'))?.text).toBe(OTHER)
  })

  it.each([MARKS, MARK, MARK.toUpperCase(), `check mark: ${MARK}`, '-'])('is none: %s', (text) => {
    const walk = sheetJob().keys('RO', text)
    expect(walk.talk.ask).toBeNull()
    expect(foot(walk)?.text).toBe(text === '-' ? null : text)
  })
})

describe('leave', () => {
  it.each([
    ['which was keyed wrong', ['correct']],
    [
      'whether a time is what the sheet says',
      ['-', '-', '-', '06:40 RO TC-401-1', 'RO ML', 'G-7', 'T-2', 'M-3', '06:31 RO'],
    ],
    ['the check mark', []],
  ] as const)('is the word it is everywhere at the question %s', (where, lines) => {
    const walk = sheetJob().keys(
      'RO',
      ...(where === 'the check mark' ? [OTHER] : FRONT_LINES.slice(0, where.startsWith('which') ? 3 : 2)),
      ...lines,
    )
    expect(walk.talk.ask?.kind).toMatch(/^sheet-/)
    walk.keys('leave')
    expect(walk.last.type).toBe('job.left')
    expect(walk.state.left).toBe(true)
  })
})
