// A report as PDF, its text read back by another program and held against the data: nothing of it is lost or turned round.
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../src/core/report/paper-of.ts'
import { sceneOf } from '../../src/core/report/plot/of.ts'
import type { Report } from '../../src/core/report/schema.ts'
import { readFonts } from '../../src/report/fonts.ts'
import { reportPdf } from '../../src/report/pdf.ts'
import { bare, readPdf, textOf } from '../helpers/pdf-text.ts'
import { exampleWalk, HEAD, reported, withTexts } from '../helpers/reported.ts'

const made = async (report: Report) => reportPdf(paperOf(report), readFonts())

const report = reported(exampleWalk())

describe('a report as PDF', async () => {
  const bytes = await made(report)
  const { pages, sizes, info } = await readPdf(bytes)

  it('has the word of the record, job, head and page x of y on each page', () => {
    expect(pages.length).toBeGreaterThan(3)
    for (const [i, page] of pages.entries()) {
      const texts = page.map(({ text }) => text)
      expect(texts).toContain(`page ${i + 1} of ${pages.length}`)
      expect(textOf(page)).toContain(bare(`head ${HEAD}`))
      expect(textOf(page)).toContain(bare(`EXAMPLE job ${report.job}`))
      expect(texts.filter((text) => text === 'EXAMPLE').length).toBeGreaterThan(1)
    }
  })

  it('has a contents list by which each title stands on the page it names, and never as the last of it', () => {
    const listed = paperOf(report).sections.slice(1)
    const front = pages.flat()
    for (const { title } of listed) {
      const first = front.find(({ text }) => text === title)
      const named = front.find(({ text, y }) => /^page \d+$/.test(text) && y === first?.y)
      const on = pages[Number(named?.text.slice(5)) - 1] ?? []
      const heading = on.findLast(({ text }) => text === title)
      expect(heading, title).toBeDefined()
      expect(
        on.some(({ x, y }) => x > 115 && y < (heading?.y ?? 0) - 5 && y > 85),
        title,
      ).toBe(true)
    }
  })

  it('has the word beside every line', () => {
    for (const page of pages) {
      const marked = new Set(
        page.filter(({ text, x }) => text === 'EXAMPLE' && x < 60).map(({ y }) => Math.round(y * 4)),
      )
      // But inside a plot, which has it in its title, and at the edges of the page.
      const plots = report.plots.flatMap((plot) =>
        sceneOf(plot).shapes.flatMap((one) => (one.is === 'text' ? [one.text] : [])),
      )
      const lost = page.filter(
        ({ text, y }) => y > 85 && y < 800 && !marked.has(Math.round(y * 4)) && !plots.includes(text),
      )
      expect(lost).toEqual([])
    }
  })

  it('tells in text what the data tell', () => {
    const all = pages.map(textOf).join('')
    const wanted = [
      ...report.verdicts.map(({ word }) => `( ${word} )`),
      ...report.readings.flatMap(({ places }) =>
        places.flatMap(({ value }) => (value === null ? [] : [value.text])),
      ),
      ...report.gates.flatMap(({ openings }) =>
        openings.flatMap(({ evidence }) => evidence.map(({ shown }) => shown)),
      ),
      ...report.people.map(({ name }) => name),
      ...report.instruments.map(({ id }) => id),
      ...report.plots.flatMap((plot) => [
        plot.title,
        ...plot.notes,
        ...sceneOf(plot).data.map(({ label }) => label),
      ]),
      report.head,
    ]
    expect(wanted.filter((text) => !all.includes(bare(text)))).toEqual([])
    // A cell or a line that is broken has its marks between: of those each word is there.
    const broken = [
      ...report.cautions,
      ...report.instruments.flatMap(({ certificate, error }) => [certificate ?? '', error]),
      ...report.limits.flatMap(({ limit, source }) => [limit.text, source]),
      ...report.log.flatMap(({ told }) => told),
    ]
    const words = broken.flatMap((text) => text.split(/\s+/)).filter((word) => word.length < 20)
    expect(words.length).toBeGreaterThan(200)
    expect(words.filter((word) => !all.includes(word))).toEqual([])
    // Exceptions may run over the end of a page, with its edges between: their first words are there.
    for (const { what } of report.exceptions) expect(all).toContain(bare(what).slice(0, 30))
  })

  it('is printed on Letter where that is asked for, with the same in it', async () => {
    const letter = await readPdf(await reportPdf(paperOf(report), readFonts(), 'letter'))
    expect(new Set(sizes)).toEqual(new Set(['595 x 842']))
    expect(new Set(letter.sizes)).toEqual(new Set(['612 x 792']))
    for (const page of letter.pages) for (const { y } of page) expect(y).toBeGreaterThan(15)
    const all = letter.pages.map(textOf).join('')
    const figures = report.readings.flatMap(({ places }) => places.flatMap(({ value }) => value?.text ?? []))
    expect([...figures, report.head].filter((text) => !all.includes(bare(text)))).toEqual([])
  })

  it('has the day of the log, and no other', () => {
    expect(info.Title).toBe('EXAMPLE: Bore or liner inspection, TC-401-1')
    expect(info.CreationDate).toBe(`D:${report.to.slice(0, 19).replace(/[-T:]/g, '')}Z`)
    expect(bytes.toString('latin1')).not.toMatch(/D:(?!20260314)\d{8}/)
  })

  it('runs nothing, opens nothing and asks for nothing from anywhere', () => {
    expect(bytes.toString('latin1')).not.toMatch(
      /\/(?:JavaScript|JS|URI|Launch|OpenAction|AA|EmbeddedFile|SubmitForm|GoToR)\b/,
    )
  })
})

describe('a hostile report as PDF', () => {
  it('turns no figure round, loses no sign, and stays on its pages', async () => {
    const names = [
      '\u05e9\u05dd9.5034 in',
      '\u0634\u062e\u0635 12.345',
      '\u4e2d\u6587',
      '<b>=1+1',
      'x'.repeat(400),
      ') Tj (',
    ]
    const base: Report = { ...report, log: report.log.slice(0, 5), plots: report.plots.slice(0, 1) }
    const hostile: Report = {
      ...base,
      job: 'j'.repeat(300),
      people: names.map((name) => ({
        id: 'RO',
        name,
        role: 'mechanic',
        onJob: true,
        since: false,
        signed: 0,
      })),
    }
    const { pages } = await readPdf(await made(hostile))
    const all = pages.map(textOf).join('')
    for (const text of ['9.5034in', '12.345', '[U+4E2D][U+6587]', '<b>=1+1', ')Tj('])
      expect(all).toContain(text)
    expect(all).not.toMatch(/4305\.9|543\.21/)
    expect(all.match(/x/g)?.length).toBeGreaterThanOrEqual(400)
    for (const page of pages) for (const { x } of page) expect(x).toBeLessThan(560)
  })

  it('is written whatever is in it', async () => {
    const odd = withTexts(report, (text) => `${text.slice(0, 3)}\ufffd\u0301\u{1f9ea}`)
    const { pages } = await readPdf(await made({ ...odd, log: odd.log.slice(0, 3), plots: report.plots }))
    expect(pages.length).toBeGreaterThan(1)
  })
})
