// From a report to its paper: the sections in their order, the worst before the rest and the log last.
import { markOf } from '../job/paper.ts'
import type { Paper } from './paper.ts'
import {
  correctionsSection,
  decisionsSection,
  filesSection,
  gatesSection,
  instrumentsSection,
  limitsSection,
  logSection,
  peopleSection,
  readingsSection,
} from './paper-body.ts'
import { changesSection, coverSection, exceptionsSection, verdictsSections } from './paper-front.ts'
import { practiceSections } from './paper-practice.ts'
import type { Report } from './schema.ts'

export function paperOf(report: Report): Paper {
  return {
    record: markOf(report),
    job: report.job,
    head: report.head,
    title: `${markOf(report)}: ${report.title}, ${report.machine.tag}`,
    at: report.log.at(-1)?.at ?? report.to,
    sections: [
      coverSection(report),
      ...practiceSections(report),
      exceptionsSection(report),
      ...verdictsSections(report),
      changesSection(report),
      readingsSection(report),
      gatesSection(report),
      peopleSection(report),
      instrumentsSection(report),
      limitsSection(report),
      decisionsSection(report),
      correctionsSection(report),
      filesSection(report),
      logSection(report),
    ],
  }
}
