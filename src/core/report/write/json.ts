// A report for other programs: the model itself, on one line.
import type { Report } from '../schema.ts'

export function reportJson(report: Report): string {
  return `${JSON.stringify(report)}\n`
}
