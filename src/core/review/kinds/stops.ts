// Every STOP: who called it and why, who released it and with which answer, or that it stands.

import { neverReleased } from '../../job/admit-stop.ts'
import type { Entry } from '../../job/entries.ts'
import type { StopState } from '../../job/state.ts'
import { causeWords } from '../../job/stop-causes.ts'
import { list } from '../../lib/wording.ts'
import { causeByNumber, stricterTold } from '../../talk/cause-told.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look, sentence, when } from '../look.ts'
import { namedAgain } from '../named-again.ts'

export function stops(look: Look): Found[] {
  return look.state.stops.map((stop) => one(look, stop))
}

function one(look: Look, stop: StopState): Found {
  const raised = look.entries[stop.seq]
  const explained = entriesOf(look, 'stop.explained').filter(
    (e) => (e.of ?? lastBefore(look, e.seq)) === stop.seq,
  )
  // One release is for all that are open then; one that stands keeps open what is.
  const ends = look.moves.flatMap(({ entry, before }) =>
    (entry.type === 'stop.released' || entry.type === 'stop.stands') &&
    before.stops.some((s) => s.seq === stop.seq && s.releasedBy === null)
      ? [entry]
      : [],
  )
  const cause = stop.cause === null ? 'cause not told' : causeWords(stop.cause).says
  const stands = ends.some((e) => e.type === 'stop.stands')
  const end = stands
    ? 'the job ended under it'
    : stop.releasedBy === null
      ? 'NOT RELEASED'
      : `released by ${stop.releasedBy}`
  return {
    kind: 'stop',
    what: `STOP ${raised === undefined ? '' : raisedText(look, stop, raised)}: ${cause}; ${end}`,
    sentences: [
      ...(stop.why === null ? [] : [sentence(`Because: ${stop.why}`)]),
      ...stricterText(stop),
      `Called by ${stop.calledBy.length === 0 ? 'nobody named' : stop.calledBy.map((id) => callerText(look, id)).join(', ')}.`,
      ...ends.map((e) =>
        e.type === 'stop.released'
          ? sentence(`Released by ${e.person}: ${e.answer}`)
          : sentence(`${e.person} let it stand; before a new job is opened: ${e.first}`),
      ),
      ...namedAgain(look, [stop.why ?? '', ...ends.map(answerOf)].join(' '), [...explained, ...ends]),
      ...(stop.releasedBy === null && !stands
        ? [
            neverReleased(look.state) === null
              ? 'A lead answers it where the job is taken up: release, or close.'
              : 'It is never released: a lead closes the job in it, and the work is opened anew.',
          ]
        : []),
    ],
    entries: [stop.seq, ...explained.map((e) => e.seq), ...ends.map((e) => e.seq)],
    open: stop.releasedBy === null && !stands,
    grave: stop.releasedBy === null ? 0 : 1,
  }
}

const answerOf = (end: Extract<Entry, { type: 'stop.released' | 'stop.stands' }>): string =>
  end.type === 'stop.released' ? end.answer : end.first

/** Whoever lifted it went by the cause: where its words tell of a stricter one, a lead sees both. */
function stricterText({ cause, why }: StopState): string[] {
  const told = cause === null || why === null ? null : stricterTold(cause, why)
  if (told === null || cause === null) return []
  return [`Its words tell of ${causeByNumber(told)}; picked was ${causeByNumber(cause)}.`]
}

/** Whoever called it stands first; who had the keyboard after that, where it was somebody else. */
function raisedText(look: Look, { calledBy, by }: StopState, raised: Entry): string {
  if (calledBy.length === 0 || (by !== null && calledBy.includes(by))) return byWhom(look, raised)
  const keyed = by === null ? 'nobody signed on' : `keyed by ${by}`
  return `called by ${list(calledBy)}, ${keyed}, ${when(look, raised)}`
}

/** As it was keyed by whoever raised it; where nobody was signed on, with the signature of the one who is named. */
function callerText(look: Look, id: string): string {
  const signed = entriesOf(look, 'stop.explained').find((one) => one.called_by === id)?.signed
  if (signed !== undefined) return signed === 'pin' ? `${id}, who signed for it` : `${id}, by initials alone`
  return look.state.everOn.includes(id) ? id : `${id}, who was not signed on; by the word of whoever keyed it`
}

/** An old journal explains the last one without naming it. */
function lastBefore(look: Look, seq: number): number | undefined {
  return look.state.stops.filter((s) => s.seq < seq).at(-1)?.seq
}
