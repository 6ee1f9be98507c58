// The choice of jobs on screens of every height: each option, and how to begin, stands on it or is turned over to.
import { describe, expect, it } from 'vitest'
import { choiceSheet } from '../../../src/core/sheet/choice-sheet.ts'
import type { Choice } from '../../../src/core/talk/choice.ts'

const START: Choice = {
  title: 'Barover',
  lines: [
    'Takes you through work on the piston end of a gas compressor, one thing at a time, and keeps the record of it.',
    'It supports trained people: the maker’s manual, site permit and local code come first.',
    'New here? 2, then RO, the PIN 4071, and TC-401-1, the tag on the plate. help works at every prompt.',
  ],
  options: [
    'Take up a job that was left (none yet)',
    'Start the example job: a bore inspection on an invented machine',
    'Practise the same job: a trainee may sign on',
    'See a finished job (none yet)',
    'Learn it on a machine that hides a fault, every answer marked; other jobs: barover practice --help',
  ],
  zero: 'Leave',
  help: [],
}

/** Every side, turned over with Enter until the first comes again. */
function sidesOf(choice: Choice, columns: number, rows: number): string[] {
  const sides: string[] = []
  for (let from = 0; sides.length < 30; ) {
    const { lines, next } = choiceSheet({ choice, columns, rows, ascii: true, told: [], from })
    expect(lines.length).toBeLessThanOrEqual(Math.max(1, rows - 2))
    sides.push(lines.map(({ text }) => text).join('\n'))
    if (next === null || next === 0) return sides
    from = next
  }
  throw new Error('it never comes back to the first')
}

const flow = (text: string) => text.replace(/\s+\|\s+/g, ' ').replace(/\s+/g, ' ')

describe('the choice of jobs', () => {
  it('at 40 columns and 15 rows has all that is chosen from at once, and then how to begin', () => {
    const [first = '', ...more] = sidesOf(START, 40, 15)
    for (const n of ['1', '2', '3', '4', '5']) expect(first).toMatch(new RegExp(`^ +${n} \\|`, 'm'))
    expect(first).toContain('0 | Leave   Tab: make safe')
    expect(first).toContain('Enter: how to begin.')
    expect(flow(more.join('\n'))).toContain('2, then RO, the PIN 4071, and TC-401-1')
    expect(more.at(-1)).toContain('Enter: the choice.')
  })

  it.each([40, 60, 80])(
    'at %i columns and any height loses no option and no word of how to begin',
    (columns) => {
      for (let rows = 8; rows <= 30; rows++) {
        const told = flow(sidesOf(START, columns, rows).join('\n'))
        for (const text of ['Take up', 'Start the', 'Practise', 'See a', 'Learn it'])
          expect(told).toContain(text)
        expect(told).toContain('the PIN 4071')
        expect(told).toMatch(/make safe/i)
      }
    },
  )

  it('has all of it on one side where there is room, as ever', () => {
    expect(sidesOf(START, 80, 24)).toHaveLength(1)
  })

  it('of a list without an introduction has nothing after the last', () => {
    const list = { ...START, lines: [], options: Array.from({ length: 12 }, (_, i) => `job ${i + 1}`) }
    const sides = sidesOf(list, 40, 10)
    expect(sides.at(-1)).toContain('Enter: the first.')
    expect(flow(sides.join('\n'))).toContain('job 12')
  })
})
