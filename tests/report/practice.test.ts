// The report of a practice session on paper and as a page, read back by other programs: PRACTICE stands on each page and beside each
// line of it, and its sheet comes right behind the cover.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { JSDOM, VirtualConsole } from 'jsdom'
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../src/core/report/paper-of.ts'
import { sceneOf } from '../../src/core/report/plot/of.ts'
import { readFonts } from '../../src/report/fonts.ts'
import { htmlPage } from '../../src/report/page.ts'
import { reportPdf } from '../../src/report/pdf.ts'
import { BROWSER, launched } from '../helpers/browser.ts'
import { bare, readPdf, textOf } from '../helpers/pdf-text.ts'
import { reported } from '../helpers/reported.ts'
import { careful, seedHiding, session } from '../helpers/trainees.ts'

const seed = seedHiding('barrel', 1)
const report = reported(session(seed, 1, careful).walk)
const paper = paperOf(report)
const title = 'Sheet of the practice session'
/** What a trainee, and whoever signs for one, looks for on it. */
const TOLD = [
  '( PASSED )',
  'Safety, apart from all else: PASSED',
  'Score by skill',
  'Hidden: The bore is wider in the middle: a barrel; named',
  `--seed ${seed}`,
  `Practised by RO; seed ${seed}, level 1`,
]
const plotted = new Set(
  report.plots.flatMap((plot) =>
    sceneOf(plot).shapes.flatMap((one) => (one.is === 'text' ? [one.text] : [])),
  ),
)

describe('a practice session as PDF', async () => {
  const { pages, info } = await readPdf(await reportPdf(paper, readFonts()))

  it('is titled PRACTICE, and has it in the text of each page, at its edge with the job', () => {
    expect(info.Title).toMatch(/^PRACTICE: /)
    expect(pages.length).toBeGreaterThan(3)
    for (const [i, page] of pages.entries()) {
      expect(textOf(page), `page ${i + 1}`).toContain(bare(`PRACTICE job ${report.job}`))
      expect(textOf(page)).not.toMatch(/EXAMPLE(?!s)|REALjob/)
    }
  })

  it('has it beside each line, but for what is written inside a plot', () => {
    for (const page of pages) {
      const marked = page.filter(({ text, x }) => text === 'PRACTICE' && x < 60)
      const heights = new Set(marked.map(({ y }) => Math.round(y * 4)))
      expect(heights.size).toBeGreaterThan(1)
      const lost = page.filter(
        ({ text, y }) => y > 85 && y < 800 && !heights.has(Math.round(y * 4)) && !plotted.has(text),
      )
      expect(lost).toEqual([])
    }
  })

  it('has the sheet of the session on one page, all that it tells with its heading', () => {
    const at = pages.findLastIndex((page) => page.some(({ text }) => text === title))
    const told = textOf(pages[at] ?? []).replaceAll('PRACTICE', '')
    for (const one of TOLD) expect(told).toContain(bare(one))
  })
})

describe('a practice session as a page', async () => {
  const html = await htmlPage(paper, readFonts())
  const { document } = new JSDOM(html, { virtualConsole: new VirtualConsole() }).window

  it('is titled PRACTICE, and has the sheet of the session first behind the cover', () => {
    expect(document.title).toMatch(/^PRACTICE: /)
    const [first] = document.querySelectorAll('h2')
    expect(first?.textContent).toBe(title)
    const told = bare(first?.closest('section')?.textContent ?? '').replaceAll('PRACTICE', '')
    for (const one of TOLD) expect(told).toContain(bare(one))
  })

  it('has the word on each line, in each row and under each plot', () => {
    const lines = [...document.querySelectorAll('.sheet p, tbody tr, figcaption')]
    expect(lines.length).toBeGreaterThan(100)
    expect(lines.filter(({ textContent }) => !textContent.trim().startsWith('PRACTICE'))).toEqual([])
  })

  it.skipIf(BROWSER === null)('has it on each page that a browser prints', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'barover-practice-'))
    const file = join(folder, 'report.html')
    writeFileSync(file, html)
    const browser = await launched()
    try {
      const page = await browser.newPage()
      await page.goto(pathToFileURL(file).href)
      const { pages } = await readPdf(await page.pdf({ preferCSSPageSize: true }))
      expect(pages.length).toBeGreaterThan(3)
      for (const one of pages) expect(textOf(one)).toContain('PRACTICE')
    } finally {
      await browser.close()
      rmSync(folder, { recursive: true })
    }
  })
})
