// Lines of the sheet: the record's word on every one, none too wide, ASCII where ASCII is asked for.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../../../src/app/replay.ts'
import type { RecordKind } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { widthOf } from '../../../src/core/lib/text.ts'
import { type Block, layOut, plainText, row, type SheetStyle } from '../../../src/core/sheet/block.ts'
import { entryBlocks, saidBlock } from '../../../src/core/sheet/shown-block.ts'
import { walkExample } from '../../helpers/walked.ts'

const style = (width: number, more: Partial<SheetStyle> = {}): SheetStyle => ({
  width,
  record: 'EXAMPLE',
  ascii: false,
  ...more,
})
const shown = (block: Block, at: SheetStyle) => layOut(block, at).map((line) => line.margin + line.text)

describe('a block', () => {
  it('sets the number against the rule and who and when to the right of the first line', () => {
    expect(
      shown(
        { margin: '7.3', right: 'by RO 06:52', rows: [row('Bore, CENTRE'), row('  9.5068 in')] },
        style(60),
      ),
    ).toEqual([
      'EXAMPLE    7.3 │ Bore, CENTRE                    by RO 06:52',
      'EXAMPLE        │   9.5068 in',
    ])
  })

  it('keeps the first line clear of the right-hand column', () => {
    const lines = shown({ margin: '1', right: 'by RO 06:52', rows: [row('word '.repeat(30))] }, style(79))
    expect(lines[0]).toMatch(/word {2,}by RO 06:52$/)
    expect(lines.slice(1).join('')).not.toContain('by RO')
  })

  it('gives the right-hand column a line of its own, and the number one over the rule, on a narrow sheet', () => {
    expect(shown({ margin: '7.3', right: 'by RO 06:52', rows: [row('Bore')] }, style(35))).toEqual([
      'EXAMPLE │               by RO 06:52',
      'EXAMPLE │ 7.3  Bore',
    ])
  })

  it('cuts a drawing instead of wrapping it', () => {
    const lines = layOut(
      { margin: '', rows: [{ text: '#'.repeat(200), tone: 'plain', keep: true }] },
      style(60),
    )
    expect(lines).toHaveLength(1)
    expect(widthOf(lines[0]?.text ?? '')).toBe(43)
  })

  it('has the record word on every line and none too wide, whatever stands in it', () => {
    const text = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 120 }), fc.lorem({ maxCount: 30 }))
    const block = fc.record({
      margin: fc.constantFrom('', '7', '12.10', 'degF'),
      right: fc.constantFrom('', 'by RO 06:52', 'x'.repeat(100), '中文 🧪 '.repeat(9)),
      rows: fc.array(fc.record({ text, tone: fc.constant('plain' as const), keep: fc.boolean() }), {
        minLength: 1,
        maxLength: 5,
      }),
    })
    const record = fc.constantFrom<RecordKind>('REAL', 'PRACTICE', 'EXAMPLE')
    fc.assert(
      fc.property(
        block,
        record,
        fc.integer({ min: 30, max: 140 }),
        fc.boolean(),
        (one, word, width, ascii) => {
          for (const line of shown(one, { width, record: word, ascii })) {
            expect(line.startsWith(word)).toBe(true)
            expect(widthOf(line)).toBeLessThanOrEqual(width)
            expect(line).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\u200b]/)
          }
        },
      ),
      { numRuns: 500 },
    )
  })
})

describe('the example job on the sheet', () => {
  const walk = walkExample(() => undefined)
  const { shown: all } = replay(walk.entries)
  const lines = (at: SheetStyle) =>
    all.flatMap((one) =>
      one.kind === 'entry'
        ? entryBlocks(walk.engine.defs, one.state, one.entry, at).flatMap((block) => shown(block, at))
        : [],
    )

  it.each([38, 59, 79, 119])('carries its word on every line at %i columns, none too wide', (width) => {
    const sheet = lines(style(width))
    expect(sheet.length).toBeGreaterThan(80)
    for (const line of sheet) {
      expect(line).toMatch(/^EXAMPLE +[\d.]* *[│]/)
      expect(widthOf(line)).toBeLessThanOrEqual(width)
    }
  })

  it('is ASCII throughout when asked', () => {
    for (const line of lines(style(79, { ascii: true }))) expect(line).toMatch(/^[ -~]*$/)
  })

  it('shows the verdict and who decided', () => {
    const sheet = lines(style(79)).join('\n')
    expect(sheet).toContain('( MONITOR )')
    expect(sheet).toContain('Disposition by KH: ACCEPT')
  })
})

describe('a hostile note', () => {
  const note = 'ok \u001b[2J\u001b]0;x\u0007\n\u202eSTOP released\u202c\u0000 done'
  const walk = walkExample(() => undefined)
  const entry = { type: 'note.written', text: note, step: null, seq: 99, at: walk.last.at, by: 'RO' } as Entry

  it('is shown in plain sight and does nothing to the screen', () => {
    const blocks = entryBlocks(walk.engine.defs, walk.state, entry, style(79))
    const text = blocks.map((block) => plainText(layOut(block, style(79)))).join('\n')
    expect(text).toContain('Note: ok ?[2J?]0;x???STOP released?? done')
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/)
    for (const line of text.split('\n')) expect(line).toMatch(/^EXAMPLE/)
  })

  it('is as harmless when it is only said', () => {
    const text = plainText(layOut(saidBlock([note], true), style(79)))
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/)
  })
})
