// What does not outlive what it rested on: numbers, signatures, and what was shown after a step that is gone back to.
import { of } from './mutant.ts'

export const OUTLIVED = [
  ...of('core/job/fold-register', 'core/job/outlived', [
    {
      rule: 'Whoever signed that a thing is out signed for it as it was before its step is gone back to.',
      file: 'core/job/fold-void',
      find: '...seenAnew(state, voids)',
      into: '...state',
      by: 'falls when the step that placed it is gone back to',
    },
    {
      rule: 'Nor does such a signature outlive the step done anew.',
      file: 'core/job/fold',
      find: 'const state = seenAnew(before, [entry.step])',
      into: 'const state = before',
      by: 'falls when it is signed between the going back and the doing anew',
    },
  ]),
  ...of('core/job/fold', 'core/job/outlived', [
    {
      rule: 'A witness point gone past on a notice that a wrong clock ran out is asked again.',
      find: 'points: withoutWaited(state.points)',
      into: 'points: state.points',
      by: 'is asked again where the clock that told the notice had run out is set right',
    },
  ]),
  ...of('core/job/falls-with', 'core/job/outlived', [
    {
      rule: 'A number that is taken back takes what was held against it, at every hold point.',
      find: 'const held = heldTo(defs, state, lines)',
      into: 'const held = heldTo(defs, state, [])',
      by: 'falls with it, with what was tried under it, and nobody drills before it is keyed anew',
    },
    {
      rule: 'Another number noted in the place of the first takes what was held against that.',
      file: 'core/job/admit-gate',
      find: '...closedByNoting(defs, state, { gate, key: body.item }, body.shown), body',
      into: 'body',
      by: 'falls where another number is noted in the place of the first',
    },
    {
      rule: 'No number passes where the one it is held against was taken back.',
      file: 'core/job/fold-gate',
      find: 'names.includes(name) ? { ...one, takenBack: true } : one',
      into: 'names.includes(name) ? { ...one, takenBack: false } : one',
      by: 'does not pass while the one before it is taken back and not noted anew',
    },
    {
      rule: 'A step that was seen and is gone back to takes what was shown since at the hold points behind it.',
      file: 'core/job/admit-change',
      find: '    ...closedByGoingBack(defs, state, [input.step, ...voids]),\n',
      into: '',
      by: 'takes what was shown of the place since, and leaves what hangs',
    },
  ]),
  ...of('core/job/locks-on', 'core/job/locks-on', [
    {
      rule: 'A lock that stood when the hold point fell is on, also once another number was keyed in its place.',
      find: '[...replaced, ...before].filter',
      into: 'before.filter',
      by: 'is on, whatever was keyed in its place since and taken back again',
    },
    {
      rule: 'A lock that stood when the hold point fell is on, also where it was keyed again and taken back.',
      find: '[...replaced, ...before].filter',
      into: 'replaced.filter',
      by: 'is on, whatever was keyed in its place since and taken back again',
    },
  ]),
]
