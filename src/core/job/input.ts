// What a person (or the shell on their behalf) may bring to a job. Structured: wording and dialogue live in core/talk.

import type { RenewedPart } from './adopt.ts'
import type { KeptFile } from './attachment.ts'
import type { Definitions } from './definitions.ts'
import type { FileCopy } from './entries.ts'
import type { WrittenFile } from './entries-by-lead.ts'
import type { PracticeBody } from './practice.ts'
import type { Signature } from './signature.ts'
import type { StopCause } from './stop-causes.ts'

/** Where a thing that a step places was put. */
export interface PlacedAt {
  readonly id: string
  readonly where: string
  /** Number or tag on it; null: none. */
  readonly number: string | null
}

/** What is keyed from a paper sheet. */
export type SheetInput =
  /** A line at the box that is asked. `sure`: it is what the sheet says, though its time is before the one above. */
  | {
      readonly do: 'sheet-row'
      readonly step: string | null
      readonly row: string
      readonly typed: string
      readonly sure?: true
    }
  | { readonly do: 'sheet-doubt'; readonly choice: 'mistyped' | 'kept' | 'unreadable' }
  /** The entry `of` was keyed wrong. A step that was answered is asked again, and `typed` is not looked at. */
  | { readonly do: 'sheet-correct'; readonly of: number; readonly typed: string; readonly why: string }
  | ({ readonly do: 'sheet-sign'; readonly as: 'keyed' | 'compared' } & Signature)

export type Input =
  | SheetInput
  | ({ readonly do: 'sign-on' } & Signature)
  /** Somebody else comes onto the job. */
  | ({ readonly do: 'come-on' } & Signature)
  | ({ readonly do: 'sign-off' } & Signature)
  /** `from` goes, `person` has the keyboard from then on; each signs. */
  | ({ readonly do: 'hand-over'; readonly from: string; readonly fromProved: boolean } & Signature)
  /** The PIN keyed for this person did not fit. */
  | { readonly do: 'pin-missed'; readonly person: string }
  /** It did, and what it was keyed for was not taken. */
  | { readonly do: 'pin-fitted'; readonly person: string }
  /** `meant`: spelled otherwise than on the plate, and whoever keyed it says that it is the plate. */
  | { readonly do: 'name-machine'; readonly typed: string; readonly meant?: boolean }
  | { readonly do: 'pick'; readonly seat: string; readonly instrument: string }
  /** What lies in the seat was picked by mistake, and nothing was read with it. */
  | { readonly do: 'put-back'; readonly seat: string }
  | { readonly do: 'done'; readonly step: string; readonly placed?: readonly PlacedAt[] }
  | { readonly do: 'confirm'; readonly step: string; readonly placed?: readonly PlacedAt[] }
  | { readonly do: 'object'; readonly step: string; readonly remark: string }
  | {
      readonly do: 'evidence'
      readonly step: string
      readonly item: string
      /** What was keyed; initials where a witness is asked for. */
      readonly typed: string
      /** Of a number: why it is another than was keyed here before the hold point fell, or unlike the others there. */
      readonly why?: string
      /** The PIN of the witness fitted. */
      readonly proved?: boolean
    }
  /** What was given last at a gate was mistyped: it falls, and what hangs on it, and is asked again. */
  | { readonly do: 'ask-again'; readonly step: string }
  | { readonly do: 'clear'; readonly step: string; readonly typed: string }
  | { readonly do: 'read'; readonly place: string; readonly typed: string }
  | { readonly do: 'settle-doubt'; readonly choice: 'again' | 'mistyped' | 'kept'; readonly why?: string }
  | { readonly do: 'settle-late'; readonly kept: boolean }
  | { readonly do: 'correct'; readonly of: number; readonly typed: string; readonly why: string }
  | {
      readonly do: 'not-applicable'
      readonly place: string
      readonly why: string
      /** Initials of the lead, where the step asks for one. */
      readonly person?: string
      readonly proved?: boolean
    }
  | { readonly do: 'take-back-not-applicable'; readonly place: string; readonly why: string }
  | {
      readonly do: 'correct-finding'
      readonly step: string
      readonly condition: string
      readonly also?: readonly string[]
      readonly note?: string
      readonly why: string
    }
  /** What was shown for a hold point was wrong, whenever that is found: it falls, with what hangs on it. */
  | { readonly do: 'take-back-evidence'; readonly step: string; readonly item: string; readonly why: string }
  /** After the job was closed a person signs for it. */
  | {
      readonly do: 'doubt-instrument'
      readonly instrument: string
      readonly why: string
      readonly says: string
      readonly person?: string
      readonly proved?: boolean
    }
  | {
      readonly do: 'observe'
      readonly step: string
      readonly condition: string
      readonly also?: readonly string[]
      readonly note?: string
    }
  | {
      readonly do: 'dispose'
      readonly step: string
      readonly choice: string
      readonly person: string
      readonly proved?: boolean
      readonly why: string
      /** Of a concession: who or which paper gives it, and how long it stands, as keyed. */
      readonly authority?: string
      readonly until?: string
      /** Hours on the counter, where it stands for a running time and the job has not read them. */
      readonly from?: string
      /** Why it stands longer than a year, where it does. */
      readonly far?: string
    }
  /** A lead said it by radio: `lead` spoke, `person` keys what was `said` and signs that it was. */
  | ({
      readonly do: 'radio'
      readonly step: string
      readonly choice: string
      readonly lead: string
      readonly said: string
    } & Signature)
  | ({ readonly do: 'countersign'; readonly agrees: boolean } & Signature)
  | {
      readonly do: 'permit-deviation'
      readonly step: string
      readonly what: string
      readonly why: string
      readonly authority: string
      readonly until: string
      readonly person: string
      readonly proved?: boolean
    }
  | { readonly do: 'sign-point'; readonly step: string; readonly person: string; readonly proved?: boolean }
  | { readonly do: 'give-notice'; readonly step: string; readonly whom: string }
  | { readonly do: 'not-attended'; readonly step: string }
  | { readonly do: 'reopen'; readonly step: string; readonly why: string }
  | { readonly do: 'note'; readonly text: string }
  /** A copy of a file lies with the job's files, by what the shell reports of the bytes that were written. */
  | ({ readonly do: 'attach'; readonly caption: string } & KeptFile)
  | {
      readonly do: 'place'
      readonly what: string
      readonly where: string
      readonly number: string | null
    }
  /** One signature for a thing in the register; two of different people account for it. */
  | ({ readonly do: 'account'; readonly of: number } & Signature)
  /** What is still open at the end is handed on. */
  | ({ readonly do: 'hand-on'; readonly to: string } & Signature)
  /** Of a practice session: what was seen on the hidden machine, decided or named, as it goes on record. */
  | { readonly do: 'practice'; readonly what: PracticeBody }
  | { readonly do: 'stop' }
  | {
      readonly do: 'explain-stop'
      /** Which STOP, by its entry. */
      readonly of: number
      readonly cause: StopCause
      readonly why: string
      /** Initials of who called it; null: not known, or, of a STOP already explained, nobody more. */
      readonly calledBy: string | null
      /** Their PIN fitted: asked where nobody was signed on when it was raised. */
      readonly proved?: boolean
    }
  /** The STOP stands: the job ends in it. */
  | ({ readonly do: 'close-stopped'; readonly first: string } & Signature)
  | ({ readonly do: 'release-stop'; readonly answer: string } & Signature)
  /**
   * A changed machine record for the rest of the job. `to`: the files of the job with `file` in the place of its record,
   * checked together as those of a new job. `unproved`: why its gates are not proved by these, where a REAL job asks for that.
   */
  | ({
      readonly do: 'take-in'
      readonly file: FileCopy
      readonly to: Definitions
      readonly unproved: string | null
      readonly why: string
    } & Signature)
  /** Of a closed job: its figures as left are the next baseline. `without`: numbers of the list of them, from 1. */
  | ({
      readonly do: 'adopt'
      /** Running hours of the machine, h. */
      readonly hours: number
      readonly renewed: readonly RenewedPart[]
      readonly without: readonly number[]
      readonly file: WrittenFile
    } & Signature)
  /** Of a closed job: words of a lead. */
  | ({ readonly do: 'remark'; readonly text: string } & Signature)
  | { readonly do: 'leave' }
  /** `desk`: by a lead who only decides and signs, away from the machine. */
  | { readonly do: 'take-up'; readonly desk?: true }
  /** Nothing happened but time. */
  | { readonly do: 'tick' }
  /** The wall clock moved against the running clock by this much. */
  | { readonly do: 'clock-moved'; readonly seconds: number }
