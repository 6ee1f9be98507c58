// What the command line loads only when a PDF, or a page with its fonts, is asked for.

export { readFonts } from './fonts.ts'
export { htmlPage } from './page.ts'
export { PAPERS, type PaperSize } from './pages.ts'
export { reportPdf } from './pdf.ts'
export { sheetPdf } from './sheet-pdf.ts'
