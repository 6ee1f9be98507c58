// What the command line loads only when a PDF is asked for.
export { readFonts } from './fonts.ts'
export { reportPdf } from './pdf.ts'
