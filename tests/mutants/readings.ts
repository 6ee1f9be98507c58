// Readings and n/a: what waits, what is corrected, and an instrument found out of calibration.
import { of } from './mutant.ts'

export const READINGS = [
  ...of('core/job/admit-instrument', 'core/job/instrument', [
    {
      rule: 'What another instrument reads is never brought to 20 degC by the warmth of the one before it.',
      find: '...(warm.seqs.length === 0 ? {} : { temperatures: warm.seqs }),',
      into: '',
      by: 'takes the temperatures with it that were taken for what it read, and no other',
    },
  ]),
  ...of('core/job/admit-reading', 'core/sheet/standard-rows', [
    {
      rule: 'A gauge that nobody may use has no temperature that is taken.',
      find: 'if (none !== null) return refuse',
      into: "if (none === '') return refuse",
      by: 'further off waits before anything is measured: again, another gauge, or kept with a reason',
    },
  ]),
  ...of('core/job/admit-reading', 'core/job/readings', [
    {
      rule: 'A doubtful reading is kept only with a reason in words.',
      find: "if (input.choice !== 'kept') return",
      into: "if (input.choice !== 'kept' || input.why === undefined) return",
      by: 'is kept only with a reason, however it is brought',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'That a late reading was taken in time says nothing about its size: it is still doubted.',
      find: 'if (doubt === null) return ok([settled])',
      into: 'return ok([settled])',
      by: 'is still doubted for its size when confirmed',
      in: 'core/job/expiry',
    },
    {
      rule: 'An instrument found out of calibration reads nothing more, not by way of a correction either.',
      find: 'if (state.doubted[instrument.id] !== undefined)',
      into: 'if (state.doubted[instrument.id] === -1)',
      by: 'found out of calibration reads nothing more',
      in: 'core/job/fail-closed',
    },
  ]),
  ...of('core/job/fold-reading', 'core/job/readings', [
    {
      rule: 'A doubted reading counts for nothing unless it is kept.',
      find: "if (doubt === null || entry.choice !== 'kept') return settled",
      into: 'if (doubt === null) return settled',
      by: 'measures again or keys again, and the figure stays on record only',
    },
    {
      rule: 'A late reading counts for nothing unless it is confirmed.',
      find: 'if (late === null || !entry.kept) return settled',
      into: 'if (late === null) return settled',
      by: 'counts for nothing until confirmed behind the gate, and not at all if not',
      in: 'core/job/expiry',
    },
  ]),
  ...of('core/job/plausible', 'core/job/readings', [
    {
      rule: 'A reading with nothing on record to compare it with is doubted.',
      find: "if (reference === null) return 'without",
      into: "if (reference === null) return null\n  if (reference === null) return 'without",
      by: 'with nothing on record to compare it with is doubted',
      in: 'core/job/fail-closed',
    },
  ]),
  ...of('core/job/doubtful', 'core/sheet/standard-rows', [
    {
      rule: 'A gauge that is off on its standard measures nothing before somebody said what becomes of that.',
      find: 'if (off !== null) return offReason(off, size)',
      into: 'if (off !== null && off.off === 0) return offReason(off, size)',
      by: 'further off waits before anything is measured',
    },
  ]),
  ...of('core/job/likely', 'core/job/likely', [
    {
      rule: 'What may have been meant is shown only where it lies inside the window.',
      find: 'fits(one.si) &&',
      into: 'one.si !== keyed.si &&',
      by: 'what is shown lies in the window, differs by its slip, and is one or two',
    },
  ]),
  ...of('core/job/neighbours', 'core/job/doubtful', [
    {
      rule: 'A first reading far from all others of its step is doubted, on either side.',
      find: 'if (si >= least - far && si <= most + far) return null',
      into: 'if (si >= least - far) return null',
      by: 'is doubted though its window lets it through, and 9.503 is shown',
    },
  ]),
  ...of('core/job/temperature-gap', 'core/job/doubtful', [
    {
      rule: 'A temperature keyed in the other unit than those it belongs with is doubted.',
      find: 'if (mine !== undefined) return {',
      into: 'if (mine === null) return {',
      by: 'is doubted beside the first, with what would fit, and keyed again only after 2',
    },
    {
      rule: 'A temperature is doubted as well where the slip is in the one that stands.',
      find: "whose: theirs === undefined ? null : 'other'",
      into: "whose: theirs !== undefined ? null : 'other'",
      by: 'is doubted too where the slip was in the one that stands, and that is said',
    },
    {
      rule: 'Part and instrument far apart are doubted, whichever was keyed first.',
      find: 'if (nearest === undefined || isNear(nearest.si, reading.si)) return null',
      into: 'if (nearest !== undefined) return null',
      by: 'far from each other are doubted, whichever came first, with what would fit',
    },
  ]),
  ...of('core/job/swapped-pair', 'core/job/swapped-pair', [
    {
      rule: 'A pair of temperatures that is the other way round than before is doubted.',
      find: 'now * then < 0',
      into: 'now * then > 0',
      by: 'that is the other way round than before is doubted at its second, and names both',
    },
  ]),
  ...of('core/job/admit-change', 'core/job/doubtful', [
    {
      rule: 'A corrected temperature is held against those it belongs with, and its doubt stands on record.',
      find: '...(beside === null ? {} : { doubt: beside.why }),',
      into: '',
      by: 'put right with one that lies far off is doubted, kept in words alone, and on record',
    },
  ]),
  ...of('core/job/last-left', 'core/job/doubtful', [
    {
      rule: 'Wear that goes backwards by more than both errors is doubted.',
      find: 'return back <= last.u + u + NOISE ? null',
      into: 'return back >= last.u + u + NOISE ? null',
      by: 'smaller than it was left by more than both errors is doubted',
    },
    {
      rule: 'The very figure of last time on a fine gauge is doubted: it may have been copied.',
      find: 'return gauge !== undefined && isSetOnStandard(gauge) ?',
      into: 'return gauge === undefined ?',
      by: 'without a stated error or a way of wear tells nothing but the very figure',
    },
  ]),
  ...of('core/job/admit-not-applicable', 'core/job/corrections', [
    {
      rule: 'An n/a is taken only for the place that is asked, and for nothing but a reading.',
      find: 'if (place === null || place !== input.place) return notAsked()',
      into: 'if (place === null) return notAsked()',
      by: 'is taken at a doubt for the place doubted, and nowhere else',
      in: 'core/job/readings',
    },
    {
      rule: 'Where a lead signs for an n/a, nobody else does.',
      find: "if (person.role !== 'lead')",
      into: "if (person.role === 'trainee')",
      by: 'lead is a lead who is not doing the work, asked after the reason',
    },
    {
      rule: 'A reading that has no n/a is not entered as n/a.',
      find: "if (rule === 'never')",
      into: 'if (rule === undefined)',
      by: 'never is refused, at once and by the engine',
    },
    {
      rule: 'Where a lead signs for an n/a, it is a lead who is not doing the work.',
      find: 'if (person.id === state.doer)',
      into: "if (person.id === '')",
      by: 'lead is a lead who is not doing the work, asked after the reason',
    },
  ]),
  ...of('core/job/admit-instrument', 'core/job/instrument', [
    {
      rule: 'An instrument found out of calibration shuts the gates it was a test for.',
      find: 'return ok([doubted.value, ...gates])',
      into: 'return ok([doubted.value])',
      by: 'shuts the gates it was a test for, and calls people out',
    },
    {
      rule: 'After the job was closed a trainee does not sign for an instrument either.',
      find: "if (person.role === 'trainee')",
      into: 'if (person.role === undefined)',
      by: 'is signed, not by',
    },
  ]),
  ...of('core/job/fold-void', 'core/job/instrument', [
    {
      rule: 'A notice was for what has changed since: it falls with it.',
      find: 'notices: without(state.notices, voids)',
      into: 'notices: state.notices',
      by: 'asks a new notice after the step is done again',
      in: 'core/job/points',
    },
    {
      rule: 'Nothing stands that an instrument read before it was found out of calibration.',
      find: 'readings: voidReadings(state, falling, seq)',
      into: 'readings: state.readings',
      by: 'has every reading listed by number, and none of them stands',
    },
    {
      rule: 'A doubted reading of an instrument found out of calibration falls too.',
      find: 'doubt: state.doubt !== null && falling(state.doubt) ? null : state.doubt',
      into: 'doubt: state.doubt',
      by: 'takes a doubted or late reading of its own with it',
    },
    {
      rule: 'A closed job falls to HOLD when a verdict of it falls.',
      find: "closed: falls ? 'HOLD' : state.closed",
      into: 'closed: state.closed',
      by: 'is the one thing it still takes, and its outcome falls to HOLD',
    },
    {
      rule: 'A closed job that ended in STOP stays STOP, which is worse than HOLD.',
      find: "    state.closed !== 'STOP' &&\n",
      into: '',
      by: 'leaves STOP, which is worse than HOLD',
    },
  ]),
]
