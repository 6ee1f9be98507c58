// A machine record with one overhaul more: nothing else of it is written another way.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { type NewOverhaul, withOverhaul } from '../../src/authoring/add-overhaul.ts'
import { ROOT } from '../helpers/example.ts'

const added: NewOverhaul = {
  day: '2026-03-14',
  hours: 68_300,
  report: 'job-1',
  renewed: ['rings'],
  figures: [
    {
      of: 'bore diameter',
      station: 'centre',
      axis: 'vertical',
      value: '9.50681 in',
      u: '0.00030 in',
      wears: 'larger',
      from: 'left',
    },
    { of: 'rod diameter', station: 'packing', value: '2.4990 in', from: 'found' },
  ],
}
const asRecord = {
  day: '2026-03-14',
  hours: '68300 h',
  report: 'job-1',
  renewed: ['rings'],
  left: [
    {
      of: 'bore diameter',
      station: 'centre',
      axis: 'vertical',
      value: '9.50681 in',
      u: '0.00030 in',
      wears: 'larger',
    },
    { of: 'rod diameter', station: 'packing', value: '2.4990 in' },
  ],
}

describe('one overhaul more', () => {
  it.each(['tc-401', 'rg-27'])('in the record of %s takes away no line and changes none', (site) => {
    const text = readFileSync(join(ROOT, 'examples', site, 'machine.yaml'), 'utf8')
    const after = withOverhaul(text, added)
    const lines = after.split('\n')
    let at = 0
    for (const line of text.split('\n')) {
      const found = lines.indexOf(line, at)
      expect([line, found >= 0]).toEqual([line, true])
      at = found + 1
    }
    const [was, now] = [parse(text), parse(after)]
    expect(now.overhauls).toEqual([...was.overhauls, asRecord])
    expect({ ...now, overhauls: was.overhauls }).toEqual(was)
  })

  it.each([
    ['where there was none', 'title: x\n', []],
    ['without a line end', 'title: x', []],
    [
      'at the very end',
      'title: x\noverhauls:\n- day: 2019-01-01\n  left: [a]',
      [{ day: '2019-01-01', left: ['a'] }],
    ],
    [
      'before another key',
      'overhauls:\n    - { day: 2019-01-01 } # first\nlimits: []\n',
      [{ day: '2019-01-01' }],
    ],
    [
      'behind a comment',
      'overhauls:\n  - day: 2019-01-01\n    # of the shop\n\nlimits: []\n',
      [{ day: '2019-01-01' }],
    ],
    ['in brackets', 'overhauls: [{ day: 2019-01-01 }]\nlimits: []\n', [{ day: '2019-01-01' }]],
    ['in empty brackets', 'overhauls: []\nlimits: []\n', []],
  ])('stands last %s', (_what, text, before) => {
    const [was, now] = [parse(text), parse(withOverhaul(text, added))]
    expect(now.overhauls).toEqual([...before, asRecord])
    expect({ ...now, overhauls: undefined }).toEqual({ ...was, overhauls: undefined })
  })

  it('is not put into what is no YAML', () => {
    expect(() => withOverhaul('a: [', added)).toThrow()
  })
})
