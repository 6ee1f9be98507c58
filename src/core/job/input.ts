// What a person (or the shell on their behalf) may bring to a job. Structured: wording and dialogue live in core/talk.

import type { Signature } from './signature.ts'

export type Input =
  | ({ readonly do: 'sign-on' } & Signature)
  /** Somebody else comes onto the job. */
  | ({ readonly do: 'come-on' } & Signature)
  | ({ readonly do: 'sign-off' } & Signature)
  /** `from` goes, `person` has the keyboard from then on; each signs. */
  | ({ readonly do: 'hand-over'; readonly from: string; readonly fromProved: boolean } & Signature)
  /** The PIN keyed for this person did not fit. */
  | { readonly do: 'pin-missed'; readonly person: string }
  | { readonly do: 'name-machine'; readonly typed: string }
  | { readonly do: 'pick'; readonly seat: string; readonly instrument: string }
  | { readonly do: 'done'; readonly step: string }
  | { readonly do: 'confirm'; readonly step: string }
  | { readonly do: 'object'; readonly step: string; readonly remark: string }
  | {
      readonly do: 'evidence'
      readonly step: string
      readonly item: string
      /** What was keyed; initials where a witness is asked for. */
      readonly typed: string
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
  | { readonly do: 'not-applicable'; readonly place: string; readonly why: string }
  | { readonly do: 'observe'; readonly step: string; readonly condition: string; readonly note?: string }
  | {
      readonly do: 'dispose'
      readonly step: string
      readonly choice: string
      readonly person: string
      readonly proved?: boolean
      readonly why: string
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
  | { readonly do: 'reopen'; readonly step: string; readonly why: string }
  | { readonly do: 'note'; readonly text: string }
  | { readonly do: 'stop' }
  | { readonly do: 'explain-stop'; readonly why: string }
  | ({ readonly do: 'release-stop'; readonly answer: string } & Signature)
  | { readonly do: 'leave' }
  | { readonly do: 'take-up' }
  /** Nothing happened but time. */
  | { readonly do: 'tick' }
  /** The wall clock moved against the running clock by this much. */
  | { readonly do: 'clock-moved'; readonly seconds: number }
