// A review on the terminal: a list of one screen, a number for what is behind it, Enter for the list, Tab for make safe, 0 out.
import { describe, expect, it, vi } from 'vitest'
import { itemBlocks } from '../../src/core/review/item.ts'
import { lastNumber, screenLines } from '../../src/core/review/page.ts'
import { layOut, row, type SheetStyle } from '../../src/core/sheet/block.ts'
import { type DrawnPages, drawPages } from '../../src/ui/draw-pages.tsx'
import { endsWithTest } from '../helpers/drawn.ts'
import { Walk } from '../helpers/example.ts'
import { fakeTerminal } from '../helpers/fake-terminal.ts'
import { asPerson, reviewed } from '../helpers/reviewed.ts'
import type { Size } from '../helpers/screen.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const long = (style: SheetStyle) =>
  Array.from({ length: 40 }, (_, i) =>
    layOut({ margin: '', rows: [row(`line ${i + 1} of it`)] }, style),
  ).flat()

function draw({ size = { cols: 80, rows: 24 }, acts }: { size?: Size; acts?: DrawnPages['acts'] } = {}) {
  const walk = new Walk().toVerdict()
  const { defs } = walk.engine
  const review = reviewed(walk)
  const terminal = fakeTerminal(size)
  const item = (number: number, style: SheetStyle) =>
    (itemBlocks(defs, asPerson(walk.entries), review, number, style) ?? []).flatMap((b) => layOut(b, style))
  const done = drawPages(
    {
      style: { width: size.cols - 1, record: 'EXAMPLE', ascii: false },
      numbers: `1 to ${lastNumber(review)}`,
      home: (style, rows, isFresh) => {
        const above = isFresh ? layOut({ margin: '', rows: [row('CHANGED')] }, style) : []
        return { head: [], body: [...above, ...screenLines(defs, review, style, rows - above.length)] }
      },
      open: (keyed, style) =>
        keyed === '1'
          ? { head: [], body: item(1, style) }
          : keyed === '2'
            ? { head: layOut({ margin: '2', rows: [row('THE HEADING')] }, style), body: long(style) }
            : null,
      safe: () => ['MAKE SAFE. Words only', 'Come out, everybody'],
      ...(acts === undefined ? {} : { acts }),
    },
    terminal,
  )
  endsWithTest(terminal, done)
  return { ...terminal, done }
}

describe('a review on the screen', () => {
  it('is the list, all of it in sight, and the word of the record on every line', async () => {
    const { screen } = draw()
    await screen.see('Number: what is behind it.')
    expect(screen.text).toContain('NC-1 Bore judged: MONITOR; NOT DECIDED')
    expect(screen.text).toMatch(/bore diameter, in/)
    for (const line of screen.lines.filter((l) => l !== '')) expect(line).toMatch(/^EXAMPLE /)
    expect(screen.wipes).toBe(0)
  })

  it('by a number shows what is behind it, by Enter the list again, and says which numbers there are', async () => {
    const { screen, send } = draw()
    await screen.see('NC-1')
    send('1')
    send('\r')
    await screen.see('Page 1 of')
    expect(screen.text).toMatch(/entry \d+ {3}2026-03-14/)
    expect(screen.text).not.toContain('REVIEW')
    send('list\r')
    await screen.see('REVIEW  TC-401-1')
    send('99')
    send('\r')
    await screen.see(/No such number: 1 to \d+/)
  })

  it('has what is longer than it a screen at a time, the heading on each, on and back by a word or a key', async () => {
    const { screen, send } = draw()
    await screen.see('REVIEW')
    send('2\r')
    await screen.see('Page 1 of 2. Enter: next.')
    expect(screen.text).toMatch(/THE HEADING.*line 1 of it.*line 20 of it/s)
    expect(screen.text).not.toContain('line 21 of it')
    send('\r')
    await screen.see('Page 2 of 2. Enter: list. back.')
    expect(screen.text).toMatch(/THE HEADING.*line 21 of it.*line 40 of it/s)
    send('back\r')
    await screen.see('Page 1 of 2')
    send('\u001b[6~')
    await screen.see('Page 2 of 2')
    send('\r')
    await screen.see('REVIEW  TC-401-1')
    expect(screen.wipes).toBe(0)
  })

  it('takes the words somebody leaves by, and says its words when asked for help', async () => {
    const { screen, send, done } = draw()
    await screen.see('REVIEW')
    send('help\r')
    await screen.see('next, back, list')
    send('q\r')
    expect(await done).toBe(false)
  })

  it('by Tab has the make-safe sheet, by 0 is over, and by Control-C was interrupted', async () => {
    const { screen, send, done } = draw()
    await screen.see('REVIEW')
    send('\t')
    await screen.see('Come out, everybody')
    send('0')
    send('\r')
    expect(await done).toBe(false)
    const other = draw()
    await other.screen.see('REVIEW')
    other.send('\u0003')
    expect(await other.done).toBe(true)
  })

  it('ends with a word that does something, and with a STOP; where there are none it knows no such word', async () => {
    const taken: string[] = []
    const acts = { words: ['note'], isOpen: true, take: (word: string) => void taken.push(word) }
    for (const keyed of ['note', 'STOP!']) {
      const { screen, send, done } = draw({ acts })
      await screen.see('A number; a question in words; note; help; leave.')
      send(`${keyed}\r`)
      expect(await done).toBe(false)
    }
    expect(taken).toEqual(['note', 'stop'])
    const { screen, send } = draw()
    await screen.see('REVIEW')
    send('note\r')
    await screen.see('No such number')
  })

  it('shows what changed until the next line is keyed, and then the list has the room', async () => {
    const { screen, send } = draw()
    await screen.see('CHANGED')
    send('\r')
    await expect.poll(() => screen.text).not.toContain('CHANGED')
    expect(screen.text).toContain('REVIEW')
  })

  it('names in 40 columns the words that fit, none of them cut', async () => {
    const words = ['countersign', 'note']
    const { screen } = draw({
      size: { cols: 40, rows: 15 },
      acts: { isOpen: true, words, take: () => undefined },
    })
    await screen.see('Ask in words; help; leave.')
  })

  it('stays above the bottom of a low and narrow terminal', async () => {
    const { screen } = draw({ size: { cols: 40, rows: 10 } })
    await screen.see('NC-1')
    expect(screen.lines.filter((l) => l !== '').length).toBeLessThan(10)
    expect(screen.wipes).toBe(0)
  })
})
