// Judging: what a verdict needs, which limit counts, and what the whole comes to.
import { of } from './mutant.ts'

export const JUDGING = [
  ...of('core/job/limits', 'core/job/judging', [
    {
      rule: "Two of the machine's own limits for one thing contradict each other: then there is none.",
      find: 'if (limit === undefined || own.length > 1) return null',
      into: 'if (limit === undefined) return null',
      by: 'with two limits of the machine for one thing: no limit, and no fall-back either',
    },
    {
      rule: 'The fall-back set never speaks where the machine has limits of its own.',
      find: 'if (fallback === undefined || defs.machine.limits.some((l) => l.characteristic === characteristic))',
      into: 'if (fallback === undefined)',
      by: 'with two limits of the machine for one thing: no limit, and no fall-back either',
    },
    {
      rule: 'A service that the record does not tell takes no limit that depends on it.',
      find: "return mass === undefined || differential === undefined ? null : 'ordinary'",
      into: "return 'ordinary'",
      by: 'with the difference across the rings unknown',
    },
    {
      rule: 'Two rows of a book for one thing are no limit.',
      find: 'if (row === undefined || rows.length > 1) return null',
      into: 'if (row === undefined) return null',
      by: 'with two rows of the book for one thing: no limit',
    },
  ]),
  ...of('core/job/set-check', 'core/job/judging', [
    {
      rule: 'A set-check made on another gauge than the one that measured is none.',
      find: '  if (result.readings.some((r) => r.instrument !== gauge.id)) return null\n',
      into: '',
      by: 'with a set-check made on another gauge than the one that measured',
    },
  ]),
  ...of('core/job/figure-reads', 'core/job/figure-step', [
    {
      rule: 'What an instrument that is set on a standard measured for a figure counts only between two set-checks.',
      find: 'const bare = used.find((one) => isSetOnStandard(one) && ',
      into: 'const bare = used.find((one) => false && isSetOnStandard(one) && ',
      by: 'a micrometer that nobody checked',
    },
  ]),
  ...of('core/job/figure-at-20', 'core/job/figure-step', [
    {
      rule: 'A set-check that is off holds every figure of the sizes between.',
      find: 'check.allowedM + 1e-9',
      into: 'check.allowedM + 1',
      by: 'a set-check after that is off',
    },
    {
      rule: 'Sizes are not brought to 20 degC with an expansion that is not on record.',
      find: 'if (own === undefined) holds.push',
      into: 'if (false) holds.push',
      by: 'no expansion of the rod on record',
    },
  ]),
  ...of('core/metrology/figure-judge', 'core/metrology/figure-judge', [
    {
      rule: 'A figure that could not be worked out is HOLD.',
      find: "if (value === null) return holdJudgement(unknown.length > 0 ? unknown : ['it could not be worked out'])",
      into: 'if (value === null) return judgeAgainst({ value: 0, expandedU: 0, k, resolution: 1e-6, limit, simpleAcceptance })',
      by: 'no value and no reason',
    },
    {
      rule: 'The limit of one characteristic never serves for another.',
      find: 'if (limit !== null && limit.characteristic !== characteristic)',
      into: 'if (false)',
      by: 'the limit of something else',
    },
  ]),
  ...of('core/metrology/propagate', 'core/metrology/propagate', [
    {
      rule: 'A figure that moves with a reading of unstated error has no stated error.',
      find: 'expandedU: isUnstated ? null : Math.sqrt(variance)',
      into: 'expandedU: Math.sqrt(variance)',
      by: 'is unknown where a reading that moves the figure has no stated error',
    },
  ]),
  ...of('core/job/limits', 'core/job/figure-step', [
    {
      rule: 'Without a limit on record there is none.',
      find: 'if (limit !== null) limits[characteristic] = limit',
      into: "limits[characteristic] = limit ?? { characteristic, bound: 'at-most', value: 1, unit: 'in', inclusive: true, beyond: 'REWORK', source: 'x', approvedBy: 'x', since: 'x', from: 'machine', book: 'x' }",
      by: 'no limit',
    },
  ]),
  ...of('core/job/judge-step', 'core/job/judging', [
    {
      rule: 'The counterbore, larger by design, is never the datum of wear.',
      find: 'const { datum, why } = recordedDatum(defs, diameters)',
      into: "const { datum: told, why } = recordedDatum(defs, diameters)\n  const worn = defs.machine.bore.counterbore\n  const datum = told ?? (worn === undefined ? null : { from: 'as-bored record' as const, singleM: worn.si })",
      by: 'is the strip, else the record, else none; never the counterbore',
    },
    {
      rule: 'A difference is judged with the measuring error of a difference.',
      find: 'differenceU: u === null ? null : expandedOfDifference(u)',
      into: 'differenceU: u',
      by: 'of a difference is that of a difference, which is larger',
    },
  ]),
  ...of('core/job/same-bore', 'core/job/bore-datum', [
    {
      rule: 'No wear is told across a rebore or a new liner.',
      find: "renewed.includes('bore') || renewed.includes('liner')",
      into: 'renewed.length > 9',
      by: 'is never of before a rebore or a new liner: what was left then begins it',
    },
    {
      rule: 'No wear is told across a change of material.',
      find: 'return material !== undefined && plain(material) !== plain(machine.bore.material)',
      into: 'return material === machine.machine',
      by: 'is never of another material',
    },
  ]),
  ...of('core/job/bore-datum', 'core/job/bore-datum', [
    {
      rule: 'A size as bored without a day is not used once the bore was renewed or cut.',
      find: 'if (cut !== null && bored.day === undefined)',
      into: 'if (false)',
      by: 'as bored is not used where it may be of before that, and it is said why',
    },
    {
      rule: 'A bore that may have been cut on this job is told from no record.',
      find: "if (diameters.step.stage === 'as_left')",
      into: 'if (false)',
      by: 'is none for what is left on this job',
    },
  ]),
  ...of('core/job/bore-facts', 'core/job/judging', [
    {
      rule: 'A place whose repeats never agreed is missing, and what needs it is HOLD.',
      file: 'core/metrology/repeats',
      find: "return { state: values.length >= rule.atMost ? 'unsettled' : 'more', spread }",
      into: "return { state: values.length >= rule.atMost ? 'settled' : 'more', value: median(sorted), spread }",
      by: 'stop after four that do not agree, and the verdict is HOLD and says where',
      in: 'core/job/readings',
    },
  ]),
  ...of('core/job/temperature', 'core/job/judging', [
    {
      rule: 'A temperature known only before is not known.',
      find: 'if (result.si === null) return null',
      into: 'if (result.si === null) continue',
      by: 'with the temperature after not taken: known only before is not known',
    },
  ]),
  ...of('core/job/outcome', 'core/job/disposition', [
    {
      rule: 'A void verdict is HOLD in the outcome of the whole.',
      find: "return verdict === undefined || verdict.void ? 'HOLD'",
      into: "return verdict === undefined ? 'HOLD'",
      by: 'is HOLD with nothing judged or a void verdict, STOP under STOP',
    },
    {
      rule: 'A job that ends under STOP comes to STOP, whatever was judged.',
      find: "if (openStop(state) !== null) return 'STOP'",
      into: '',
      by: 'is HOLD with nothing judged or a void verdict, STOP under STOP',
    },
    {
      rule: 'A job that judges nothing is HOLD where readings never agreed.',
      find: "unsettledPlaces(defs, state).length === 0 ? 'NONE' : 'HOLD'",
      into: "'NONE'",
      by: 'names each place that came to HOLD, and is HOLD itself where nothing was judged',
      in: 'core/sheet/closing',
    },
  ]),
  ...of('core/metrology/verdict', 'core/metrology/verdict', [
    {
      rule: 'Nothing judged is HOLD, never ACCEPT.',
      find: "VERDICT_WORDS[most] ?? 'HOLD'",
      into: "VERDICT_WORDS[most] ?? 'ACCEPT'",
      by: 'nothing judged is HOLD',
    },
    {
      rule: 'HOLD outranks REPLACE: what could not be judged is not settled by what could.',
      find: "  'REPLACE',\n  'HOLD',\n",
      into: "  'HOLD',\n  'REPLACE',\n",
      by: 'severity runs in the stated order',
    },
  ]),
]
