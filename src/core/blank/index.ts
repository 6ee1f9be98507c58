// What the command line loads only when a blank sheet is asked for.
export { blankOf } from './blank-of.ts'
export { blankRecord } from './record.ts'
