// What opens a gate, what makes it fall, who is called out then, and what lapses by time.
import { of } from './mutant.ts'

export const FALLING = [
  ...of('core/job/settle', 'core/job/gate', [
    {
      rule: 'A gate does not open before everybody who was let in has come out.',
      find: "if (status === 'open' || mustClear || missingItem",
      into: "if (status === 'open' || missingItem",
      by: 'still does not open before everybody was called out',
    },
    {
      rule: 'A gate opens only while everything that lapses with time still stands, the oldest of it too.',
      find: 'if (staleNow(defs, state, gate, now).length > 0) continue',
      into: '',
      by: 'never opens with a life of 0, not even in the moment of its last test',
      in: 'core/job/expiry',
    },
    {
      rule: 'An open gate shuts when somebody on the job has not answered for it.',
      find: 'if (short.length > 0) return short',
      into: '',
      by: 'shuts an open gate for the missing number, and only that and the witness are asked',
      in: 'core/job/voiding',
    },
  ]),
  ...of('core/job/fold-gate', 'core/job/stop', [
    {
      rule: 'Once people were let in they are called out, also when the gate falls a second time before they are.',
      find: 'mustClear: gate.mustClear || ',
      into: 'mustClear: ',
      by: 'does not forget that people were let in',
    },
    {
      rule: 'A gate that falls while it is open calls people out.',
      find: "gate.status === 'open' || (AT_THE_PLACE",
      into: '(AT_THE_PLACE',
      by: 'released, calls everybody out and asks the whole gate again',
    },
    {
      rule: 'A test that failed, or was made with a meter found wrong, calls out whoever stands at the place, gate open or not.',
      find: ' || (AT_THE_PLACE.includes(cause) && !nobodyIn)',
      into: '',
      by: 'calls people out also from a gate that is only half shown',
      in: 'core/job/instrument',
    },
    {
      rule: 'A test at a time that cannot be read counts as the oldest there is, never as fresh.',
      find: '?? Number.NEGATIVE_INFINITY',
      into: '?? Number.MAX_SAFE_INTEGER',
      by: 'counts a gas test at an unreadable time as stale',
      in: 'core/job/expiry',
    },
    {
      rule: 'A wait begun at a time that cannot be read never ends.',
      find: '?? Number.POSITIVE_INFINITY',
      into: '?? 0',
      by: 'begun at a time that cannot be read never ends',
      in: 'core/job/fail-closed',
    },
  ]),
  ...of('core/job/nobody-in', 'core/job/nobody-in', [
    {
      rule: 'What is said of nobody being in is never believed against a gate that is open.',
      file: 'core/job/fold-gate',
      find: "gate.status === 'open' || (AT_THE_PLACE.includes(cause) && !nobodyIn)",
      into: "(!nobodyIn && (gate.status === 'open' || AT_THE_PLACE.includes(cause)))",
      by: 'believes no entry that says nobody is in against a hold point that is open',
    },
    {
      rule: 'Evidence taken back calls people out where any hold point of the job was ever complete.',
      find: "status === 'never' &&",
      into: '',
      by: 'calls people out where another hold point',
    },
    {
      rule: 'Evidence taken back calls people out where anything was read or watched at the place.',
      find: 'FROM_AFAR.includes(evidence.kind) && ',
      into: '',
      by: 'calls people out of a hold point where something was read',
    },
  ]),
  ...of('core/job/voiding', 'core/job/voiding', [
    {
      rule: 'Work that lets a hazard in makes what proves that hazard fall, also when it did not go as it should.',
      find: '(objected(placed.id) || (!isComplete(before, placed) && isComplete(after, placed)))',
      into: '!isComplete(before, placed) && isComplete(after, placed)',
      by: 'shuts it too for work that did not go as it should, and the work is behind it again',
    },
    {
      rule: 'Work that lets a hazard in fells what is given of a gate that is only half asked.',
      find: "return status === 'open' || items.length > 0 ?",
      into: "return status === 'open' ?",
      by: 'fells what is half given, and nothing where nothing of it was',
    },
    {
      rule: 'Words said of one instrument fall when another is picked.',
      find: 'evidence.seat === seat.id',
      into: "evidence.seat === ''",
      by: 'fall when another is picked: it is tried before it is believed',
    },
    {
      rule: 'Words that nothing temporary is left in fall when something is placed again.',
      find: "evidence?.kind === 'words' && evidence.register === 'clear'",
      into: "evidence?.kind === 'gas'",
      by: 'shuts when something is placed behind it, and only that and the witness are asked again',
      in: 'core/job/register',
    },
    {
      rule: 'A space found under pressure takes the wait over it, and what was said after it.',
      file: 'core/job/evidence-instrument',
      find: '[item.key, ...contradicted(asked)]',
      into: '[item.key]',
      by: 'is watched again, with what was said after it, when a space it was about is found under pressure',
      in: 'core/job/evidence-kinds',
    },
    {
      rule: 'An instrument found unfit takes what it measured in every gate.',
      find: '.filter((key) => given[key]?.instrument === instrument)',
      into: '.filter((key) => given[key]?.instrument === instrument).slice(1)',
      by: 'found unfit while it is asked for voids what it measured, in every gate',
    },
  ]),
  ...of('core/job/lapse', 'core/job/expiry', [
    {
      rule: 'A gas test falls at the very moment its life is over.',
      find: 'if (!(now.ms < atMs)) return true',
      into: 'if (now.ms > atMs) return true',
      by: 'falls exactly at its life while the prompt waits',
    },
    {
      rule: 'A life that is no time above zero lets nothing stand.',
      find: 'return Number.isFinite(ms) && ms > 0 ? ms : 0',
      into: 'return ms',
      by: 'never opens with a life of',
    },
    {
      rule: 'Words that have a life lapse by it.',
      find: "if (evidence.kind === 'words' && evidence.life !== undefined) return usable(evidence.life.si)",
      into: '',
      by: 'at one moment fall together and are named',
      in: 'core/job/voiding',
    },
    {
      rule: 'A measured value lapses by its own life.',
      find: "if (evidence.kind === 'measured') return usable(evidence.life.si)",
      into: '',
      by: 'lapses by its own life, alone with the witness, and says so',
      in: 'core/job/evidence-kinds',
    },
    {
      rule: 'A lift plan stands for its day on the wall calendar only.',
      find: "return evidence.kind === 'lift' && given[key]?.at.slice(0, 10) !== dayOf(now)",
      into: 'return false',
      by: 'is of another day when the wall clock says so, whatever its offset was',
      in: 'core/job/evidence-kinds',
    },
    {
      rule: 'When one gas test falls all of that gate fall, as they are read in an order.',
      find: "    (evidence.kind === 'gas' && isGas) ||\n",
      into: '',
      by: 'puts a failure on record, fells all gas of the gate, keeps the locks, and calls people out',
      in: 'core/job/gate-gas',
    },
    {
      rule: 'The witness falls with whatever they vouched for.',
      find: "    evidence.kind === 'witness' ||\n",
      into: '',
      by: 'wants everybody out in words first, then only gas and the witness',
    },
    {
      rule: "A lift plan falls whole: it is one sling's.",
      find: "    (evidence.kind === 'lift' && felled.includes(evidence)) ||\n",
      into: '',
      by: 'falls whole with any part of it',
      in: 'core/job/fail-closed',
    },
  ]),
]
