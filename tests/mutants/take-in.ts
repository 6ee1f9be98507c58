// A machine record changed while a job is under way: who may, what is refused, and that nothing of the old one stands.
import { of } from './mutant.ts'

export const TAKE_IN = [
  ...of('core/job/fold-record', 'core/job/take-in', [
    {
      rule: 'Every hold point falls with a changed machine record, whatever its entry names.',
      find: "strikeWhole(state, 'record')",
      into: 'state',
      by: 'makes all of it fall also by an entry that names nothing',
    },
    {
      rule: 'Every verdict is void with it, whatever its entry names.',
      find: '[...Object.keys(state.verdicts), ...entry.voids]',
      into: '[...entry.voids]',
      by: 'makes all of it fall also by an entry that names nothing',
    },
    {
      rule: 'Every decision is void with it, also one about a finding that stays.',
      find: 'all(after.dispositions, (one) => ({ ...one, void: true }))',
      into: 'after.dispositions',
      by: 'keeps a finding and voids what was decided about it',
    },
    {
      rule: 'Whether an instrument suits the machine is asked of the new record.',
      find: '    seats: {},\n',
      into: '',
      by: 'makes every verdict and hold point fall by name',
    },
    {
      rule: 'A reading that waited is asked anew: its doubt was by the old record.',
      find: '    doubt: null,\n',
      into: '',
      by: 'asks a reading anew that waited to be settled',
    },
  ]),
  ...of('core/job/admit-record', 'core/job/take-in', [
    {
      rule: 'A changed machine record is taken in by a lead alone.',
      find: "if (person.role !== 'lead')",
      into: "if (person.role === 'trainee')",
      by: 'by a mechanic',
    },
    {
      rule: 'Whoever took a reading that stands does not say by which record it is judged.',
      find: 'if (!readings.some(',
      into: 'if (person.id !== null || !readings.some(',
      by: 'by a lead whose reading stands, and not by one who only keyed or decided',
    },
    {
      rule: 'The record of another machine does not take the place of one.',
      find: 'if (now.machine !== was.machine)',
      into: "if (now.machine === '')",
      by: 'of another tag',
    },
    {
      rule: 'Nor one that names another compressor, by which jobs beside each other know their machine.',
      find: 'if (now.compressor !== was.compressor)',
      into: "if (now.compressor === '')",
      by: 'of another compressor',
    },
    {
      rule: 'An invented record does not take the place of a real one, nor the other way about.',
      find: 'if ((now.invented === true) !== (was.invented === true))',
      into: 'if (now.invented === null)',
      by: 'of another kind',
    },
    {
      rule: 'What is checked when a job is opened is checked when a record is taken in.',
      find: 'if (shut !== null) return { ok: false, error: shut }',
      into: "if (shut?.code === '') return { ok: false, error: shut }",
      by: 'that the procedure is not for',
    },
    {
      rule: 'The gates of a REAL job are proved by the changed record as by the first one.',
      find: '() => unproved)',
      into: '() => null)',
      by: 'for a REAL job whose gates are not proved by it',
    },
    {
      rule: 'No point is lost from the record while a lock is on there: nobody would be asked to take it off.',
      find: 'if (hung !== null) return { ok: false, error: hung }',
      into: "if (hung?.code === '') return { ok: false, error: hung }",
      by: 'that loses a point where a lock is still on',
    },
    {
      rule: 'What is answered about the machine record is signed or given anew for a changed one.',
      find: "'by_record' in step &&",
      into: "'by_records' in step &&",
      by: 'keeps an answer about the record and voids what was signed for it',
    },
    {
      rule: 'A job that was cut off is left before its record is changed: nobody is on it.',
      find: "state.left ? [] : [{ type: 'job.left' }]",
      into: '[]',
      by: 'is taken in under a STOP too, which stands',
    },
  ]),
  ...of('core/job/plausible', 'core/job/take-in', [
    {
      rule: 'A reading that is beyond belief by a changed record, and that nobody kept, holds its verdict.',
      find: 'return reading.keptBecause === null ? implausible(defs, placed, reading) : null',
      into: 'return null',
      by: 'holds the verdict where a reading that nobody kept is beyond belief by it',
    },
  ]),
  ...of('core/job/gate', 'core/job/take-in', [
    {
      rule: 'A lock at a point that the record has no more is still told of.',
      find: 'return known ?? itemAtFormerPoint(defs, evidence, key, behind)',
      into: 'return known',
      by: 'knows what was keyed at one that it has no more',
    },
  ]),
  ...of('core/job/editions', 'core/job/record-changes', [
    {
      rule: 'What lies before a changed record is read by the one of its time.',
      find: 'editions.findLast(({ from }) => from <= seq)',
      into: 'editions.at(-1)',
      by: 'are those of the opening up to the entry that takes a record in',
    },
    {
      rule: 'Each record that was taken in takes the place of the one before.',
      find: "file.role === 'machine' ? record : file",
      into: 'file',
      by: 'come of the files of the opening with each record put in the place of the one before',
    },
  ]),
  ...of('node/other-jobs', 'node/other-jobs', [
    {
      rule: 'Another job is read by the record it has taken in.',
      find: "if (entry.type === 'record.taken-in') {",
      into: "if (entry.type === 'job.opened') {",
      by: 'is read by the machine record it has taken in',
    },
  ]),
]
