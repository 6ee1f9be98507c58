// Entries of a job that is keyed from a paper sheet. None of them is evidence for anything.
import type { OnSheet, UnreadWhy } from './paper.ts'
import type { Signed } from './signature.ts'

export type OfPaper =
  /** A box as it stands: of the front, of a hold point, of a signature, or one that is blank. `of`: the entry it puts right. */
  | {
      readonly type: 'paper.row'
      readonly step: string | null
      readonly row: string
      /** Null: blank. */
      readonly says: string | null
      readonly paper: OnSheet
      readonly of?: number
      readonly why?: string
    }
  /** A box for a figure that gives no value. */
  | {
      readonly type: 'paper.unread'
      readonly step: string
      readonly place: string
      readonly is: UnreadWhy
      /** What stands there, where something does. */
      readonly says?: string
      /** Why the instrument cannot vouch for it, or why it was put right. */
      readonly why?: string
      readonly paper: OnSheet
      readonly of?: number
      readonly voids: readonly string[]
    }
  /** `keyed`: whoever keyed it, for all of it. `compared`: a lead who keyed none of it held the sheet against it. */
  | {
      readonly type: 'paper.signed'
      readonly as: 'keyed' | 'compared'
      readonly person: string
      readonly signed: Signed
    }
