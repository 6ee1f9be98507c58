// From a report to the text of each of its forms but PDF. The command line loads it, and with it all of this folder, only when a
// report is asked for.
import { paperOf } from './paper-of.ts'
import type { Report } from './schema.ts'
import { reportCsv } from './write/csv.ts'
import { reportHtml } from './write/html.ts'
import { reportJson } from './write/json.ts'
import { reportText } from './write/text.ts'

export const TEXT_FORMS: Readonly<Record<'text' | 'html' | 'csv' | 'json', (report: Report) => string>> = {
  text: (report) => reportText(paperOf(report)),
  html: (report) => reportHtml(paperOf(report)),
  csv: reportCsv,
  json: reportJson,
}

export { paperOf } from './paper-of.ts'
export { reportOf } from './report.ts'
export { reportHtml } from './write/html.ts'
export { reportText } from './write/text.ts'
