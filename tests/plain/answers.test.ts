// An answers file: what is an answer, what sets the clock, and what is refused with its line.
import { describe, expect, it } from 'vitest'
import { readStamp } from '../../src/core/lib/instant.ts'
import { readAnswers, startOf } from '../../src/plain/answers.ts'

const read = (text: string) => {
  const result = readAnswers(text, 'answers.txt')
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

describe('an answers file', () => {
  it('is one answer a line, without comments and blank lines, trimmed, with any line ends', () => {
    expect(read('RO\r\n\r\n# not this\n  9.5033  \nno start')).toEqual([
      { kind: 'answer', text: 'RO', line: 1 },
      { kind: 'answer', text: '9.5033', line: 4 },
      { kind: 'answer', text: 'no start', line: 5 },
    ])
  })

  it('sets clock, step and wait', () => {
    expect(read('clock 2026-03-14 06:20+01:00\nstep 40 s\nwait 1.5 min\nwait 1 h')).toEqual([
      { kind: 'clock', at: readStamp('2026-03-14 06:20+01:00') },
      { kind: 'step', ms: 40_000 },
      { kind: 'wait', ms: 90_000 },
      { kind: 'wait', ms: 3_600_000 },
    ])
  })

  it.each([
    'clock tomorrow',
    'clock 2026-02-30 06:20',
    'step 40',
    'step 0 s',
    'step -1 s',
    'wait 1e9 s',
    'wait forever',
  ])('refuses %s with its line', (line) => {
    const result = readAnswers(`RO\n${line}\n`, 'answers.txt')
    expect(result).toMatchObject({ ok: false, error: { code: 'answers' } })
    if (!result.ok) expect(result.error.say).toContain(`answers.txt:2: "${line}" is not understood`)
  })

  it('takes a word that only begins like one of the three as an answer', () => {
    expect(read('clockwise').map((l) => l.kind)).toEqual(['answer'])
    expect(read('wait').map((l) => l.kind)).toEqual(['answer'])
  })

  it('starts at a clock that comes before the first answer, and at none else', () => {
    expect(startOf(read('step 1 s\nclock 2026-03-14 06:20\nRO'))).toEqual(readStamp('2026-03-14 06:20'))
    expect(startOf(read('RO\nclock 2026-03-14 06:20'))).toBe(null)
    expect(startOf([])).toBe(null)
  })
})
