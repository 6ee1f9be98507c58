// Gates: what stands before a hazard, what a gate asks for, and what is taken for it.
import { of } from './mutant.ts'

export const GATES = [
  ...of('core/job/next', 'core/job/gate', [
    {
      rule: 'A step that faces a hazard no gate holds back is never presented.',
      find: 'if (bare.length > 0)',
      into: 'if (bare.length > 99)',
      by: 'never presents a step whose hazard no gate holds',
    },
    {
      rule: 'A gate that fell holds people back like one that never opened.',
      find: "if (status === 'open') continue",
      into: "if (status !== 'never') continue",
      by: 'wants everybody out in words first, then only gas and the witness',
      in: 'core/job/expiry',
    },
    {
      rule: 'Coming out is asked before anything else, also before a gate that the fallen one stands behind.',
      find: "if (mustClear) return { kind: 'clear', gate, before }\n    if (waiting",
      into: 'if (waiting',
      by: 'opens the gate that a gate itself stands behind first, also when asked again for a later step',
    },
    {
      rule: 'Two gates that wait for each other hold: neither is asked, and nothing behind them.',
      find: 'if (waiting.includes(gate.id))',
      into: 'if (waiting.includes(gate.id)) continue\n    if (waiting.includes(gate.id))',
      by: 'holds two gates that wait for each other',
    },
    {
      rule: 'A step that is only to be told waits for its gates like any other.',
      find: 'if (shut !== null) return shut',
      into: "if (shut !== null && placed.step.kind !== 'tell') return shut",
      by: 'a tell that exposes people waits for its gate like any other step',
      in: 'core/job/attacks',
    },
    {
      rule: 'Who inspects stands where the work was done, so its gates stand before the signing of a point.',
      find: "return barrier(defs, state, at.placed, at.placed, [at.placed.id]) ?? { kind: 'point', step: at.placed }",
      into: "return { kind: 'point', step: at.placed }",
      by: 'stands behind the gates of its step',
      in: 'core/job/points',
    },
    {
      rule: 'A reading that waits to be settled is asked about behind the gates of its own step, wherever the job stands.',
      find: 'if (shutOwn !== null) return shutOwn',
      into: '',
      by: 'is asked about only behind the gates of its own step, wherever the job stands',
      in: 'core/job/pending',
    },
    {
      rule: 'A step of which nobody knows whether it is needed, and that says hold, holds the job.',
      find: "if (applies === 'skip') continue",
      into: "if (applies !== 'do') continue",
      by: 'is unknown with one place not measured, whatever the others say, and the job holds where it says so',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A rule that cannot be told does what the step says for unknown, and is not simply false.',
      find: "outcome === 'unknown' ? p.step.when.unknown : outcome",
      into: 'outcome',
      by: 'unknown is done where it says do',
      in: 'core/job/fail-closed',
    },
    {
      rule: "A part's condition is a condition of every step in it.",
      find: 'for (const p of [...placed.inside, placed])',
      into: 'for (const p of [placed])',
      by: 'skips all its steps, or does them with their own conditions',
      in: 'core/job/parts',
    },
    {
      rule: 'The tag is keyed from the plate before anything is done: the wrong machine is found first.',
      find: "if (!state.machineNamed) return { kind: 'tag' }",
      into: '',
      by: 'that is wrong goes on record, and is asked again',
      in: 'core/job/opening',
    },
  ]),
  ...of('core/job/gate', 'core/job/gate', [
    {
      rule: 'A gate does not hold back a hazard that its own tests face: another gate has to.',
      find: 'const others = gatesOf(defs).filter((gate) => gate.id !== placed.id)',
      into: 'const others = gatesOf(defs)',
      by: 'does not let a gate hold back its own hazard',
    },
    {
      rule: 'A gate stands before every step that faces any of the hazards it holds, not only all of them.',
      find: 'gate.step.holds.some((h) => exposes.includes(h))',
      into: 'gate.step.holds.every((h) => exposes.includes(h))',
      by: 'has the gate asked before the very next step that faces what it holds, people called out first',
      in: 'core/job/voiding',
    },
    {
      rule: 'Every isolation point of the machine is locked, and has its number.',
      find: 'return defs.machine.site.isolation_points.map(',
      into: 'return defs.machine.site.isolation_points.slice(1).map(',
      by: 'asks every item of the gate once, in the order of the procedure',
    },
    {
      rule: 'Everybody on the job hangs a lock of their own, not only the one at the keyboard.',
      find: 'return people.map((person)',
      into: 'return people.slice(0, 1).map((person)',
      by: 'is asked for in a gate that is half given',
      in: 'core/job/voiding',
    },
    {
      rule: 'Who began a wait has done part of the evidence, also when another ended it.',
      find: '[...Object.values(gate.given), ...Object.values(gate.begun)]',
      into: '[...Object.values(gate.given)]',
      by: 'makes its beginner one who did it, also when another ended it',
      in: 'core/job/evidence-kinds',
    },
    {
      rule: 'Evidence that does not say which hazard it is against counts for all that its gate holds, and falls with any.',
      find: '(evidence.against ?? gate.step.holds)',
      into: '(evidence.against ?? [])',
      by: 'has the gate asked before the very next step that faces what it holds, people called out first',
      in: 'core/job/voiding',
    },
  ]),
  ...of('core/job/admit-gate', 'core/job/gate', [
    {
      rule: 'Evidence is taken only for the item that is asked: oxygen, then flammables, then toxics.',
      find: ' || prompt.item.key !== input.item)',
      into: ')',
      by: 'refuses evidence for any item but the one asked, flammables before oxygen among them',
    },
    {
      rule: 'That everybody is out is typed in full; no shorter word lets the gate be asked again.',
      find: 'if (spaced(input.typed) !== clear_words)',
      into: 'if (!clear_words.startsWith(spaced(input.typed)))',
      by: 'wants everybody out in words first, then only gas and the witness',
      in: 'core/job/expiry',
    },
    {
      rule: 'Going back over gas takes all of it back, as it is read in an order.',
      find: "return evidenceByKey(gate, last)?.kind === 'gas' ? fallsWith(defs, state, gate, [last]) : [last]",
      into: 'return [last]',
      by: 'of gas is all of it, since it is read in an order; a mistyped oxygen is no dead end with one meter',
    },
  ]),
]
