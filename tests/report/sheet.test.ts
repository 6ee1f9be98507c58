// A blank sheet as PDF, its text read back by another program: all of it is on the pages, and each page says what it is.
import { describe, expect, it } from 'vitest'
import type { BlankPiece, BlankSheet } from '../../src/core/blank/blank.ts'
import { blankOf } from '../../src/core/blank/blank-of.ts'
import { kitOf } from '../../src/core/kit/kit.ts'
import { inInk } from '../../src/core/lib/in-ink.ts'
import { readFonts } from '../../src/report/fonts.ts'
import { sheetPdf } from '../../src/report/sheet-pdf.ts'
import { exampleDefs } from '../helpers/example.ts'
import { bare, readPdf, textOf } from '../helpers/pdf-text.ts'
import { shippedDefs } from '../helpers/shipped-jobs.ts'

const fonts = readFonts()
const defs = exampleDefs()
const sheet = blankOf(defs, kitOf(defs, '2026-03-14'), 'EXAMPLE', [])

function textsOf(piece: BlankPiece): readonly string[] {
  switch (piece.is) {
    case 'words':
      return [piece.text]
    case 'drawing':
      return piece.lines
    case 'ticks':
      return piece.texts
    case 'boxes':
      return [...piece.columns.map(({ head }) => head), ...piece.rows.flat()]
    case 'permit':
    case 'together':
      return piece.pieces.flatMap(textsOf)
    case 'gap':
      return []
  }
}

const wordsOf = ({ sections }: BlankSheet) =>
  sections
    .flatMap(({ title, pieces }) => [title, ...pieces.flatMap(textsOf)])
    .flatMap((text) => text.split(/\s+/))

/** Every text of the sheet with another in its place; what pages and places hang on stays. */
function withTexts(piece: BlankPiece, change: (text: string) => string): BlankPiece {
  switch (piece.is) {
    case 'words':
      return { ...piece, text: change(piece.text), margin: piece.margin === '' ? '' : change(piece.margin) }
    case 'drawing':
      return piece
    case 'ticks':
      return { ...piece, texts: piece.texts.map(change) }
    case 'boxes':
      return {
        ...piece,
        columns: piece.columns.map((one) => ({ ...one, head: change(one.head) })),
        rows: piece.rows.map((cells) => cells.map(change)),
      }
    case 'permit':
      return {
        ...piece,
        name: change(piece.name),
        pieces: piece.pieces.map((one) => withTexts(one, change)),
      }
    case 'together':
      return { ...piece, pieces: piece.pieces.map((one) => withTexts(one, change)) }
    case 'gap':
      return piece
  }
}

describe.each([
  ['a4', '595 x 842'],
  ['letter', '612 x 792'],
] as const)('a blank sheet on %s', async (size, points) => {
  const bytes = await sheetPdf(sheet, fonts, size)
  const { pages, sizes, info } = await readPdf(bytes)

  it('has on each page its mark, number, procedure, machine record, day, and that nothing is enforced', () => {
    expect(pages.length).toBeGreaterThan(8)
    expect(new Set(sizes)).toEqual(new Set([points]))
    for (const [i, page] of pages.entries()) {
      const texts = page.map(({ text }) => text)
      expect(texts).toContain(`page ${i + 1} of ${pages.length}`)
      expect(texts.filter((text) => text === 'EXAMPLE').length).toBeGreaterThan(2)
      for (const says of [
        'EXAMPLE TC-401-1, record edition 4; procedure bore_inspection, edition 8',
        'printed for 2026-03-14; hold points on paper are not enforced by Barover',
      ])
        expect(textOf(page)).toContain(bare(says))
    }
  })

  it('has everything on its pages, inside their edges', () => {
    const all = pages.map(textOf).join('')
    const words = wordsOf(sheet).filter((word) => word.length < 20)
    expect(words.length).toBeGreaterThan(1000)
    expect(words.filter((word) => !all.includes(word))).toEqual([])
    const [width = 0, height = 0] = points.split(' x ').map(Number)
    for (const { x, y } of pages.flat()) {
      expect(x).toBeLessThan(width - 30)
      expect(y).toBeGreaterThan(15)
      expect(y).toBeLessThan(height - 30)
    }
  })

  it('goes on under its name where a hold point runs over the end of a page', () => {
    const at = pages.findIndex((page) => textOf(page).includes(bare('It keeps people from:')))
    expect(textOf(pages[at + 1] ?? [])).toContain(
      bare('Hold point before hands, tools or lamps go in, continued'),
    )
  })

  it('is the same to the byte when made again, with the day it was printed for and no other', async () => {
    expect((await sheetPdf(sheet, fonts, size)).equals(bytes)).toBe(true)
    expect(info).toMatchObject({ Title: 'EXAMPLE: blank sheet, Bore or liner inspection: TC-401-1' })
    expect(bytes.toString('latin1')).not.toMatch(/D:(?!20260314)\d{8}/)
  })
})

describe('a hostile blank sheet', () => {
  it('stays on its pages, loses no sign, and runs nothing', async () => {
    const nasty = ['\u05e9\u05dd9.5034 in', ') Tj (', '<b>=1+1', '\u4e2d\u6587', 'x'.repeat(300)]
    let n = 0
    const change = (text: string) => `${nasty[n++ % nasty.length] ?? ''} ${text.slice(0, 6)}`
    const hostile: BlankSheet = {
      ...sheet,
      title: 't'.repeat(300),
      machine: 'm'.repeat(300),
      procedure: '/JavaScript (app.alert)',
      sections: sheet.sections.map(({ title, pieces }) => ({
        title: change(title),
        pieces: pieces.map((one) => withTexts(one, change)),
      })),
    }
    const bytes = await sheetPdf(hostile, fonts, 'a4')
    const { pages } = await readPdf(bytes)
    const all = pages.map(textOf).join('')
    for (const text of ['9.5034in', ')Tj(', '<b>=1+1', '[U+4E2D][U+6587]']) expect(all).toContain(text)
    expect(all).not.toContain('4305.9')
    for (const { x, y } of pages.flat()) {
      expect(x).toBeLessThan(565)
      expect(y).toBeGreaterThan(15)
    }
    expect(bytes.toString('latin1')).not.toMatch(
      /\/(?:JS|URI|Launch|OpenAction|AA|EmbeddedFile|SubmitForm)\b/,
    )
  })

  it('parts a cell that no page holds', async () => {
    const cell = Array.from({ length: 900 }, (_, n) => `w${n}`).join(' ')
    const long: BlankSheet = {
      ...sheet,
      sections: [
        {
          title: 'long',
          pieces: [
            {
              is: 'boxes',
              columns: [
                { head: 'h', wide: 1 },
                { head: 'i', wide: 9 },
              ],
              rows: [[cell]],
            },
          ],
        },
      ],
    }
    const { pages } = await readPdf(await sheetPdf(long, fonts, 'letter'))
    const all = pages.flat().flatMap(({ text }) => text.split(' '))
    expect(Array.from({ length: 900 }, (_, n) => `w${n}`).filter((one) => !all.includes(one))).toEqual([])
    for (const { y } of pages.flat()) expect(y).toBeGreaterThan(15)
  })
})

describe('a sheet of many hold points', () => {
  it('has each in its frame, with every line of evidence, on either machine', async () => {
    const rg27 = shippedDefs('open-cylinder.yaml', 'rg-27')
    const made = blankOf(rg27, kitOf(rg27, '2026-03-14'), 'EXAMPLE', [])
    const { pages } = await readPdf(await sheetPdf(made, fonts, 'a4'))
    const all = pages.map(textOf).join('')
    const gates = rg27.steps.flatMap(({ step }) => (step.kind === 'gate' ? [step] : []))
    expect(gates.length).toBeGreaterThan(1)
    const asks = gates.flatMap(({ evidence }) =>
      evidence.flatMap((one) => inInk('ask' in one ? one.ask : [one.load, one.rating].join(' ')).split(' ')),
    )
    expect(asks.filter((word) => !all.includes(word))).toEqual([])
    expect(all.match(/Itkeepspeoplefrom:/g)).toHaveLength(gates.length)
  })
})
