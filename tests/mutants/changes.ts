// What is changed, and what hangs on it and falls; names that would make two things one.
import { of } from './mutant.ts'

export const CHANGES = [
  ...of('core/talk/correct', 'core/talk/hear', [
    {
      rule: 'Nothing is asked for a change that cannot be taken under STOP.',
      find: "return openStop(state) === null ? null : 'STOP is open",
      into: "return state.seq >= 0 ? null : 'STOP is open",
      by: 'and correct ask nothing where nothing may be changed: under STOP, and while a reading waits',
    },
    {
      rule: 'Nor for one while a reading waits.',
      find: 'if (!isPending(state)) return null',
      into: 'if (state.seq >= 0) return null',
      by: 'and correct ask nothing where nothing may be changed: under STOP, and while a reading waits',
    },
  ]),
  ...of('core/talk/heard', 'core/talk/hear', [
    {
      rule: 'Whoever did it, or has not the role, is refused as witness before a PIN is asked.',
      find: 'if (refusal !== null) return refused(refusal,',
      into: "if (refusal?.code === 'none') return refused(refusal,",
      by: 'who is at the keys is refused before any PIN is asked; somebody else is asked for it',
    },
  ]),
  ...of('core/job/admit-change', 'core/job/corrections', [
    {
      rule: 'While a reading waits to be settled nothing else is changed.',
      find: 'return state.doubt !== null || state.late !== null',
      into: 'return state.late !== null',
      by: 'holds back going back and corrections until it is settled',
      in: 'core/job/pending',
    },
    {
      rule: 'A reading that was corrected is not corrected again: its chain stays one line.',
      find: 'if (old.correctedBy !== null)',
      into: 'if (old.correctedBy === old.seq)',
      by: 'of a corrected reading is refused, and so is one of no reading',
      in: 'core/job/readings',
    },
    {
      rule: 'A void reading is asked again, not corrected.',
      find: 'if (!stands(old))',
      into: 'if (old.seq < 0)',
      by: 'cannot have its readings corrected',
      in: 'core/job/instrument',
    },
    {
      rule: 'A correction has to be believable.',
      find: 'if (doubt !== null)',
      into: "if (doubt === '')",
      by: 'is refused: ',
      in: 'core/job/readings',
    },
    {
      rule: 'Evidence found wrong takes the witness who vouched for it.',
      file: 'core/job/falls-with',
      find: 'items: fallsWith(defs, state, gate, all)',
      into: 'items: all',
      by: 'voids with a lock what was tried under it, and the witness who vouched for it',
    },
    {
      rule: 'A corrected reading voids, by name, what hung on it.',
      find: '      voids: wouldVoid(defs, state, old.step),\n',
      into: '      voids: [],\n',
      by: 'adds, points back, and voids verdict and disposition by name, which are given anew',
      in: 'core/job/readings',
    },
  ]),
  ...of('core/job/fold', 'core/job/corrections', [
    {
      rule: 'A corrected finding voids what hung on it.',
      find: 'return found(voided(state, entry.voids), entry)',
      into: 'return found(state, entry)',
      by: 'falls with a finding that is corrected and a task gone back to',
      in: 'core/job/points',
    },
    {
      rule: 'Going back to a step voids what hung on it.',
      find: 'return voided(state, [entry.step, ...entry.voids])',
      into: 'return voided(state, [entry.step])',
      by: 'voids what was done inside when the answer it hangs on is taken back',
      in: 'core/job/parts',
    },
  ]),
  ...of('core/job/values', 'core/job/hangs-on', [
    {
      rule: 'A rule with anything missing is unknown as a whole, whatever the rest says.',
      file: 'core/rules/expression',
      find: 'if (because.length > 0) return',
      into: 'if (because.length === names.length) return',
      by: 'is unknown for every set of names missing, and known for none',
      in: 'core/rules/unknown',
    },
    {
      rule: 'A verdict on HOLD is no value for a rule, but for whether it is on HOLD.',
      file: 'core/rules/expression',
      find: 'notUnknown.has(name) && taken === unknownWordOf(scope, name)',
      into: 'notUnknown.has(name) && taken === name',
      by: 'answers whether it is on HOLD, and no other question',
      in: 'core/rules/unknown',
    },
    {
      rule: 'A verdict hangs on the datum and the counterbore.',
      find: 'return [...needed, ...optional, ...observed]',
      into: 'return [...needed]',
      by: 'hangs on every reading it was made from, one by one, so that none is changed behind its back',
    },
    {
      rule: 'A disposition hangs on the verdict it is about.',
      find: '? [scope + step.about, ...names]',
      into: '? names',
      by: 'hangs on its verdict, also where no condition names it',
      in: 'core/job/hangs-on',
    },
    {
      rule: 'A measurement with a place missing has no value: a rule that rests on it is unknown.',
      find: 'if (first === undefined || quantities.length < all.length) return undefined',
      into: 'if (first === undefined) return undefined',
      by: 'is unknown with one place not measured, whatever the others say, and the job holds where it says so',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A void verdict has no value for a rule.',
      find: 'return verdict.void ? undefined : verdict.verdict.result.verdict',
      into: 'return verdict.verdict.result.verdict',
      by: 'is told by a verdict that stands, and by none that is void or was skipped',
    },
    {
      rule: 'A step that was skipped has no value, whatever was read before it came to be skipped.',
      find: 'if (placed === undefined || !applies(placed)) return undefined',
      into: 'if (placed === undefined) return undefined',
      by: 'is told by a verdict that stands, and by none that is void or was skipped',
    },
  ]),
  ...of('core/definition/judge-reads', 'core/job/hangs-on', [
    {
      rule: 'A verdict hangs on the set-check after: when that is corrected, the verdict is void.',
      find: 'i.set_before, i.set_after,',
      into: 'i.set_before,',
      by: 'hangs on every reading it was made from, one by one, so that none is changed behind its back',
    },
    {
      rule: 'A verdict hangs on the temperatures of part and instrument.',
      find: '...i.part_temperature, ',
      into: '',
      by: 'hangs on every reading it was made from, one by one, so that none is changed behind its back',
    },
  ]),
  ...of('core/job/voids', 'core/job/points', [
    {
      rule: 'What was done in a branch that is left falls by name.',
      find: 'if (left.length === 0) return []',
      into: 'return []',
      by: 'falls by name when a correction of the reading leaves it',
      in: 'core/job/corrections',
    },
    {
      rule: 'The inspection point of a step falls when that step is changed.',
      find: ' || (stepIds.includes(id) && hasPoint(state, id)))',
      into: ')',
      by: 'falls by name with what it covered, and is asked again',
    },
  ]),
  ...of('core/job/sound', 'core/job/parts', [
    {
      rule: 'Two things of one name are refused: one answer would count for both.',
      find: 'if (twice !== undefined)',
      into: "if (twice === '')",
      by: 'refuses ids that come to the same, so that one gate could stand open for another',
    },
    {
      rule: 'A name that every object has already is refused: it would be answered before anybody came.',
      find: 'if (taken !== undefined)',
      into: "if (taken === '')",
      by: 'refuses ids that every object has: such a step would be done, such evidence given, before anybody came',
    },
  ]),
]
