// The front of a blank sheet: what it is and is not, how it is filled in, what can hurt, who is on the job, and with what it is read.
import type { Definitions, RecordKind } from '../job/definitions.ts'
import type { Kit } from '../kit/kit.ts'
import type { KitSeat } from '../kit/seats.ts'
import { peopleLines } from '../kit/words.ts'
import { capital, list } from '../lib/wording.ts'
import { type BlankPiece, type BlankSection, box, boxes, empty, NOT_ENFORCED, words } from './blank.ts'

export function frontSections(defs: Definitions, kit: Kit, record: RecordKind): BlankSection[] {
  return [
    cover(defs, kit, record),
    dangers(defs),
    { title: 'Who is on the job', pieces: peoplePieces(defs, kit, record) },
    { title: 'Read with', pieces: instrumentPieces(kit) },
  ]
}

function cover({ procedure, machine, steps }: Definitions, kit: Kit, record: RecordKind): BlankSection {
  const gates = steps.filter(({ step }) => step.kind === 'gate').length
  const made = (invented: boolean | undefined) => (invented === true ? ', invented' : '')
  return {
    title: `${procedure.title}: ${machine.machine}`,
    pieces: [
      words(`${record}  BLANK INSPECTION SHEET`, 'stamp'),
      words(
        `${procedure.title}, procedure ${procedure.procedure}, edition ${procedure.edition}${made(procedure.invented)}`,
        'strong',
      ),
      words(
        `${machine.machine}, ${machine.title}; machine record edition ${machine.edition}${made(machine.invented)}`,
        'strong',
      ),
      words(
        `Printed for ${kit.day}. ${steps.length} steps, ${gates} ${gates === 1 ? 'hold point' : 'hold points'}.`,
      ),
      words(procedure.summary),
      words(
        'The maker’s manual, site permits, local code and licensed practice come first. Barover helps trained people; it replaces none of these.',
        'caution',
      ),
      words(
        `${capital(NOT_ENFORCED)}. Nothing holds anybody back here but the people on this job: nobody goes past a hold point while a line of it is open, out of its limit or stale.`,
        'caution',
      ),
      words(
        'This sheet is no job and no permit. What is written on it opens no hold point in the program, then or later, and no verdict stands on it.',
        'caution',
      ),
      ...procedure.not_for.map((not) => words(`Not for: ${not}`)),
      ...kit.holds.map((hold) => words(`HOLD: not to be started without ${hold}`, 'caution')),
      ...kit.verdictHolds.map((hold) => words(hold, 'caution')),
      words('How it is filled in', 'strong'),
      words(
        'In ink, at the place, when it is done. The time is that of the day, with the date where it is another. Each figure as the instrument shows it. A slip: one line through it, still to be read, the right one beside it, initials. Nothing is left empty: what does not apply is n/a with why.',
      ),
      words(
        'What fell, lapsed or is asked again is filled in anew on another copy of its page, and both are kept.',
      ),
      boxes(
        [box('job or work order', 3), box('begun, day and time', 2.5), box('ended, day and time', 2.5)],
        empty(1),
      ),
      boxes([box('plate on the cylinder, as read', 3), box('time', 1.2), box('initials', 1.2)], empty(1)),
    ],
  }
}

function dangers({ hazards, machine, makeSafe }: Definitions): BlankSection {
  const { emergency, rescue } = machine.site
  const names = [...new Set(hazards.map(({ name }) => name))]
  return {
    title: 'What can hurt, and what to do then',
    pieces: [
      ...names.map((name) => words(`- ${name}`, 'caution')),
      ...makeSafe.map((line) => words(`Make safe: ${line}`)),
      words(`Call: ${emergency}`, 'strong'),
      ...(rescue === undefined
        ? []
        : [words('Rescue plan', 'strong'), ...rescue.map((line) => words(`- ${line}`))]),
      words('Anybody stops the job, at any time, by saying STOP. It is written down at the end.', 'caution'),
    ],
  }
}

/** A trainee signs in practice and nowhere else. */
function peoplePieces({ crew }: Definitions, kit: Kit, record: RecordKind): BlankPiece[] {
  const all = crew.crew.filter(({ role }) => role !== 'trainee' || record === 'PRACTICE')
  return [
    ...peopleLines(kit).map((line) => words(line)),
    boxes(
      [box('name, role', 4), box('initials', 1.3), box('signature', 3), box('on', 1.5), box('off', 1.5)],
      [...all.map(({ name, role, id }) => [`${name}, ${role}`, id]), ...empty(2)],
    ),
  ]
}

function instrumentPieces({ seats, day }: Kit): BlankPiece[] {
  if (seats.length === 0) return [words('Nothing is read with an instrument.')]
  return [
    words(
      `Those that can do all of it, by their calibration, as of ${day}. It is looked at again on the day.`,
    ),
    boxes(
      [
        box('for', 3),
        box('can do it', 3.5),
        box('number of what is used', 2.4),
        box('calibrated until', 2),
        box('initials', 1.3),
      ],
      seats.map((seat) => [`${capital(list(seat.kinds, 'or'))}: ${seat.for}`, fitText(seat)]),
    ),
    ...seats.flatMap(({ unfit }) =>
      unfit.map(({ id, why }) => words(`NOT ${id}: ${why.map(({ say }) => say).join('; ')}.`)),
    ),
  ]
}

function fitText({ fit }: KitSeat): string {
  if (fit.length === 0) return 'NONE in the register does all of it'
  return fit
    .map(({ id, due, standard }) => `${id} (${due}${standard === null ? '' : `, with ${standard}`})`)
    .join('; ')
}
