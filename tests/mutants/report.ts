// The report: it may not say more than the log, nor pass for another record, nor hide what changed.
import { of } from './mutant.ts'

export const REPORT = [
  ...of('core/report/parts/verdicts', 'core/report/changed', [
    {
      rule: 'A verdict that fell stands on the first page of a report as void.',
      find: 'verdict?.void !== true || applicability',
      into: 'verdict?.void === true || applicability',
      by: 'says that an instrument was found out of calibration, and that what it read is void',
    },
  ]),
  ...of('core/units/format', 'core/report/changed', [
    {
      rule: 'A measuring error is never made smaller by rounding.',
      find: 'Math.ceil(steps - UP_NOISE)',
      into: 'Math.floor(steps)',
      by: 'states the measuring error that the verdict used at its own places, rounded up',
    },
  ]),
  ...of('core/report/report', 'core/report/report', [
    {
      rule: 'A report of a job that is not closed says that it is OPEN.',
      find: 'state.closed === null ? openStanding(state, review) : review.standing',
      into: 'review.standing',
      by: 'of an open job says OPEN, and under STOP that too',
    },
    {
      rule: 'A report of a job under STOP says so on its first page.',
      file: 'core/report/parts/cautions',
      find: '...(openStop(state) === null ? [] :',
      into: '...(openStop(state) !== null ? [] :',
      by: 'of an open job says OPEN, and under STOP that too',
    },
    {
      rule: 'A hold point that fell stands as fallen in the report.',
      file: 'core/report/parts/gates',
      find: "closed: 'fallen',",
      into: "closed: 'complete',",
      by: 'tells what a hold point lost and what was no evidence',
    },
    {
      rule: 'A reading that was corrected stays in the report and is told from one that counts.',
      file: 'core/report/parts/readings',
      find: "stands(one) ? 'yes' : one.correctedBy !== null ? 'corrected' : 'void'",
      into: "'yes'",
      by: 'keeps the old beside the new where a reading was corrected',
    },
    {
      rule: 'Evidence in a report is never told younger than it was.',
      file: 'core/report/duration',
      find: 'Math.ceil(seconds)',
      into: 'Math.floor(seconds)',
      by: 'is never told shorter than it is',
    },
  ]),
  ...of('core/report/report', 'core/report/hostile', [
    {
      rule: 'What cannot be seen is in no text of a report.',
      find: "if (typeof value === 'string') return clean(value) as T",
      into: "if (typeof value === 'string') return value",
      by: 'is made harmless where the report is made: nothing unseen is in any text of it',
    },
    {
      rule: 'No cell of a report as CSV is a formula.',
      file: 'core/report/write/csv',
      find: 'const safe = FORMULA.test(text)',
      into: 'const safe = false',
      by: 'as CSV has no cell that a spreadsheet would work out, and says what was meant',
    },
    {
      rule: 'What somebody keyed is never markup in a report as HTML.',
      file: 'core/report/write/markup',
      find: '(sign) => SIGNS[sign] ?? sign',
      into: '(sign) => sign',
      by: 'as HTML has only the tags and attributes of the page itself',
    },
  ]),
  ...of('core/report/plot/bore', 'core/report/plots', [
    {
      rule: 'A limit that is too far off for a plot of a report is named on it.',
      find: '...farShapes(far, most, box),',
      into: '',
      by: 'has nominal and limits, and says of one that is far off where it lies',
    },
    {
      rule: 'The band of wear in a report is as wide as the hours that are told from it.',
      file: 'core/report/parts/plot-wear',
      find: 'half: Math.sqrt(Math.max(0, square))',
      into: 'half: Math.sqrt(Math.max(0, square)) / 2',
      by: 'meets the limit at the hours that are told',
    },
    {
      rule: 'Sizes in a plot of a report are drawn at their place on its scale.',
      find: 'px: [x(one.at), y(value)]',
      into: 'px: [x(one.at), y(value) - (one.at > 0.5 ? 3 : 0)]',
      by: 'has a point for each size that was judged, in the unit of the shop',
    },
  ]),
  ...of('core/report/write/html', 'report/html', [
    {
      rule: 'The word of the record stands on every line of a report as HTML.',
      find: 'function lineHtml({ record }',
      into: 'function lineHtml({ job: record }',
      by: 'has the word of the record on every line, in every row, under every plot',
    },
  ]),
  ...of('report/pages', 'report/pdf', [
    {
      rule: 'The word of the record stands beside every line of a report as PDF.',
      find: 'put(this.doc, this.#of.record, PAGE.left, base)',
      into: '',
      by: 'has the word beside every line',
    },
    {
      rule: 'No figure of a report as PDF is turned round by a name written from right to left.',
      file: 'report/ink',
      find: 'return text.split(TURNED).filter(',
      into: 'return [text].filter(',
      by: 'turns no figure round, loses no sign, and stays on its pages',
    },
  ]),
  ...of('node/out-file', 'node/out-file', [
    {
      rule: 'A report is written through no link.',
      find: "if (there === 'other') throw",
      into: 'if (false) throw',
      by: 'follows no link and takes the place of no folder, even where replacing was said',
    },
  ]),
]
