// People: who signs, with what, who comes, goes and hands over, and which instrument they may pick.
import { of } from './mutant.ts'

export const PEOPLE = [
  ...of('core/job/refusals', 'core/job/reason', [
    {
      rule: 'A word of habit is no reason: none, n/a and ok release no STOP and keep no reading.',
      find: 'all.every((word) => EMPTY.has(word))',
      into: 'all.length === 0',
      by: 'is asked of a doubtful reading that is kept',
    },
  ]),
  ...of('core/job/authority', 'core/job/authority', [
    {
      rule: 'A mechanic of the crew is no authority for a concession.',
      find: "person !== undefined && person.role !== 'lead'",
      into: "person?.role === 'trainee'",
      by: 'is no mechanic of the crew',
    },
  ]),
  ...of('core/job/admit-desk', 'app/desk', [
    {
      rule: 'At a desk no figure that was read at the machine is changed.',
      find: '!OF_THE_MACHINE.includes(input.do)',
      into: "input.do !== 'observe'",
      by: 'is corrected by nobody at the desk',
    },
  ]),
  ...of('core/job/mispick', 'core/job/mispick', [
    {
      rule: 'An instrument that a figure was keyed of does not go back as picked by mistake.',
      find: '|| state.used.includes(here.instrument)',
      into: '',
      by: 'once it has read something, whatever became of that',
    },
    {
      rule: 'An instrument that words were said of does not go back as picked by mistake while they stand.',
      find: 'evidence.seat === here.seat',
      into: "evidence.seat === ''",
      by: 'nor while words that were said of it stand: those go back first',
    },
  ]),
  ...of('core/job/signature', 'core/job/signature', [
    {
      rule: 'Who has a PIN signs with it: initials alone are no signature.',
      find: 'if (signature.proved !== true)',
      into: 'if (signature.proved === null)',
      by: 'is refused without it for releasing a STOP and for a disposition',
    },
    {
      rule: 'A REAL record takes no initials alone.',
      find: "return state.record === 'REAL'",
      into: "return state.record === 'none'",
      by: 'by initials alone is none on a REAL record',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'After three wrong PINs that person has to wait.',
      find: 'missed.count < MISSES_ALLOWED',
      into: 'missed.count <= MISSES_ALLOWED',
      by: 'waits after three wrong ones, by name, and the right one does not count until then',
    },
    {
      rule: 'The right PIN does not count while its person has to wait.',
      find: 'if (wait !== null) {',
      into: 'if (wait !== null && signature.proved !== true) {',
      by: 'does not count while its person has to wait, though the PIN fitted',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A PIN keyed where initials are asked is not shown back.',
      find: '/^\\d{4,}$/.test(typed.trim())',
      into: '/^\\d{40,}$/.test(typed.trim())',
      by: 'is not shown back when it is keyed where initials are asked',
    },
    {
      rule: 'A wait after wrong PINs at a time that cannot be read is waited in full.',
      find: 'if (left <= 0) return null',
      into: 'if (!(left > 0)) return null',
      by: 'waits in full at a time that cannot be told',
      in: 'core/job/fail-closed',
    },
  ]),
  ...of('node/pins', 'node/pins', [
    {
      rule: 'No PIN fits but the one that was hashed.',
      find: 'return wanted.length >= 24 && timingSafeEqual(got, wanted)',
      into: 'return wanted.length >= 24 || timingSafeEqual(got, wanted)',
      by: 'fits its own hash and no other PIN does',
    },
    {
      rule: 'Each key has a salt of its own: two people with one PIN have two keys.',
      find: 'const salt = randomBytes(16)',
      into: 'const salt = Buffer.alloc(16)',
      by: 'is salted: the same PIN twice gives two hashes',
    },
    {
      rule: 'A key that is too cheap to work out fits no PIN.',
      find: 'if (ln < 10 || ln > 20',
      into: 'if (ln > 20',
      by: 'fits no key that is too cheap to work out, and so guessed in no time',
    },
  ]),
  ...of('cli/doubt-sign', 'cli/doubt-sign', [
    {
      rule: 'A wrong PIN keyed for a closed job goes on record in its log.',
      file: 'core/job/admit',
      find: "'remark', 'pin-missed', 'pin-fitted'] as const",
      into: "'remark', 'pin-fitted'] as const",
      by: 'goes on record in each log it was keyed for, and the right one after it is taken',
    },
    {
      rule: 'On a closed job too a person waits after three wrong PINs, and is asked no other.',
      find: '(session.snapshot().state.pinMisses[by]?.count ?? 0) >= MISSES_ALLOWED',
      into: '(session.snapshot().state.pinMisses[by]?.count ?? 0) > 99',
      by: 'three times in a row holds its person back, in every job of the folder',
    },
    {
      rule: 'Three wrong PINs in one job hold a person back in every other of the folder.',
      find: 'if (left !== null)',
      into: 'if (left === 0)',
      by: 'three times in a row holds its person back, in every job of the folder',
    },
    {
      rule: 'No PIN is asked unless a wrong one can go on record.',
      find: 'for (const file of files) jobs.push(openOne(file))',
      into: 'for (const file of files.slice(0, 1)) jobs.push(openOne(file))',
      by: 'is not asked where a log cannot be written',
    },
    {
      rule: 'Who may not sign for a closed job is told so before a PIN is asked.',
      find: 'one.refused = whyNot(one, signing)',
      into: 'one.refused = null',
      by: 'is not asked of who may not sign',
    },
  ]),
  ...of('app/session', 'app/session', [
    {
      rule: 'A PIN keyed where no talk is, is held against the key like any other.',
      find: 'const { shown, talk } = await prove(keyed)',
      into: 'const { shown, talk } = { shown: await take({ ...keyed.what, proved: true } as Input), talk: QUIET }',
      by: 'keyed where no talk is goes on record when it is a wrong one, and signs when it fits',
    },
  ]),
  ...of('core/job/admit-people', 'core/job/opening', [
    {
      rule: 'The tag is keyed whole: what it begins with is not near enough.',
      find: 'const isIt = isSameTag(typed, machine) ||',
      into: 'const isIt = machine.startsWith(typed.trim().toUpperCase()) ||',
      by: 'is cut short when it is long, and never taken for near enough',
    },
    {
      rule: 'An instrument is not used past the day its calibration is due.',
      find: 'if (now === null || !(dayOf(now) <= instrument.calibration.due))',
      into: 'if (now === null)',
      by: 'is refused when its calibration lapsed',
      in: 'core/job/gate-gas',
    },
    {
      rule: 'On a day that cannot be read no calibration stands.',
      find: 'if (now === null || !(dayOf(now)',
      into: 'if (now !== null && !(dayOf(now)',
      by: 'is fit for nothing on a day that cannot be read',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A gauge whose range does not take in the bore is not used for it.',
      find: 'if (!covers)',
      into: 'if (instrument.range === undefined)',
      by: 'is not for a bore that its range does not take in',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'An instrument found out of calibration is not picked again on this job.',
      find: 'if (state.doubted[instrument.id] !== undefined)',
      into: 'if (state.doubted[instrument.id] === -1)',
      by: 'leaves HOLD until all is measured and judged again, with another one',
      in: 'core/job/instrument',
    },
    {
      rule: 'A meter that needs air is not picked for the end of a purge.',
      find: 'unsuited(defs, input.seat, instrument) ?? unfitness',
      into: 'unfitness',
      by: 'is read only with a meter that reads without air',
      in: 'core/job/gas-inert',
    },
  ]),
  ...of('core/job/admit-crew', 'core/job/crew', [
    {
      rule: 'A trainee signs on to PRACTICE only.',
      find: "person.role !== 'trainee' || state.record === 'PRACTICE'",
      into: "person.role !== 'trainee' || state.record !== 'REAL'",
      by: 'is refused for a trainee, for who is on already, and without the PIN',
    },
    {
      rule: 'Who comes on voids the gas test: nobody tested with them there.',
      find: 'person.id, signed }, ...falls])',
      into: 'person.id, signed }])',
      by: 'voids the gas test, what was said in words and the witness once given, calls everybody out, and leaves the locks',
    },
    {
      rule: 'Who comes on voids the gas test also of a gate that is half asked.',
      find: 'if (old.length === 0) return []',
      into: "if (old.length === 0 || gateState(state, gate.id).status !== 'open') return []",
      by: 'voids the gas test and the words in mid-gate too',
    },
    {
      rule: 'Who comes on voids what was said in words: they were not among those counted clear.',
      find: "= ['gas', 'words']",
      into: "= ['gas']",
      by: 'is counted anew where people were counted clear, in a gate without gas too',
      in: 'core/job/voiding',
    },
    {
      rule: 'Who went off and comes back hangs their own lock anew.',
      find: ' || item.person === person.id',
      into: '',
      by: 'hangs a lock anew after going off: the one of before went with them',
      in: 'core/job/voiding',
    },
    {
      rule: 'The one at the keyboard does not sign off: somebody takes it over first.',
      find: 'if (person.id === state.doer) {',
      into: "if (person.id === '') {",
      by: 'takes a person off the job, with their PIN, and not the one at the keyboard',
    },
    {
      rule: 'A hand-over is signed by the one who goes, not only by the one who comes.',
      find: 'proved: input.fromProved }',
      into: 'proved: true }',
      by: 'is refused to oneself, to a trainee, to nobody, and without either PIN',
    },
    {
      rule: 'Nobody hands over to themselves.',
      find: "  if (person.id === state.doer)\n    return { code: 'same-person'",
      into: "  if (person.id === '')\n    return { code: 'same-person'",
      by: 'is refused to oneself, to a trainee, to nobody, and without either PIN',
    },
  ]),
  ...of('core/job/fold', 'core/job/crew', [
    {
      rule: 'A hand-over makes every gate fall: who comes has proved nothing.',
      find: "withPerson(strikeAll(state, 'handed-over'), entry.to)",
      into: 'withPerson(state, entry.to)',
      by: 'is signed by both, in order, and puts the other one at the keyboard with every gate fallen',
    },
    {
      rule: 'Leaving the job makes every gate fall at once.',
      find: "return { ...strikeAll(state, 'left'), left: true, people: [] }",
      into: 'return { ...state, left: true, people: [] }',
      by: 'fells everything at once, before anybody comes back',
      in: 'core/job/stop',
    },
    {
      rule: 'A job taken up after the program ended, in mid-gate too, proves everything again.',
      find: "...strikeAll(state, state.left ? 'left' : 'interrupted'),",
      into: '...state,',
      by: 'fells everything, asks who is there, and calls people out first',
      in: 'core/job/stop',
    },
    {
      rule: 'Who takes a job up says who they are: nobody keys on the initials of before.',
      find: 'doer: null,\n        people: [],\n        plateAgain',
      into: 'people: [],\n        plateAgain',
      by: 'of one person does not serve the next: who takes up gives it all anew',
      in: 'core/job/attacks',
    },
  ]),
]
