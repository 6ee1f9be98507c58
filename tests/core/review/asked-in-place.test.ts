// Another lock hangs where one was keyed before: what a lead asks of the valve, of either number and of the day is told with both. And what
// was kept though it was doubted, late or off its standard is in the order of the day.
import { describe, expect, it } from 'vitest'
import { questionBlocks } from '../../../src/core/review/asked.ts'
import { answered } from '../../helpers/answered.ts'
import { AFTER_LINES, BORE_LINES, GAS_LINES, LOCK_LINES, Walk, WORDS_AGAIN } from '../../helpers/example.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { keptOff, stopReleased } from '../../helpers/stopped.ts'

const WHY = 'the key of L-103 was lost'
/** A lock told to be off by its number alone, one figure after it, STOP and its release, and another lock at the same valve. */
const day = keptOff('the master was cold')
day.keys(...BORE_LINES.slice(0, 4))
day.bring({ do: 'note', text: 'L-103 is off, saw it from the bench' })
day.keys('9.5068')
stopReleased(day, 'smell near the bench', 'paint thinner. L-103 is on, I tried it')
day.keys(
  'ALL OUT',
  'L-101',
  'L-102',
  'L-113',
  '3',
  WHY,
  ...LOCK_LINES.slice(3),
  ...WORDS_AGAIN,
  ...GAS_LINES,
  'ML',
)
day.keys(...BORE_LINES.slice(5), ...AFTER_LINES.slice(0, -1), '9.5006')

const first = day.entries.find((e) => e.type === 'evidence.given' && e.shown === 'L-103')?.seq
const other = day.entries.find((e) => e.type === 'evidence.given' && e.was === 'L-103')?.seq

describe('the walk that is asked about', () => {
  it('has the other lock with its reason, and a set-check kept off its standard', () => {
    expect(other).toBeDefined()
    expect(day.entries.some((e) => e.type === 'doubt.settled' && e.choice === 'kept')).toBe(true)
    expect(day.state.verdicts).not.toEqual({})
  })
})

describe('a lock in the place of another', () => {
  it.each(['is that padlock still hanging on V-11', 'which lock is on v11', 'who hung the lock at V-11'])(
    '%s: both numbers, neither told off',
    (asked) => {
      const text = answered(day, asked)
      expect(text).toMatch(
        new RegExp(
          `^What the log has of V-?11\\nL-103, lock at suction block valve, V-11, at hold point 2: keyed on by RO \\(entry ${first}\\)\\. No hold point was keyed with it taken off, and ANOTHER was keyed in its place: [^\\n]*\\nL-113 was keyed in its place RO \\d\\d:\\d\\d \\(entry ${other}\\), because: ${WHY}\\.\\nL-113, [^\\n]*STILL ON\\.`,
        ),
      )
      expect(text).not.toMatch(/no entry has it/)
      expect(text).not.toMatch(/L-101/)
    },
  )

  it.each(['is L-103 still on', 'was l-103 on'])(
    '%s: the one that was keyed in its place stands under it',
    (asked) => {
      const text = answered(day, asked)
      expect(text).toMatch(
        new RegExp(`L-113 was keyed in its place [^\\n]*\\(entry ${other}\\), because: ${WHY}\\.`),
      )
      expect(text).not.toMatch(/L-113, lock at/)
    },
  )

  it.each(['where is l103', 'has anybody touched L103 meanwhile'])('%s: found without its dash', (asked) => {
    expect(answered(day, asked)).toMatch(/^What the log has of L103\nL-103, lock at/)
  })

  it('a valve that no lock was keyed at is in no entry', () => {
    expect(answered(day, 'is the lock still on V-99')).toMatch(
      /^The log does not tell of V-99: no entry has it/,
    )
  })

  it('in the order of the day it stands with the one before it and why', () => {
    expect(answered(day, 'in what order did it happen')).toMatch(
      new RegExp(`V-11  L-113; L-103 before, not so now: ${WHY} \\(entry ${other}\\)`),
    )
  })
})

describe('a lock told to be off by its number alone', () => {
  it('is told with the work that went on, and what was keyed at that valve since', () => {
    const text = answered(day, 'who said the lock was off')
    expect(text).toMatch(
      /^1 entry told that a lock was off[^\n]*\n[^\n]*L-103 is off, saw it[^\n]*\nWORK WENT ON after it, before anybody was called out: 1 answer\.\n[^\n]*9\.5068[^\n]*\n[^\n]*STOP\.[\s\S]*released by KH[\s\S]*ALL OUT[\s\S]*V-11 {2}L-113; L-103 before/,
    )
    expect(text).not.toMatch(/L-101/)
    expect(text).toMatch(/\nNo entry has L-103 taken off \(entry \d+\): look where it is\./)
  })
})

describe('what was kept in doubt is of the course of the day', () => {
  it.each([
    /6 Set-check before: 9\.5006[^\n]*doubted, kept: the master was cold/,
    /17 Set-check after with M-3: 9\.5006[^\n]*OVER the standard/,
  ])('%s', (line) => {
    expect(answered(day, 'in what order did it happen')).toMatch(line)
  })

  it('a reading that nobody doubted is not', () => {
    expect(answered(day, 'in what order did it happen')).not.toMatch(/9\.5033|9\.5068/)
  })
})

describe('gas that was tested again', () => {
  it.each(['was the gas done again after', 'was the air good again afterwards', 'when was the gas tested'])(
    '%s: every figure, and what the hold point fell by between',
    (asked) => {
      expect(answered(day, asked)).toMatch(
        /^Gas tests as they were keyed[^\n]*\noxygen where people breathe: 2 figures, all 20\.9 %vol \(entry \d+\)\.\n(?:[^\n]*: 2 figures, [^\n]*\n){5}2 Hold point[^\n]*\n(?:[^\n]*G-7[^\n]*\n){6}[^\n]*RO: STOP\.[^\n]*\n(?:[^\n]*G-7[^\n]*\n){6}None of them/,
      )
    },
  )

  it('of one gas that is named only its own', () => {
    const text = answered(day, 'when was the oxygen tested')
    expect(text.match(/oxygen /g)).toHaveLength(6)
    expect(text).not.toMatch(/H2S/)
  })
})

describe('what hangs by the record', () => {
  it('has the other beside the one that it was keyed in place of, and beside no other', () => {
    const { sentences } = only(reviewed(day), 'hung')
    expect(sentences.filter((text) => /keyed in its place/.test(text))).toEqual([
      expect.stringMatching(
        /^L-103, [^;]*; L-113 was keyed in its place \d\d:\d\d, so look where L-103 is\.$/,
      ),
    ])
  })
})

describe('the row of it in the list', () => {
  it('has both numbers before a narrow screen cuts it', () => {
    const [row] = reviewed(day).exceptions.filter(({ entries: [seq] }) => seq === other)
    expect(row?.what).toMatch(
      /^L-113 in place of L-103, lock at suction block valve, V-11, RO \d\d:\d\d; 2 Hold point/,
    )
  })
})

describe('a number alone that stands in no item', () => {
  const fell = new Walk().toGate().keys('L-101', 'L-102')
  it.each(['l-101', 'L101', 'E-1'])('%s: what the log has of it', (keyed) => {
    const off = { ...reviewed(fell), exceptions: [] }
    const record = { review: off, defs: fell.engine.defs, entries: fell.entries, state: fell.state }
    const [heading] = questionBlocks(record, keyed) ?? []
    expect(heading?.rows[0]?.text).toBe(`What the log has of ${keyed.toUpperCase()}`)
    expect(questionBlocks(record, 'X-77')).toBeNull()
  })
})

describe('an entry of another day than the first', () => {
  it('has its day before its time, and who after both', () => {
    const late = new Walk()
      .toGate()
      .keys('L-101')
      .wait(24 * 60)
      .keys('L-102')
    expect(answered(late, 'which locks are on E-2')).toMatch(/\n2026-03-15 06:\d\d RO: \[x\] lock at barring/)
  })
})
