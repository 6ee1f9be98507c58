// The list of what can be corrected: what is chosen from stands on the screen with the question, on any screen that takes it.
import { describe, expect, it } from 'vitest'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { LISTED, withListed } from '../../../src/core/talk/correct.ts'
import { createTeller } from '../../../src/plain/tell.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'
import { memorySession } from '../../helpers/fake-terminal.ts'

const judged = () => new Walk().toVerdict().keys('correct')
const items = (walk: Walk) => (walk.talk.ask?.kind === 'correct-which' ? walk.talk.ask.items : [])

function screen(walk: Walk, columns: number, rows: number) {
  const style = { width: Math.max(30, columns - 1), record: 'EXAMPLE' as const, ascii: true }
  const { defs } = walk.engine
  const view = promptView(defs, walk.state, walk.talk, style)
  const live = fitLive({ view, foot: foot(defs, walk.state, walk.now), style, rows, columns, notice: null })
  return {
    live,
    text: live.above.map((line) => line.text),
    height: live.above.length + 1 + live.below.length,
  }
}

/** Numbers of the list that are on the screen. */
const numbers = (text: readonly string[]) =>
  text.flatMap((line) => /^\s*(\d+) {2}(?:sheet )?\d+(?:\.\d+)?: /.exec(line)?.[1] ?? [])

it('at a doubt says why no reading is in the list, and how one gets there', () => {
  const walk = new Walk().toBore().keys('9.5033', '9.6', 'correct')
  expect(items(walk).some(({ kind }) => kind === 'reading')).toBe(false)
  expect(walk.said.at(-1)).toBe(
    'No reading is in this list while one waits: 1 drops that one, then correct mends any.',
  )
})

describe('the list of what can be corrected', () => {
  it('has the newest reading first, and each of them once', () => {
    const walk = judged()
    const seqs = items(walk).flatMap((item) => (item.kind === 'reading' ? [item.seq] : []))
    expect(seqs.length).toBeGreaterThan(15)
    expect([...seqs].sort((a, b) => b - a)).toEqual(seqs)
  })

  it.each([
    [80, 24],
    [40, 15],
  ])(
    'stands on %i by %i with the question under it, page after page, until each was there',
    (columns, rows) => {
      const walk = judged()
      const seen = new Set<string>()
      for (let pages = 0; seen.size < items(walk).length; pages++) {
        expect(pages).toBeLessThan(20)
        const { live, text, height } = screen(walk, columns, rows)
        expect(live.tooSmall).toBe(false)
        expect(height).toBeLessThan(rows)
        expect(numbers(text)).toHaveLength(live.choices)
        expect(live.choices).toBeGreaterThan(Math.min(2, items(walk).length - seen.size - 1))
        expect(text.join(' ')).toContain('Which one? Its number')
        for (const n of numbers(text)) seen.add(n)
        walk.keys(`more ${live.choices}`)
      }
      // Past the last it begins anew.
      expect(numbers(screen(walk, columns, rows).text)[0]).toBe('1')
    },
  )

  it('has the newest first, whatever it is', () => {
    const found = new Walk().toBore().keys('9.5033', '9.5034', '9.5021', '9.5020')
    const gate = new Walk().toGate().keys('L-101', 'L-102')
    expect(items(gate.keys('correct'))[0]?.line).toContain('L-102')
    const first = (walk: Walk) => items(walk.keys('correct'))[0]
    expect(first(found)).toMatchObject({ kind: 'reading', sheet: '7.2' })
    // A reading, then what was seen after it.
    const seen = new Walk().toVerdict()
    const newest = Math.max(...Object.values(seen.state.readings).flatMap((of) => of.map(({ seq }) => seq)))
    const kinds = items(seen.keys('correct')).map((one) => (one.kind === 'reading' ? one.seq : one.kind))
    expect(kinds[0]).toBe(newest)
    expect(kinds.indexOf('finding')).toBeLessThan(6)
  })

  it('on 40 by 15 has five lines or more at a time, and no two of all its lines read alike', () => {
    const walk = judged()
    const lines: string[] = []
    while (lines.length < items(walk).length) {
      const { live, text } = screen(walk, 40, 15)
      const left = items(walk).length - lines.length
      expect(live.choices).toBeGreaterThanOrEqual(Math.min(5, left))
      lines.push(...text.filter((line) => /^\s*\d+ {2}\d/.test(line)))
      walk.keys(`more ${live.choices}`)
    }
    const bare = lines.map((line) => line.replace(/^\s*\d+ {2}/, ''))
    expect(bare.filter((line, i) => bare.indexOf(line) !== i)).toEqual([])
    expect(bare).toContain('2: 0 ppm, H2S...opening')
  })

  it('on 40 by 15 has five lines or more under a hazard of four as well', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', '9.5021', 'correct')
    expect(screen(walk, 40, 15).text.join(' ')).toMatch(/Hazard: .* In trouble: /)
    expect(screen(walk, 40, 15).live.choices).toBeGreaterThanOrEqual(5)
  })

  it('has the figure on each line, also where the line is cut', () => {
    const [line = ''] = screen(new Walk().toBore().keys('9.5033', 'correct'), 40, 15).text.filter((one) =>
      /^\s*1 {2}/.test(one),
    )
    expect(line).toMatch(/^\s*1 {2}7\.1: 9\.5033 in, HE/)
  })

  it('is there on the lowest screen under the long hazard of a hold point, a line at a time rather than none', () => {
    const gate = new Walk()
      .toGate()
      .keys(
        ...LOCK_LINES,
        'NO START',
        'NO FLOW',
        'BLOCKED BOTH WAYS',
        '1',
        'METER ANSWERED',
        '20.9',
        '0',
        'correct',
      )
    const { text } = screen(gate, 40, 15)
    expect(text.join(' ')).toContain('To be corrected')
    expect(text.join(' ')).not.toContain('too small')
    expect(text.some((one) => /^\s*1 {2}2: 0 %LEL/.test(one))).toBe(true)
  })

  it('names sheet, figure, repeat, place and axis on one line of 80, none of it cut', () => {
    const lines = screen(new Walk().toBore().keys('9.5033', '9.5034', '9.5021', 'correct'), 80, 24).text
    const listed = lines.map((line) => line.trim())
    expect(listed).toContain('1  sheet 7.2: 9.5021 in, HE, SIDE TO SIDE')
    expect(listed).toContain('2  sheet 7.1: 9.5034 in, 2nd of 2, HE, TOP TO BOTTOM')
    expect(listed).toContain('3  sheet 7.1: 9.5033 in, 1st of 2, HE, TOP TO BOTTOM')
    expect(listed.join(' ')).toMatch(
      /\d+ in all; the word more shows the rest, or sheet 7 for that one alone /,
    )
  })

  it('has a heading of its own, and no way to more where there is no more', () => {
    const walk = new Walk().toBore().keys('correct', 'sheet 4')
    const { text } = screen(walk, 80, 24)
    expect(text.join(' ')).toContain('To be corrected')
    expect(text.join(' ')).not.toMatch(/more/)
    expect(walk.keys('3').said.at(-1)).toBe('Key a number of the list, 1, or back.')
  })

  it('says nothing of more where all of it stands there', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102', 'L-103', 'L-104', 'correct')
    expect(items(walk).length).toBeGreaterThan(3)
    expect(numbers(screen(walk, 80, 24).text)).toHaveLength(items(walk).length)
    expect(screen(walk, 80, 24).text.join(' ')).not.toMatch(/more|in all/)
    const small = screen(judged(), 40, 15)
    expect(small.text.join(' ').replace(/\s+/g, ' ')).toContain('in all; more shows others')
  })

  it('takes no number that is not on the screen, before the list or behind it', () => {
    const walk = judged().keys(withListed('8', 3))
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-which', from: 0 })
    expect(walk.said.at(-1)).toBe(
      '8 does not stand in the list as it is shown: the word more shows the rest.',
    )
    walk.keys(withListed('more', 3), withListed('3', 3))
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-which', from: 3 })
    const fourth = items(walk)[3]
    walk.keys(withListed('4', 3))
    expect(walk.said.at(-1)).toBe(`To be corrected: ${fourth?.text}.`)
    // Without a count it is as plain lines show it.
    expect(judged().keys('9').talk.ask?.kind).toBe('correct-which')
    expect(judged().keys('8').talk.ask?.kind).toBe('correct-why')
  })

  it('keeps its order when one of it is put right', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', '9.5021', 'correct')
    const before = items(walk).map(({ sheet }) => sheet)
    const third = items(walk)[2]?.line
    walk.keys('3', 'misread', '9.5035', 'correct')
    expect(items(walk).map(({ sheet }) => sheet)).toEqual(before)
    expect(items(walk)[2]?.line).toBe(third?.replace('9.5033', '9.5035'))
    walk.keys('3', 'misread again', '9.5036', 'correct')
    expect(items(walk)[2]?.line).toBe(third?.replace('9.5033', '9.5036'))
  })

  it('is cut on a drawn sheet of 40 and told whole where it is heard', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', 'correct')
    const style = { width: 39, record: 'EXAMPLE' as const, ascii: true, linear: true }
    const { choices } = promptView(walk.engine.defs, walk.state, walk.talk, style)
    expect(choices.every((one) => one.keep !== true)).toBe(true)
  })

  it('asks why first, and then the figure, with its place and unit', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', 'correct', '2')
    const view = () =>
      promptView(walk.engine.defs, walk.state, walk.talk, { width: 79, record: 'EXAMPLE', ascii: true })
    expect(view()).toMatchObject({ margin: '7.1', unit: '' })
    expect(view().title).toBe('Bore, HEAD END of ring travel, TOP TO BOTTOM')
    const lines = () => view().ask.map(({ text }) => text)
    expect(lines().slice(0, 2)).toEqual([
      'Stands: 9.5033 in, 1st of 2',
      'Why was it wrong? In words; what is right is asked after',
    ])
    walk.keys('misread')
    expect(view()).toMatchObject({ margin: '7.1', unit: 'in' })
    expect(lines().slice(0, 2)).toEqual(['Stands: 9.5033 in, 1st of 2', 'The right figure, in full (in)'])
    walk.keys('9.5036')
    expect(walk.last).toMatchObject({ type: 'reading.corrected', typed: '9.5036', why: 'misread' })
  })

  it('is as long on plain lines as a small screen shows, and more goes on from there', () => {
    const walk = judged()
    const { session } = memorySession(walk)
    const listed = async () => {
      let text = ''
      const style = { width: 79, record: 'EXAMPLE', ascii: true, linear: true } as const
      const out = {
        write: (more: string) => {
          text += more
        },
      }
      createTeller(session, style, out).prompt()
      return numbers(
        text.split('\n').map((line) => line.replace(/^(\d+): sheet ([\d.]+): /, '$1  sheet $2: ')),
      )
    }
    return session
      .hear('correct')
      .then(listed)
      .then(async (first) => {
        expect(first).toEqual(Array.from({ length: LISTED }, (_, n) => String(n + 1)))
        await session.hear('more')
        expect((await listed())[0]).toBe(String(LISTED + 1))
      })
  })

  it('is cut down to one sheet by its number, and says so where there is nothing', () => {
    const walk = judged().keys('sheet 7')
    expect(new Set(items(walk).map(({ sheet }) => sheet.split('.')[0]))).toEqual(new Set(['7']))
    expect(items(judged().keys('sheet 7.2')).map(({ sheet }) => sheet)).toEqual(['7.2', '7.2'])
    const none = judged().keys('sheet 99')
    expect(none.said.at(-1)).toBe('Nothing of sheet 99 can be corrected.')
    expect(items(none)).toEqual(items(judged()))
  })

  it('names what was chosen before anything is asked about it', () => {
    const walk = judged()
    const [first] = items(walk)
    walk.keys('1')
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-why' })
    expect(walk.said.join('\n')).toContain(`To be corrected: ${first?.text}.`)
  })
})
