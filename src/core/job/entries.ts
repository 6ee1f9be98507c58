// What a job's journal is made of. Entries say what happened, in the past tense; they are never changed, only added to.
// State is a fold over them (fold.ts); what may be added is decided in admit.ts.

import type { Point } from '../definition/procedure.ts'
import type { KeptFile } from './attachment.ts'
import type { RecordKind } from './definitions.ts'
import type { Doing, JobSeen } from './elsewhere.ts'
import type { ByLead } from './entries-by-lead.ts'
import type { OfPaper } from './entries-paper.ts'
import type { OnSheet } from './paper.ts'
import type { PracticeBody, Practised } from './practice.ts'
import type { QuestionAbout } from './questions.ts'
import type { Signed } from './signature.ts'
import type { StopCause } from './stop-causes.ts'
import type { Validity } from './validity.ts'
import type { VerdictRecord } from './verdict-record.ts'

export interface FileCopy {
  readonly role: 'procedure' | 'part' | 'machine' | 'limit-book' | 'instruments' | 'crew' | 'scenario'
  readonly name: string
  readonly sha256: string
  readonly text: string
}

export interface Typed {
  /** Exactly what was keyed. */
  readonly typed: string
  readonly value: number
  readonly unit: string
  readonly si: number
}

export interface ReadingAt extends Typed {
  readonly step: string
  readonly place: string
  readonly instrument: string
  /** What stands beside it on the sheet it was keyed from; left out where it was read here. */
  readonly paper?: OnSheet
}

/** Why a gate's evidence fell. */
export const CLOSE_CAUSES = [
  'lapsed',
  'failed',
  'overload',
  'opening',
  'people',
  'instrument',
  'again',
  'corrected',
  'stop',
  'left',
  'interrupted',
  'clock',
  'handed-over',
  'elsewhere',
  'record',
] as const

export type CloseCause = (typeof CLOSE_CAUSES)[number]

export const FORMAT = 1

export interface OpenedBody {
  readonly type: 'job.opened'
  /** Version of the journal's own shape; a newer one is refused in plain words. */
  readonly format: typeof FORMAT
  readonly record: RecordKind
  readonly job: string
  readonly program: { readonly name: string; readonly version: string }
  readonly zone: string
  /** `set`: the clock was set by hand for an example or practice; never for a real job. */
  readonly clock: 'system' | 'set'
  /** `script`: answers come from a file or pipe; never for a real job. */
  readonly answers: 'person' | 'script'
  readonly files: readonly FileCopy[]
  /** Keyed in from a paper sheet; left out where it is live. It never changes. */
  readonly paper?: true
  /** A practice session on a hidden machine; only ever of kind PRACTICE. */
  readonly practice?: Practised
}

export type Body =
  | OpenedBody
  | { readonly type: 'person.signed-on'; readonly person: string; readonly signed?: Signed }
  /** Somebody else comes onto the job; the keyboard stays with who has it. */
  | { readonly type: 'person.came-on'; readonly person: string; readonly signed?: Signed }
  | { readonly type: 'person.signed-off'; readonly person: string; readonly signed?: Signed }
  /** Both signed for the summary, as it was shown to them. */
  | {
      readonly type: 'job.handed-over'
      readonly from: string
      readonly to: string
      readonly signedFrom: Signed
      readonly signedTo: Signed
      readonly summary: readonly string[]
    }
  /** A PIN was keyed that is not this person's. The PIN itself is nowhere. */
  | { readonly type: 'pin.missed'; readonly person: string }
  /** Theirs was keyed after wrong ones, and what they signed was not taken: it ends the row all the same. */
  | { readonly type: 'pin.fitted'; readonly person: string; readonly signed?: Signed }
  | { readonly type: 'machine.named'; readonly typed: string }
  | { readonly type: 'machine.mismatched'; readonly typed: string }
  | { readonly type: 'instrument.picked'; readonly seat: string; readonly instrument: string }
  /** `mispicked`: the number of one that was only picked by mistake and had read nothing. */
  | {
      readonly type: 'instrument.put-back'
      readonly seat: string
      readonly why: string
      readonly mispicked?: string
    }
  /** Found out of calibration: nothing it read stands. After the job was closed `person` signs, who is nobody's doer. */
  | {
      readonly type: 'instrument.doubted'
      readonly instrument: string
      readonly why: string
      /** Who says so, in words: a person, a laboratory, a paper. */
      readonly says: string
      /** Everything it read that stood, by seq: readings, and gas tests. */
      readonly readings: readonly number[]
      /** Temperatures taken for what it read, by seq: of its body, and of the metal behind its readings. They fall with it. */
      readonly temperatures?: readonly number[]
      readonly voids: readonly string[]
      readonly person?: string
      readonly signed?: Signed
    }
  | { readonly type: 'step.done'; readonly step: string; readonly paper?: OnSheet }
  | { readonly type: 'step.confirmed'; readonly step: string; readonly paper?: OnSheet }
  | { readonly type: 'step.objected'; readonly step: string; readonly remark: string }
  | {
      readonly type: 'step.reopened'
      readonly step: string
      readonly why: string
      readonly voids: readonly string[]
    }
  | {
      readonly type: 'evidence.given'
      readonly step: string
      readonly item: string
      /** The words, lock number, initials or reading, as shown. */
      readonly shown: string
      readonly reading?: Typed
      readonly instrument?: string
      readonly person?: string
      readonly signed?: Signed
      /** Name that the number is kept under, to be held against later. */
      readonly notes?: string
      /** Who took it off, where that was asked. */
      readonly off_by?: string
      /** Another number was keyed here before the hold point fell, and why it is another now. Without it: why one that was doubted is right. */
      readonly was?: string
      readonly why?: string
    }
  | {
      readonly type: 'evidence.failed'
      readonly step: string
      readonly item: string
      readonly shown: string
      readonly reading?: Typed
      readonly instrument?: string
      readonly why: string
      /** Name of the number noted earlier, where this is another. */
      readonly unlike?: string
    }
  | {
      readonly type: 'gate.opened'
      readonly step: string
      /** Other open jobs on the machine, and up to where each was read; left out when there were none. */
      readonly looked?: readonly { readonly job: string; readonly upTo: number; readonly head: string }[]
    }
  | {
      readonly type: 'gate.closed'
      readonly step: string
      readonly cause: CloseCause
      readonly items: readonly string[]
      /** The cause as a clause of its own, where the plain word does not say it all. */
      readonly why?: string
      /** A slip, taken back while nobody can be behind any hold point: nobody is called out for it. */
      readonly nobody_in?: true
    }
  /** A wait was begun, by the words for it. */
  | {
      readonly type: 'wait.begun'
      readonly step: string
      readonly item: string
      readonly shown: string
    }
  | { readonly type: 'people.clear'; readonly step: string; readonly words: string }
  | ({ readonly type: 'reading.taken' } & ReadingAt)
  /** `shown`: what it may have been meant to be, as the sentence that was shown; left out where none was, and in old journals. */
  | ({ readonly type: 'reading.doubted'; readonly why: string; readonly shown?: string } & ReadingAt)
  | ({ readonly type: 'reading.late' } & ReadingAt)
  | {
      readonly type: 'doubt.settled'
      readonly choice: 'again' | 'mistyped' | 'kept' | 'unreadable'
      readonly why?: string
    }
  | { readonly type: 'late.settled'; readonly kept: boolean }
  /** The job stands at another step before it was said what becomes of the reading that waits. */
  | { readonly type: 'reading.dropped'; readonly step: string; readonly place: string }
  | ({
      readonly type: 'reading.corrected'
      readonly of: number
      readonly why: string
      /** What speaks against it, a clause: it was put in place of the other all the same, for that reason. */
      readonly doubt?: string
      readonly voids: readonly string[]
    } & ReadingAt)
  | {
      readonly type: 'reading.not-applicable'
      readonly step: string
      readonly place: string
      readonly why: string
      /** The lead who signed it, where the step asks for one. */
      readonly person?: string
      readonly signed?: Signed
    }
  | {
      readonly type: 'not-applicable.taken-back'
      readonly step: string
      readonly place: string
      readonly why: string
      readonly voids: readonly string[]
    }
  | {
      readonly type: 'finding.observed'
      readonly step: string
      readonly condition: string
      /** Conditions found together with it, where the step takes several. */
      readonly also?: readonly string[] | undefined
      readonly note?: string
      readonly paper?: OnSheet
    }
  | {
      readonly type: 'finding.corrected'
      readonly step: string
      /** The condition entered before. */
      readonly was: string
      readonly was_also?: readonly string[] | undefined
      readonly condition: string
      readonly also?: readonly string[] | undefined
      readonly note?: string
      readonly why: string
      readonly voids: readonly string[]
    }
  /**
   * What was done under a condition that no longer holds: the steps named count for nothing, nor do their readings. `test`:
   * the title of the test over time that has to be done anew instead.
   */
  | { readonly type: 'branch.left'; readonly voids: readonly string[]; readonly test?: string }
  | { readonly type: 'verdict.given'; readonly step: string; readonly verdict: VerdictRecord }
  | {
      readonly type: 'disposition.set'
      readonly step: string
      readonly about: string
      readonly choice: string
      readonly why: string
      readonly person: string
      readonly signed?: Signed
      /** `person` said it by radio, `why` is what was said, and `by` keyed and signed that it was. */
      readonly radio?: { readonly by: string }
      /** Of a concession: who or which paper gives it, and how long it stands. */
      readonly authority?: string
      readonly valid?: Validity
    }
  /** The lead who spoke by radio signs for it, or says it was not so, which voids it and what hung on it. */
  | {
      readonly type: 'disposition.countersigned'
      readonly step: string
      readonly person: string
      readonly agrees: boolean
      readonly voids: readonly string[]
      readonly signed?: Signed
    }
  /** Beforehand: what may differ in one measurement or judgement. It changes no verdict, limit or gate. */
  | {
      readonly type: 'deviation.permitted'
      readonly step: string
      readonly what: string
      readonly why: string
      readonly authority: string
      readonly valid: Validity
      readonly person: string
      readonly signed?: Signed
    }
  | {
      readonly type: 'point.signed'
      readonly step: string
      readonly point: Point['kind']
      readonly person: string
      readonly signed?: Signed
    }
  | { readonly type: 'point.notice-given'; readonly step: string; readonly whom: string }
  /** A witness point went on without anybody, after the notice of that entry had run out. */
  | {
      readonly type: 'point.not-attended'
      readonly step: string
      readonly whom: string
      readonly notice: number
    }
  | { readonly type: 'note.written'; readonly text: string; readonly step: string | null }
  /** A copy lies with the job's files: its bytes were on disk before this entry. It is evidence for nothing. */
  | ({
      readonly type: 'file.attached'
      readonly step: string | null
      readonly caption: string
    } & KeptFile)
  | { readonly type: 'stop.raised'; readonly step: string | null }
  | {
      readonly type: 'stop.explained'
      /** Which STOP; left out in old journals: the last one. */
      readonly of?: number
      /** Left out in old journals, which had words only. */
      readonly cause?: StopCause
      readonly why: string
      /** Initials of who called it; left out when not known. */
      readonly called_by?: string
      /** How they signed for it, where nobody was signed on who raised it. */
      readonly signed?: Signed
    }
  | {
      readonly type: 'stop.released'
      readonly person: string
      readonly answer: string
      readonly signed?: Signed
    }
  | {
      readonly type: 'thing.placed'
      readonly what: string
      readonly where: string
      readonly step: string | null
      /** Number or tag on it. */
      readonly number?: string
      /** Id under which the step declares it. */
      readonly place?: string
    }
  /** The first of two who sign that a thing is accounted for. */
  | { readonly type: 'thing.seen'; readonly of: number; readonly person: string; readonly signed?: Signed }
  | {
      readonly type: 'thing.accounted'
      readonly of: number
      readonly people: readonly string[]
      /** The second of them, whose signature this is. */
      readonly person: string
      readonly signed?: Signed
    }
  | {
      readonly type: 'things.handed-on'
      readonly of: readonly number[]
      readonly to: string
      readonly person: string
      readonly signed?: Signed
    }
  /** A lead lets the STOP stand: the job ends in it, and the work is opened anew. */
  | {
      readonly type: 'stop.stands'
      readonly person: string
      /** What has to be done before a new job is opened. */
      readonly first: string
      readonly signed?: Signed
    }
  /** Another job on the machine, as a look found it; `since`: what it did that was not seen before. */
  | ({ readonly type: 'elsewhere.seen'; readonly since?: readonly Doing[] } & JobSeen)
  /** It is not among the jobs of this machine any more, though it had not ended. */
  | { readonly type: 'elsewhere.gone'; readonly job: string; readonly record: RecordKind }
  /** Improbable, though each reading by itself is not: asked on the sheet, of nobody. It blocks nothing and changes nothing. */
  | {
      readonly type: 'readings.questioned'
      readonly step: string
      readonly about: QuestionAbout
      readonly text: string
    }
  | PracticeBody
  | { readonly type: 'job.left' }
  /** `desk`: for a word of a lead, away from the machine. */
  | { readonly type: 'job.taken-up'; readonly desk?: true }
  | ByLead
  | OfPaper
  | { readonly type: 'clock.moved'; readonly seconds: number }
  | {
      readonly type: 'job.closed'
      readonly outcome: string
      /** The verdict as left in words, where something was done about the one as found. */
      readonly as_left?: string
    }

/** A body with its place in the journal. `by` is who was at the keyboard; absent when nobody had signed on. */
export type Entry = Body & { readonly seq: number; readonly at: string; readonly by?: string }
