// From a report to the text of each of its forms but PDF and the page. The command line loads it, and with it all of this folder, only when a
// report is asked for.
import { paperOf } from './paper-of.ts'
import type { Report } from './schema.ts'
import { reportCsv } from './write/csv.ts'
import { reportJson } from './write/json.ts'
import { reportText } from './write/text.ts'

export const TEXT_FORMS: Readonly<Record<'text' | 'csv' | 'json', (report: Report) => string>> = {
  text: (report) => reportText(paperOf(report)),
  csv: reportCsv,
  json: reportJson,
}

export { paperOf } from './paper-of.ts'
export { reportOf } from './report.ts'
export { reportText } from './write/text.ts'
