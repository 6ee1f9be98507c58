// Why the evidence of a hold point fell, as a clause.
import type { CloseCause } from './entries.ts'

export const CAUSES: Readonly<Record<CloseCause, string>> = {
  lapsed: 'the gas test is past its life',
  failed: 'a gas reading is outside its limit',
  overload: 'the load is more than the rating',
  opening: 'a hazard was let in again',
  people: 'somebody came onto the job',
  instrument: 'an instrument may not be used any more',
  again: 'what was keyed is taken back',
  corrected: 'what was shown for it was wrong',
  stop: 'STOP was called',
  left: 'the job was left',
  interrupted: 'the program was interrupted',
  clock: 'the clock moved',
  'handed-over': 'the job was handed over',
  elsewhere: 'another job on the machine voids it',
  record: 'the machine record was changed',
}
