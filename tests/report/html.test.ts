// A report as HTML: read by a parser that is not ours, looked over for accessibility, and shown by a real browser where one is.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import axe from 'axe-core'
import { JSDOM, VirtualConsole } from 'jsdom'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../src/core/report/paper-of.ts'
import { sceneOf } from '../../src/core/report/plot/of.ts'
import { reportHtml } from '../../src/core/report/write/html.ts'
import { readFonts } from '../../src/report/fonts.ts'
import { htmlPage } from '../../src/report/page.ts'
import { BROWSER, launched } from '../helpers/browser.ts'
import { exampleWalk, HEAD, reported } from '../helpers/reported.ts'

const report = reported(exampleWalk())
const html = await htmlPage(paperOf(report), readFonts())

/** Its reader of style sheets knows no boxes at the edge of a page, and says so on a console that nobody reads. */
const parsed = (page: string) =>
  new JSDOM(page, { runScripts: 'outside-only', virtualConsole: new VirtualConsole() })

const grave = (found: axe.AxeResults) =>
  found.violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)

describe('a report as HTML', () => {
  const { window } = parsed(html)
  const { document } = window

  it('is a page in English with a title, one heading over all and one for each section', () => {
    expect(document.documentElement.lang).toBe('en')
    expect(document.title).toBe('EXAMPLE: Bore or liner inspection, TC-401-1')
    expect(document.querySelectorAll('h1').length).toBe(1)
    expect([...document.querySelectorAll('h2')].map(({ textContent }) => textContent)).toEqual(
      paperOf(report)
        .sections.slice(1)
        .map(({ title }) => title),
    )
    for (const link of document.querySelectorAll('nav a'))
      expect(document.querySelector(link.getAttribute('href') ?? '')).not.toBeNull()
  })

  it('fetches and runs nothing', () => {
    const used = [...document.querySelectorAll('*')]
    expect(
      used
        .map(({ tagName }) => tagName)
        .filter((tag) => /^(SCRIPT|LINK|IMG|IFRAME|OBJECT|EMBED|FORM|BASE|USE)$/i.test(tag)),
    ).toEqual([])
    const attributes = used.flatMap((one) => [...one.attributes])
    expect(
      attributes.filter(
        ({ name, value }) =>
          /^on|^(?:src|action|style)$/.test(name) || (name.endsWith('href') && !value.startsWith('#')),
      ),
    ).toEqual([])
    expect(document.querySelector('meta[http-equiv]')?.getAttribute('content')).toMatch(/^default-src 'none'/)
    const style = document.querySelector('style')?.textContent ?? ''
    expect(style).not.toMatch(/@import/)
    expect(style.match(/url\(.{22}/g)).toEqual(Array(3).fill('url(data:font/woff2;base64'))
  })

  it('has the word of the record on every line, in every row, under every plot', () => {
    const lost = [...document.querySelectorAll('.sheet p, tbody tr, figcaption')].filter(
      ({ textContent }) => !textContent.trim().startsWith('EXAMPLE'),
    )
    expect(lost.length).toBe(0)
    expect(document.querySelectorAll('.sheet p').length).toBeGreaterThan(100)
  })

  it('tells each plot in words', () => {
    const plots = [...document.querySelectorAll('svg')]
    expect(plots.length).toBe(report.plots.length)
    for (const [i, plot] of report.plots.entries()) {
      const scene = sceneOf(plot)
      expect(plots[i]?.querySelector('title')?.textContent).toBe(scene.title)
      expect(plots[i]?.querySelector('desc')?.textContent).toBe(scene.told)
      expect(plots[i]?.getAttribute('role')).toBe('img')
    }
  })

  it('has every reading of the data in its tables', () => {
    const cells = new Set([...document.querySelectorAll('td, th')].map(({ textContent }) => textContent))
    const wanted = report.readings.flatMap(({ places }) =>
      places.flatMap(({ value }) => (value === null ? [] : [value.text])),
    )
    expect(wanted.filter((text) => !cells.has(text))).toEqual([])
  })

  it('has no serious finding of accessibility that a parser can see', async () => {
    // Every kind of line, table and plot, and of each only some: the looking takes long.
    const some = { ...report, log: report.log.slice(0, 10), readings: report.readings.slice(0, 4) }
    // Without its style sheet, which its colours and nothing else of it are told by.
    const { window: seen } = parsed(reportHtml(paperOf(some)).replace(/<style>[\s\S]*?<\/style>/, ''))
    seen.eval(axe.source)
    const run = (seen as unknown as { axe: typeof axe }).axe
    // Colours are not laid out here: a test of the inks reckons them, and the browser below looks at them.
    const found = await run.run(seen.document.documentElement, {
      preload: false,
      rules: { 'color-contrast': { enabled: false } },
    })
    expect(found.passes.length).toBeGreaterThan(10)
    expect(grave(found)).toEqual([])
  })
})

describe.skipIf(BROWSER === null)(
  `a report in a browser (skipped where no Chromium is installed: ${BROWSER ?? 'none here'})`,
  () => {
    it('shows without a word on the console, asks for nothing, has no serious finding, and prints numbered pages', async () => {
      const folder = mkdtempSync(join(tmpdir(), 'barover-html-'))
      const file = join(folder, 'report.html')
      writeFileSync(file, html)
      const browser = await launched()
      try {
        // The policy of the page lets nothing run, and so not what looks it over either: that is let in past it.
        const page = await (await browser.newContext({ bypassCSP: true })).newPage()
        const said: string[] = []
        const asked: string[] = []
        page.on('console', (message) => said.push(message.text()))
        page.on('pageerror', (error) => said.push(error.message))
        page.on('request', (request) => asked.push(request.url()))
        await page.goto(pathToFileURL(file).href)
        expect(asked.filter((url) => !url.startsWith('data:font/woff2;base64,'))).toEqual([
          pathToFileURL(file).href,
        ])
        // Each face of it is read from the page, and each is one that the browser can draw with.
        expect(
          await page.evaluate('document.fonts.ready.then((f) => [...f].map((one) => one.status))'),
        ).toEqual(['loaded', 'loaded', 'loaded'])
        await page.evaluate(
          readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'),
        )
        const found = (await page.evaluate('axe.run()')) as axe.AxeResults
        expect(grave(found)).toEqual([])
        expect(found.passes.map(({ id }) => id)).toContain('color-contrast')
        // Nothing is wider than the window: no line of it is out of sight.
        expect(await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth')).toBe(true)
        const printed = await getDocument({
          data: new Uint8Array(await page.pdf({ preferCSSPageSize: true })),
          verbosity: 0,
        }).promise
        for (let n = 1; n <= printed.numPages; n++) {
          const { items } = await (await printed.getPage(n)).getTextContent()
          const text = items
            .map((item) => ('str' in item ? item.str : ''))
            .join('')
            .replace(/\s+/g, '')
          for (const word of [
            `page${n}of${printed.numPages}`,
            'EXAMPLE',
            `job${report.job}`,
            `checknumber${HEAD}`,
          ])
            expect(text).toContain(word)
        }
        expect(said).toEqual([])
      } finally {
        await browser.close()
        rmSync(folder, { recursive: true })
      }
    })
  },
)
