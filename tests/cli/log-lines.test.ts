// Where the log lies, told so that it can be copied from a screen of any width.
import { describe, expect, it } from 'vitest'
import { logLines } from '../../src/cli/finish.ts'

const FILE = '2026-03-14-0620-TC-401-1-counterbore-check-6f94.practice.jsonl'

describe('the path of a log', () => {
  it('stands on one line where the screen holds it', () => {
    expect(logLines('PRACTICE', `jobs/practice/${FILE}`, 100)).toEqual([
      `PRACTICE  log   jobs/practice/${FILE}`,
    ])
  })

  it('is told as file and folder where it would reach the edge', () => {
    const lines = logLines('PRACTICE', `jobs/practice/${FILE}`, 80)
    expect(lines).toEqual([`PRACTICE  log   ${FILE}`, 'PRACTICE  in    jobs/practice'])
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80)
  })

  it('is left whole where there is no folder to tell', () => {
    expect(logLines('PRACTICE', FILE, 20)).toEqual([`PRACTICE  log   ${FILE}`])
  })
})
