// A page of HTML with its fonts in it: what the command line loads only when one is asked for.
import type { Paper } from '../core/report/paper.ts'
import { reportHtml } from '../core/report/write/html.ts'
import { type Fonts, readFonts } from './fonts.ts'
import { pageFonts } from './page-fonts.ts'

/** The signs are those of the page as it is without fonts. */
export async function htmlPage(paper: Paper, fonts: Fonts = readFonts()): Promise<string> {
  return reportHtml(paper, await pageFonts(fonts, reportHtml(paper)))
}
