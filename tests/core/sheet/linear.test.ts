// Rows as people hear them: no column, no box, one line to each, and the word of the record before what is on record.
import { describe, expect, it } from 'vitest'
import { row, type SheetStyle } from '../../../src/core/sheet/block.ts'
import { blockText, linearText } from '../../../src/core/sheet/linear.ts'

const style: SheetStyle = { width: 79, record: 'PRACTICE', ascii: true, linear: true }

describe('a row that is heard', () => {
  it.each([
    ['[x] lock at main driver breaker, E-1  L-101', 'Done: lock at main driver breaker, E-1: L-101'],
    ['[FAILED] oxygen inside the opening  17 %vol', 'FAILED: oxygen inside the opening: 17 %vol'],
    ['[ ] then 16 more', 'Then 16 more.'],
    ['[void] witness', 'Void: witness'],
    ['1  measure again', '1: measure again'],
    ['RO   R. Oduya, mechanic', 'RO: R. Oduya, mechanic'],
    [
      'taper           0.0041  limit  0.0055  75 %   governs   MONITOR',
      'taper: 0.0041, limit 0.0055, 75 %, governs, MONITOR',
    ],
    ['  9.5033 in   241.384 mm   M-3', '9.5033 in, 241.384 mm, M-3'],
    ['release  a lead who can answer for it', 'release: a lead who can answer for it'],
    ['The maker\u2019s manual comes first.', "The maker's manual comes first."],
  ])('%j is %j', (text, heard) => {
    expect(linearText(row(text), style)).toBe(heard)
  })

  it('that is a stamp is the verdict it stands for', () => {
    expect(linearText(row('( HOLD )', 'stamp'), style)).toBe('Verdict: HOLD')
  })
})

describe('a block that is heard', () => {
  it('has the word of the record before each line, and one row set in ends the line above it', () => {
    const rows = [row('out of round   0.0033'), row('     the source of it', 'faint'), row('largest  9.5068')]
    expect(blockText({ margin: '7', right: 'by RO 06:20', rows }, style)).toBe(
      'PRACTICE. out of round: 0.0033; the source of it\nPRACTICE. largest: 9.5068',
    )
    const several = [row('Why:'), row('  first'), row('  second')]
    expect(blockText({ margin: '', rows: several }, style).split('\n')).toHaveLength(3)
  })

  it('says the word once where a line begins with it', () => {
    expect(blockText({ margin: '', rows: [row('PRACTICE: this is no record')] }, style)).toBe(
      'PRACTICE: this is no record',
    )
  })
})
