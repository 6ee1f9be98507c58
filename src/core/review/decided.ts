// A decision of a lead in words: signed, or by radio, heard by whom, and whether the lead who spoke has signed for it since.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { DispositionState } from '../job/state.ts'
import { deciderText } from '../talk/names.ts'
import type { OnRecord } from './asked-entries.ts'
import { type Look, named, when } from './look.ts'

type Decision = Extract<Entry, { type: 'disposition.set' }>

/** `decided by KH by radio, heard by ML, NOT YET COUNTERSIGNED: replace`; of one that was signed, `KH decided: replace`. */
export function decidedText(decided: DispositionState): string {
  const { choice, person, radio } = decided
  return radio === null ? `${person} decided: ${choice}` : `decided by ${deciderText(decided)}: ${choice}`
}

/** `, signed by PIN, keyed by RO`: whoever decided stands first, and after that at whose keyboard it was. */
export function howDecided(look: Pick<Look, 'entries'>, d: Decision): string {
  if (d.radio !== undefined) return ` by radio, heard and keyed by ${d.radio.by}, ${answerText(look, d)},`
  const signed = d.signed === 'pin' ? ', signed by PIN' : ', by initials only'
  return `${signed}${d.by === undefined || d.by === d.person ? '' : `, keyed by ${d.by}`}`
}

/** `129 Bore judged: replace, by KH, signed by PIN 09:29 (entry 494)`, and whether it stands. */
export function decisionLine(record: Pick<OnRecord, 'defs' | 'state' | 'entries'>, d: Decision): string {
  const stands = Object.values(record.state.dispositions).some(
    ({ seq, void: fell }) => seq === d.seq && !fell,
  )
  return `${named(stepById(record.defs, d.about))}: ${d.choice}, by ${d.person}${howDecided(record, d)} ${when(record, d)} (entry ${d.seq})${stands ? '' : ', which does not stand any more'}`
}

/** Of a word by radio: what the lead said of it since. */
function answerText(look: Pick<Look, 'entries'>, d: Decision): string {
  const answer = answerTo(look, d)
  if (answer === null) return 'NOT YET COUNTERSIGNED'
  return answer.agrees
    ? `countersigned by ${answer.person} ${when(look, answer)}`
    : `denied by ${answer.person} ${when(look, answer)}`
}

/** The countersignature or denial that was given to this word, and to none after it at the same step. */
export function answerTo({ entries }: Pick<Look, 'entries'>, d: Decision) {
  const next = entries.find((e) => e.type === 'disposition.set' && e.step === d.step && e.seq > d.seq)
  const until = next?.seq ?? Number.POSITIVE_INFINITY
  const answer = entries.find(
    (e) => e.type === 'disposition.countersigned' && e.step === d.step && e.seq > d.seq && e.seq < until,
  )
  return answer?.type === 'disposition.countersigned' ? answer : null
}

/** After these the part goes on as it was found. */
export const RUNS_ON: readonly string[] = ['accept', 'concession']
