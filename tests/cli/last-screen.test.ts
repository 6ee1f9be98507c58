// The last screen of a session: what it came to, what it failed by and what is next stand in sight, however long its sheet is.
import { expect, it } from 'vitest'
import { isOverScreen } from '../../src/cli/finish.ts'
import { endLines } from '../../src/core/practice/grade-end.ts'
import { gradeLines } from '../../src/core/practice/grade-lines.ts'
import { progressLines, progressOf } from '../../src/core/practice/progress.ts'
import { layOut, row } from '../../src/core/sheet/block.ts'
import { practiceRows } from '../../src/core/sheet/practice-block.ts'
import { careful, careless, practiceDefs, seedHiding, session } from '../helpers/trainees.ts'

const heightAt = (lines: readonly string[], width: number) =>
  layOut({ margin: '', rows: lines.map((one) => row(one)) }, { width, record: 'PRACTICE', ascii: false })
    .length

const failed = session(seedHiding('gauge-off', 2), 2, careless).grade

it('tells in few lines what it came to, by what, and what is next', () => {
  const lines = endLines(failed)
  expect(lines[0]).toBe('( NOT PASSED )')
  expect(lines[1]).toMatch(/^Not enough: measuring 0 of \d+, 80 % wanted; /)
  expect(lines[1]).toContain('1 hidden and NOT named')
  expect(lines.at(-1)).toMatch(/^Practise next: /)
})

it('says safety first where it was failed, and has room at 80 by 24 and at 40 by 15, with the command that reads the sheet', () => {
  const every = {
    ...failed,
    safety: 'failed' as const,
    scores: failed.scores.map((one) => ({ ...one, right: 0, of: 88 })),
  }
  expect(endLines(every)[1]).toMatch(/^Not enough: safety failed; /)
  expect(heightAt(endLines(every), 79)).toBeLessThan(12)
  expect(heightAt(endLines(failed), 39)).toBeLessThan(13)
})

it('says nothing is wanting of one that is passed, and nothing of one that is not over', () => {
  const passed = session(seedHiding('gauge-off', 2), 2, careful).grade
  expect(endLines(passed)).toEqual(['( PASSED )', expect.stringMatching(/^Practise next: /)])
  expect(endLines({ ...failed, isOver: false })[0]).toMatch(/^\( NOT OVER \)/)
})

it('stands under a sheet that is longer than the screen, and under no other', () => {
  const sheet = gradeLines(failed).join('\n')
  expect(isOverScreen([sheet], { isTTY: true, rows: 15 })).toBe(true)
  expect(isOverScreen([sheet], { isTTY: true, rows: 200 })).toBe(false)
  expect(isOverScreen([sheet], { isTTY: false, rows: 15 })).toBe(false)
})

it('names the procedure of each session in the progress', () => {
  expect(progressLines(progressOf([failed], failed.who)).join('\n')).toMatch(
    /bore-inspection {2}level 2 {2}seed \d+ {2}safety passed {2}NOT passed/,
  )
})

it('says that a hint costs where nothing is hidden as well', () => {
  const rows = practiceRows(practiceDefs(), { type: 'practice.hinted', step: null, text: 'Look at it.' })
  expect(rows.map(({ text }) => text).join(' ')).toContain('also where nothing is hidden')
})
