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
