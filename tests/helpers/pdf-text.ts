// A PDF as another program reads it: each piece of text with its place on its page.
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface Piece {
  readonly text: string
  readonly x: number
  readonly y: number
}

export async function readPdf(bytes: Buffer) {
  const task = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 })
  const doc = await task.promise
  const pages: Piece[][] = []
  const sizes: string[] = []
  for (let n = 1; n <= doc.numPages; n++) {
    const page = await doc.getPage(n)
    sizes.push(
      page.view
        .slice(2)
        .map((one) => Math.round(one))
        .join(' x '),
    )
    const { items } = await page.getTextContent()
    pages.push(
      items.flatMap((item) =>
        'str' in item && item.str.trim() !== ''
          ? [{ text: item.str, x: item.transform[4], y: item.transform[5] }]
          : [],
      ),
    )
  }
  const info = (await doc.getMetadata()).info as { Title?: string; CreationDate?: string }
  await task.destroy()
  return { pages, sizes, info }
}

/** Lines and columns are broken where the page has no room: what was written is told without its spaces. */
export const bare = (text: string) => text.replace(/\s+/g, '')
export const textOf = (page: readonly Piece[]) => bare(page.map(({ text }) => text).join(''))
