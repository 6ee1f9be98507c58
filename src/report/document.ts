// A PDF as bytes: fonts embedded, nothing in it but what it is given. The same content gives the same bytes: its only day is one it
// is told, and it is not packed, as packing differs from one version of Node to the next.
import PDFDocument from 'pdfkit'
import type { Fonts } from './fonts.ts'
import type { Doc } from './ink.ts'
import { PAPERS, type PaperSize } from './pages.ts'

export interface About {
  readonly title: string
  readonly subject: string
  /** Milliseconds since 1970: the day in its properties. */
  readonly day: number
}

export async function writtenPdf(
  about: About,
  fonts: Fonts,
  size: PaperSize,
  write: (doc: Doc) => void,
): Promise<Buffer> {
  const day = new Date(about.day)
  const doc = new PDFDocument({
    size: PAPERS[size].size,
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    compress: false,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    // No font of the library's own is to be loaded before ours are named.
    font: '',
    info: {
      Title: about.title,
      Subject: about.subject,
      Producer: 'Barover',
      Creator: 'Barover',
      CreationDate: day,
      ModDate: day,
    },
  })
  for (const [name, bytes] of Object.entries(fonts)) doc.registerFont(name, bytes)
  const chunks: Buffer[] = []
  const whole = new Promise<Buffer>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk))
    doc.on('end', () => resolve(Buffer.concat(chunks)))
    doc.on('error', reject)
  })
  write(doc)
  doc.end()
  return whole
}
