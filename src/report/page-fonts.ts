// The fonts of a report in HTML, in the page itself: DejaVu, of each face only the signs that stand in the page. The same page gives
// the same bytes. A sign that the fonts have no picture of is left to the reader's own.
import subsetFont from 'subset-font'
import type { PageFonts } from '../core/report/write/style.ts'
import type { Fonts } from './fonts.ts'

/** Signs that no page has by itself and its style sheet writes on paper. */
const PAGE_EDGE = 'page of job check number 0123456789abcdef'

/** Screens of today need no hints of the font, which are half of its bytes; its types do not know that option yet. */
const CUT = { targetFormat: 'woff2', noHinting: true } as const

/** `page`: the whole of it as text; its markup is in it too, and adds nothing but plain letters. */
export async function pageFonts({ sans, bold, mono }: Fonts, page: string): Promise<PageFonts> {
  // In one order, so that the bytes hang on which signs there are and on nothing else.
  const signs = [...new Set(page + PAGE_EDGE)].sort().join('')
  const cut = async (font: Buffer) => {
    const subset = await subsetFont(font, signs, CUT)
    return subset.toString('base64')
  }
  return { sans: await cut(sans), bold: await cut(bold), mono: await cut(mono) }
}
