// With --ascii nothing but ASCII comes out, whatever procedure, screen or answer it is; only what a person keyed stays as it was keyed.
import { describe, expect, it } from 'vitest'
import { kitOf } from '../../../src/core/kit/kit.ts'
import { asciiTwin } from '../../../src/core/lib/text.ts'
import { layOut, row, type SheetStyle, textWidth } from '../../../src/core/sheet/block.ts'
import { briefingBlocks } from '../../../src/core/sheet/briefing.ts'
import { choiceSheet } from '../../../src/core/sheet/choice-sheet.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import type { Walk } from '../../helpers/example.ts'
import { SHIPPED, shippedDefs } from '../../helpers/shipped-jobs.ts'
import { walkExample } from '../../helpers/walked.ts'

const style = (width: number): SheetStyle => ({ width, record: 'EXAMPLE', ascii: true })
const SIZES = [
  { columns: 80, rows: 24 },
  { columns: 40, rows: 15 },
  { columns: 20, rows: 8 },
]
/** Signs that are none of ASCII's. */
const foreign = (text: string) => [...new Set(text.match(/[^\n -~]/gu) ?? [])].join(' ')
const linesText = (lines: readonly { readonly margin: string; readonly text: string }[]) =>
  lines.map(({ margin, text }) => margin + text).join('\n')

function liveText(walk: Walk, columns: number, rows: number): string {
  const { defs } = walk.engine
  const st = style(Math.max(30, columns - 1))
  const input = {
    view: promptView(defs, walk.state, walk.talk, st),
    foot: foot(defs, walk.state, walk.now),
    style: st,
    columns,
    rows,
    notice: null,
  }
  return (['front', 'question'] as const)
    .flatMap((of) => [0, 1, 2].map((n) => fitLive({ ...input, side: { of, n } })))
    .map((live) => linesText([...live.above, ...live.below]) + live.inputMargin)
    .join('\n')
}

describe('with --ascii', () => {
  it.each(SHIPPED)('%s and its records hold no sign without a twin, nor does its briefing', (name) => {
    for (const site of ['tc-401', 'rg-27'] as const) {
      let defs: ReturnType<typeof shippedDefs>
      try {
        defs = shippedDefs(name, site)
      } catch {
        // Not every procedure is for every machine.
        continue
      }
      expect(foreign(asciiTwin(JSON.stringify(defs)))).toBe('')
      const blocks = briefingBlocks(defs, kitOf(defs, '2026-03-14'), style(79))
      expect(foreign(linesText(blocks.flatMap((block) => layOut(block, style(79)))))).toBe('')
    }
  })

  it('every prompt, every entry and every answer to a word of the example is ASCII, at any size', () => {
    const words = [
      'help',
      'why',
      'where',
      'show',
      'readings',
      'next',
      'safe',
      'open',
      'correct',
      'ask what is runout',
    ]
    let prompts = 0
    walkExample((walk, n) => {
      prompts++
      for (const { columns, rows } of SIZES) expect(foreign(liveText(walk, columns, rows)), `${n}`).toBe('')
      const { defs } = walk.engine
      const last = walk.entries.at(-1)
      for (const width of [79, 39]) {
        const blocks = last === undefined ? [] : entryBlocks(defs, walk.state, last, style(width))
        expect(foreign(linesText(blocks.flatMap((block) => layOut(block, style(width)))))).toBe('')
      }
      if (n % 6 !== 0) return
      for (const word of words) {
        const twin = walk.copy()
        twin.key(word)
        const said = twin.said.map((line) => row(line))
        expect(foreign(linesText(layOut({ margin: '', rows: said }, style(79)))), word).toBe('')
        for (const { columns, rows } of SIZES) expect(foreign(liveText(twin, columns, rows)), word).toBe('')
      }
    })
    expect(prompts).toBeGreaterThan(50)
  })

  it('what a person keyed stays as it was keyed', () => {
    const [line] = layOut({ margin: '', rows: [row('noted: Müller, 5 µm')] }, style(79))
    expect(line?.text).toBe('noted: Müller, 5 µm')
  })
})

describe('a choice of jobs', () => {
  const choice = {
    title: 'Take up which job?',
    lines: ['Takes you through work on the piston end, and keeps the record of it.'],
    options: Array.from(
      { length: 7 },
      (_, i) => `EXAMPLE  2026-03-14-bore-inspection-tc-401-${i}  open, at sheet ${i}`,
    ),
    zero: 'Back' as const,
    help: ['The number before a job and Enter opens it. 0 goes back.'],
  }
  const at = (columns: number, rows: number, told: readonly string[] = [], from = 0) =>
    choiceSheet({ choice, columns, rows, ascii: true, told, from })
  const text = (sheet: ReturnType<typeof at>) => sheet.lines.map((line) => line.text).join('\n')

  it.each(SIZES)(
    'fits $columns x $rows, and each of its options comes up, help keyed or not',
    ({ columns, rows }) => {
      for (const told of [[], choice.help]) {
        let seen = ''
        let from: number | null = 0
        let said: readonly string[] = told
        for (let turns = 0; turns < 40; turns++) {
          const sheet: ReturnType<typeof at> = at(columns, rows, said, from ?? 0)
          expect(sheet.lines.length).toBeLessThanOrEqual(rows - 2)
          for (const line of sheet.lines) expect(line.text.length).toBeLessThan(columns)
          expect(foreign(text(sheet))).toBe('')
          seen += `\n${text(sheet)}`
          if (sheet.next === 0) said = []
          if (sheet.next === null || (sheet.next === 0 && told.length === 0)) break
          from = sheet.next
          if (turns > 0 && from === 0 && said.length === 0 && /\n {4}7 /.test(seen)) break
        }
        for (let n = 1; n <= 7; n++)
          expect(seen, `${n} at ${columns}x${rows}`).toMatch(new RegExp(`\\n {4}${n} \\|`))
        if (told.length > 0) expect(seen.replace(/\n[ |]*/g, ' ')).toMatch(/0 goes .*back\./)
      }
    },
  )

  it('cuts no word in two where a line has room for it', () => {
    for (const line of at(40, 15).lines.filter((one) => /[a-z]{3}\.\.\.$/.test(one.text)))
      expect(line.text).toMatch(/ \S+\.\.\.$/)
    expect(textWidth(style(39))).toBeGreaterThan(20)
  })
})
