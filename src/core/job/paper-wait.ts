// A wait as it stands on a sheet: when it was begun and when it was over, by the times written. Times are written to the minute, so
// that of ten minutes between two of them nine are told.
import type { EvidenceOf } from '../definition/evidence.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { minutesOnSheet } from './paper-line.ts'
import { beginRow } from './paper-rows.ts'

/**
 * Whether so many minutes by the wall clock, from one time of the sheet to another, are surely as long as that.
 * @param seconds how long it has to be; what is not above zero and finite is never over.
 */
export function surelyLasted(minutes: number | null, seconds: number): boolean {
  return minutes !== null && Number.isFinite(seconds) && seconds > 0 && (minutes - 1) * 60 >= seconds
}

/** Why the wait of this line would not have stood, a clause; null where no gap can be told. */
export function waitFault(
  paper: PaperState,
  gate: string,
  wait: EvidenceOf<'wait'>,
  end: SheetRow,
): string | null {
  const begun = rowOf(paper, gate, beginRow(end.row))
  if (begun === undefined || begun.text === null) return 'that it was begun does not stand there'
  if (plain(begun.text) !== plain(wait.begin_words))
    return `it begins with ${begun.text}, and asked is ${wait.begin_words}`
  if (end.text === null) return 'that it is over does not stand there'
  if (plain(end.text) !== plain(wait.words)) return `it says ${end.text}, and asked is ${wait.words}`
  const minutes = minutesOnSheet(begun.time, end.time)
  if (minutes === null) return 'how long it lasted cannot be told by its times'
  const span = `${begun.time?.slice(-5) ?? ''} to ${end.time?.slice(-5) ?? ''}`
  return surelyLasted(minutes, wait.lasts.si)
    ? null
    : `${span}, each to the minute: ${wait.lasts.text} are not told to be over`
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ')
