// How a report in HTML looks: the ruled sheet, on a screen and on paper. No colour tells what a word does not. Its fonts are in the
// page where it is given them; the reader's own stand behind them for whatever signs they lack.
import type { Paper } from '../paper.ts'
import { styleString } from './markup.ts'

/** Inks on white, each at 4.5 to 1 or more (WCAG 2.2, 1.4.3; a test reckons them). */
export const PAGE_INKS = { ink: '#1a1a1a', quiet: '#595959', caution: '#8f1010', link: '#1f4e8c' } as const

/** Faces of the page, each woff2 in base64. */
export interface PageFonts {
  readonly sans: string
  readonly bold: string
  readonly mono: string
}

const SANS = "'Report sans', system-ui, sans-serif"
const MONO = "'Report mono', ui-monospace, monospace"

function faces({ sans, bold, mono }: PageFonts): string {
  const face = (family: string, weight: string, bytes: string) =>
    `@font-face { font-family: '${family}'; font-weight: ${weight}; src: url(data:font/woff2;base64,${bytes}) format('woff2'); }`
  return [
    face('Report sans', '400', sans),
    face('Report sans', '700', bold),
    face('Report mono', '400', mono),
    '',
  ].join('\n')
}

const SCREEN = `
:root { color: ${PAGE_INKS.ink}; background: #fff; font: 100%/1.45 ${SANS}; }
body { margin: 0; }
header.mark { position: sticky; top: 0; padding: .4rem 1rem; background: #fff; border-bottom: 2px solid ${PAGE_INKS.ink}; font-weight: bold; white-space: pre-wrap; overflow-wrap: anywhere; }
main { max-width: 64rem; margin: 0 auto; padding: 1rem; }
footer { max-width: 64rem; margin: 0 auto; padding: 1rem; color: ${PAGE_INKS.quiet}; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; margin: 1rem 0; }
h2 { font-size: 1.2rem; margin: 2.5rem 0 .6rem; padding-bottom: .2rem; border-bottom: 1px solid ${PAGE_INKS.ink}; }
a { color: ${PAGE_INKS.link}; }
.sheet p { display: grid; grid-template-columns: 5.6rem 3rem minmax(0, 1fr) auto; margin: 0; }
.sheet .of, .sheet .no { padding-right: .6rem; text-align: right; }
.sheet .of, td.of, th.of { color: ${PAGE_INKS.quiet}; font-size: .75rem; font-weight: normal; }
.sheet .of { padding-top: .2rem; }
.sheet .no { border-right: 1px solid ${PAGE_INKS.ink}; }
.sheet .tx { padding: .05rem .6rem; overflow-wrap: anywhere; unicode-bidi: isolate; }
.sheet .by { color: ${PAGE_INKS.quiet}; font-size: .8rem; padding-left: .6rem; }
.sheet .in1 .tx { padding-left: 1.8rem; }
.sheet .in2 .tx { padding-left: 3rem; }
.sheet .in3 .tx { padding-left: 4.2rem; }
.sheet .columns .tx { font: .8rem/1.5 ${MONO}; white-space: pre-wrap; }
.strong .tx, .caution .tx, .stamp .tx { font-weight: bold; }
.caution .tx { color: ${PAGE_INKS.caution}; }
.faint .tx { color: ${PAGE_INKS.quiet}; }
.sheet .stamp { margin: .6rem 0; }
.stamp .tx { border: 2px solid ${PAGE_INKS.ink}; padding: .4rem .8rem; justify-self: start; }
.table { overflow-x: auto; margin: 1rem 0; }
table { border-collapse: collapse; width: 100%; font-size: .85rem; }
caption { text-align: left; font-weight: bold; padding: .3rem 0; }
th, td { text-align: left; vertical-align: top; padding: .2rem .5rem; border-bottom: 1px solid #b8b8b8; font-weight: normal; overflow-wrap: break-word; unicode-bidi: isolate; }
.long { overflow-wrap: anywhere; }
thead th { font-weight: bold; border-bottom: 1px solid ${PAGE_INKS.ink}; }
thead th, .num { white-space: nowrap; }
.num { text-align: right; font-variant-numeric: tabular-nums; }
td.of, th.of { white-space: nowrap; border-right: 1px solid ${PAGE_INKS.ink}; }
@media screen and (max-width: 40rem) { .sheet p { grid-template-columns: 4.6rem 2.2rem minmax(0, 1fr); } .sheet .by { grid-column: 3; } }
figure { margin: 1.2rem 0; }
figure svg { width: 100%; max-width: 46rem; height: auto; font-family: ${SANS}; }
pre { margin: 0; font: .8rem/1.2 ${MONO}; }
figcaption { font-size: .85rem; max-width: 46rem; }
`

/** `page x of y` by the boxes at the edge of a page, which the newer browsers have; the others print without it. */
function onPaper({ record, job, head }: Paper): string {
  return `
@page { size: A4; margin: 18mm 14mm 20mm;
  @top-left { content: ${styleString(record)}; font: bold 9pt ${SANS}; }
  @top-right { content: "page " counter(page) " of " counter(pages); font: 8pt ${SANS}; }
  @bottom-left { content: ${styleString(`job ${job}`)}; font: 6pt ${SANS}; }
  @bottom-right { content: ${styleString(`check number ${head}`)}; font: 6pt ${MONO}; } }
@media print {
  :root { font-size: 9pt; }
  header.mark { position: static; }
  main, footer { max-width: none; padding: 0; }
  nav { display: none; }
  h2, caption { break-after: avoid; }
  tr, figure, .sheet p { break-inside: avoid; }
  .table { overflow: visible; }
}
`
}

export function pageStyle(paper: Paper, fonts: PageFonts | null): string {
  return `${fonts === null ? '' : faces(fonts)}${SCREEN}${onPaper(paper)}`
}
