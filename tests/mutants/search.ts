// What the search has to see through although it makes states few: each of these shows in one shape of job only.
import { of } from './mutant.ts'

export const SEARCH = [
  ...of('core/job/next', 'core/proof/shaped', [
    {
      rule: 'Who inspects waits for every gate of the step, and not for the first of them.',
      find: "return barrier(defs, state, at.placed, at.placed, [at.placed.id]) ?? { kind: 'point', step: at.placed }",
      into: "return (gatesBefore(defs, at.placed).slice(0, 1).every((g) => gateState(state, g.id).status === 'open') ? null : barrier(defs, state, at.placed, at.placed, [at.placed.id])) ?? { kind: 'point', step: at.placed }",
      by: 'a point of inspection behind two gates',
    },
    {
      rule: 'A gate that was never asked, in a part left out, holds as well as one beside it that is open.',
      find: "if (status === 'open') continue",
      into: "if (status === 'open' || (status === 'never' && gatesBefore(defs, placed).some((g) => gateState(state, g.id).status === 'open'))) continue",
      by: 'a gate in a part that is left out, beside one that is open',
    },
    {
      rule: 'A step whose rule nobody can answer, and that is to be waited at, is asked of nobody.',
      find: "if (at.state === 'hold') return { kind: 'held', step: at.placed, why: at.why }",
      into: "if (at.state === 'hold') return { kind: 'tell', step: at.placed }",
      by: 'a step behind a rule that nobody can answer',
    },
  ]),
  ...of('core/job/next', 'core/job/pending', [
    {
      rule: 'A reading that waits is asked about at its own step, behind its gates, and nowhere else.',
      find: 'if (state.doubt?.step === placed.id)',
      into: 'if (state.doubt !== null)',
      by: 'is asked about only at its own step, wherever the job stands',
    },
  ]),
  ...of('core/job/settle', 'core/job/pending', [
    {
      rule: 'A reading that waits is not used once the job goes back past its step.',
      find: 'if (waits !== null) return',
      into: 'if (waits?.step === null) return',
      by: 'is not used when the job goes back',
    },
  ]),
  ...of('core/job/voiding', 'core/proof/shaped', [
    {
      rule: 'What lets a hazard in shuts its gates, whether it was told or confirmed.',
      find: 'const done = lettingIn(defs, before, after, bodies)',
      into: "const done = lettingIn(defs, before, after, bodies).filter((s) => s.step.kind !== 'confirm')",
      by: 'a confirmed step that lets in what a told one let in before',
    },
  ]),
  ...of('core/job/admit-reading', 'core/proof/shaped', [
    {
      rule: 'A reading called out after its gate fell counts for nothing until it is confirmed, whichever reading it is.',
      find: "ok([{ type: 'reading.late', ...reading.value }])",
      into: "ok([{ type: 'reading.taken', ...reading.value }])",
      by: 'a late reading behind one that no instrument fits',
    },
  ]),
  ...of('core/job/voids', 'core/proof/shaped', [
    {
      rule: 'A correction voids a verdict whatever its word is.',
      find: '.filter((id) => (hanging.has(id) && loses(id))',
      into: ".filter((id) => !['REWORK', 'REPLACE'].includes(state.verdicts[id]?.verdict.result.verdict ?? ''))\n    .filter((id) => (hanging.has(id) && loses(id))",
      by: 'a verdict that sends the part back',
    },
  ]),
  ...of('node/kept-proofs', 'node/kept-proofs', [
    {
      rule: 'A proof that was kept is of the very program and files it was made of.',
      find: "add(add(createHash('sha256'), FORMAT), program)",
      into: "add(createHash('sha256'), FORMAT)",
      by: 'is another for each piece with',
    },
    {
      rule: 'A proof that was kept counts under its own name only.',
      find: 'named !== name || ',
      into: '',
      by: 'is found again by its name and by no other',
    },
    {
      rule: 'A folder that others can write to holds no proofs.',
      find: '(uid === process.getuid() && (mode & 0o022) === 0)',
      into: 'uid === process.getuid()',
      by: 'counts for nothing in a folder that others can write to, and is not put there',
    },
  ]),
  ...of('cli/search', 'cli/search', [
    {
      rule: 'Only what was found sound is kept as searched.',
      find: 'if (name !== null && isSound(one)) store.keep',
      into: 'if (name !== null) store.keep',
      by: 'keeps what is sound, and nothing else',
    },
  ]),
]
