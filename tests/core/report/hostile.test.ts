// Names and notes that are meant to do harm: in no format are they anything but text.
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clean, widthOf } from '../../../src/core/lib/text.ts'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import type { Report } from '../../../src/core/report/schema.ts'
import { cell, reportCsv } from '../../../src/core/report/write/csv.ts'
import { reportHtml } from '../../../src/core/report/write/html.ts'
import { reportJson } from '../../../src/core/report/write/json.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { exampleWalk, reported, withTexts } from '../../helpers/reported.ts'

const PARTS = [
  '=1+1',
  '=HYPERLINK("https://example.invalid/?x="&A1,"open")',
  '+cmd|calc',
  '-2+3',
  '@SUM(A1)',
  '\uff1d1+1',
  ' =1',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '</title></style></svg><svg onload=alert(1)>',
  '&lt;b&gt;',
  "' onmouseover='alert(1)",
  'a,b;c\td',
  '"quoted"',
  '\r\nEXAMPLE forged line',
  '\u001b[31mred',
  '\u202e9.5034',
  '\u2066\u200b\ufeff',
  '\u0000\u0007',
  '\ud800',
  'شخص 9.5034 שם',
  '中文 \u{1f9ea}',
  '}</style>',
  '\\22 ) ; } body{display:none}',
  'file:///etc/passwd https://example.invalid',
]
const hostile = fc
  .array(fc.oneof(fc.constantFrom(...PARTS), fc.string({ unit: 'binary', maxLength: 12 })), {
    minLength: 1,
    maxLength: 4,
  })
  .map((all) => all.join(''))

/** Words that the report itself is told apart by; all others may be anything that somebody keyed. */
const FIXED =
  /^(REAL|PRACTICE|EXAMPLE|ACCEPT|MONITOR|yes|corrected|void|PIN|initials only|machine|fallback|at most|at least|bore-profile|wear|gaps|pocket|pv|length|temperature|pressure-gauge|concentration|lel-fraction|power|in|mm|degF|degC|%vol|%LEL|ppm|settled|job\..*|\d{4}-\d\d-\d\dT.*|\d+(\.\d+)?)$/

const base = reported(exampleWalk())

/** A short report: a property runs over many of them. */
const short: Report = { ...base, log: base.log.slice(0, 12), readings: base.readings.slice(0, 5) }

const spoiled = hostile.map((text) =>
  withTexts(short, (own) => (FIXED.test(own) ? own : clean(`${text}${own.slice(0, 8)}`))),
)

const UNSEEN =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff]/

describe('a hostile report', () => {
  it('as text keeps every line on the sheet, marked, and shows nothing unseen', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(spoiled, (report) => {
        const lines = reportText(paperOf(report)).slice(0, -1).split('\n')
        for (const line of lines) {
          expect(line).toMatch(/^EXAMPLE/)
          expect(line.replace(/[\ud800-\udbff][\udc00-\udfff]/g, '')).not.toMatch(UNSEEN)
          expect(widthOf(line)).toBeLessThanOrEqual(79)
        }
      }),
      { numRuns: 10 },
    )
  })

  it('as CSV has no cell that a spreadsheet would work out, and says what was meant', () => {
    fc.assert(
      fc.property(spoiled, (report) => {
        const rows = parse(reportCsv(report), { bom: true }) as string[][]
        const [head = []] = rows
        for (const row of rows) {
          expect(row.length).toBe(head.length)
          for (const text of row)
            if (!/^-?\d/.test(text)) expect(text).not.toMatch(/^\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/)
        }
        const read = report.readings.flatMap(({ places }) => places.flatMap(({ readings }) => readings))
        const typed = rows
          .filter((row) => row[3] === 'reading')
          .map((row) => row[head.indexOf('keyed')]?.replace(/^'/, ''))
        expect(typed).toEqual(read.map((one) => one.typed.replace(/^'/, '')))
      }),
      { numRuns: 20 },
    )
  })

  it('as JSON is read back as it was', () => {
    fc.assert(
      fc.property(spoiled, (report) => {
        expect(JSON.parse(reportJson(report))).toEqual(report)
      }),
      { numRuns: 20 },
    )
  })

  it('as HTML has only the tags and attributes of the page itself', () => {
    const tags = (html: string) =>
      [...html.replace(/<style>[\s\S]*?<\/style>/, '').matchAll(/<[^>]*>/g)].map(([tag]) => tag)
    const shapeOf = (tag: string) => tag.replace(/"[^"]*"/g, '""')
    const own = new Set(tags(reportHtml(paperOf(base))).map(shapeOf))
    fc.assert(
      fc.property(spoiled, (report) => {
        const html = reportHtml(paperOf(report))
        for (const tag of tags(html)) if (!/^<(?:td|th)\b/.test(tag)) expect(own).toContain(shapeOf(tag))
        const [, style = ''] = /<style>([\s\S]*?)<\/style>/.exec(html) ?? []
        expect(style).not.toMatch(/[<>]|url\(|@import/)
        expect(html.match(/<style>/g)?.length).toBe(1)
      }),
      { numRuns: 15 },
    )
  })
})

describe('a cell', () => {
  it.each([
    ['-0.0003', '-0.0003'],
    ['9.5034', '9.5034'],
    ['-1e-7', '-1e-7'],
    ['', ''],
    ['-2+3', `"'-2+3"`],
    ['=A1', `"'=A1"`],
    ['say "no"', '"say ""no"""'],
    ['007', '"007"'],
  ])('%s is %s', (text, written) => {
    expect(cell(text)).toBe(written)
  })
})

describe('a hostile job', () => {
  it('is made harmless where the report is made: nothing unseen is in any text of it', () => {
    // What cannot be seen is refused in a crew file; from a keyboard and from other logs anything may come.
    const defs = exampleDefs({ crew: (text) => text.replace('R. Oduya', '"=1+1<b>"') })
    const note = "=cmd|' /C calc'!A0 \u202e\u0007</p><script>"
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '')
    expect(walk.bring({ do: 'note', text: note })).toBeNull()
    const report = reported(walk)
    const texts: string[] = []
    withTexts(report, (text) => {
      texts.push(text)
      return text
    })
    expect(texts.filter((text) => clean(text) !== text)).toEqual([])
    expect(report.people[0]?.name).toBe('=1+1<b>')
    expect(texts.join('\n')).toContain('</p><script>')
    expect(reportHtml(paperOf(report))).not.toMatch(/<script|<b>/)
  })
})
