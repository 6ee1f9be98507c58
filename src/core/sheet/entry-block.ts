// What one entry looks like on the sheet once it is on record. Given the state after it, so that sums can be shown.
import { fileText } from '../job/attachment.ts'
import type { Definitions } from '../job/definitions.ts'
import { asKind, personById, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { lapsedText } from '../job/lapsed-at.ts'
import { pointOf } from '../job/point.ts'
import { NO_FINDING } from '../job/questions.ts'
import { allOf, labelsOf } from '../job/seen.ts'
import type { State } from '../job/state.ts'
import { falseAt } from '../practice/false-lines.ts'
import { changeLines } from '../talk/changes.ts'
import { instrumentName } from '../talk/names.ts'
import { POINT_NAMES } from '../talk/points.ts'
import { adoptedRows, remarkRows } from './adopted-block.ts'
import { type Block, type Row, row } from './block.ts'
import { byLine, bySign, missedText } from './by-sign.ts'
import { closingLine, courseRows, decidedRows, fellAtClose } from './closing-rows.ts'
import { correctedAtClose } from './corrected-rows.ts'
import { deviationRows, dispositionRows, openRows, permitRows, withNonconformance } from './decision-rows.ts'
import { elsewhereRows } from './elsewhere-block.ts'
import { titleOf, voidRows } from './entry-words.ts'
import { backRows, FROM_PAPER_ROW, paperBlock } from './from-paper-block.ts'
import { gateBlock, lapsedBlock } from './gate-block.ts'
import { keptAtClose } from './kept-rows.ts'
import { leftOutRows } from './left-out.ts'
import { practiceOpeningRows, practiceRows } from './practice-block.ts'
import { readingBlock } from './reading-block.ts'
import { recordRows, takenInRows } from './record-block.ts'
import { registerRows, stillOpenRows } from './register-block.ts'
import { staysOnRows } from './stays-on.ts'
import { stopRows } from './stop-block.ts'
import { takenBackBlock } from './taken-back-block.ts'
import { unsettledRows } from './unsettled-rows.ts'
import { verdictBlock } from './verdict-block.ts'

/** What 80 columns leave. */
const FULL_SHEET = 63

/** `columns`: what the sheet leaves for words beside its margin. */
export function entryBlock(
  defs: Definitions,
  state: State,
  entry: Entry,
  columns = FULL_SHEET,
): Block | null {
  const step = 'step' in entry && entry.step !== null ? entry.step : null
  const margin = step === null ? '' : String(stepById(defs, step).number)
  const block = (...rows: Row[]): Block => ({ margin, right: byLine(entry), rows })
  switch (entry.type) {
    case 'job.opened':
      return openingBlock(defs, entry)
    case 'person.signed-on':
      return block(
        row(
          `${entry.person}, ${personById(defs, entry.person)?.name ?? ''}, signed on${bySign(entry.signed)}`,
        ),
      )
    case 'person.came-on':
      return block(
        row(
          `${entry.person}, ${personById(defs, entry.person)?.name ?? ''}, came onto the job${bySign(entry.signed)}`,
        ),
      )
    case 'person.signed-off':
      return block(row(`${entry.person} signed off${bySign(entry.signed)}`))
    case 'job.handed-over':
      return block(
        row(
          `Handed over by ${entry.from}${bySign(entry.signedFrom)} to ${entry.to}${bySign(entry.signedTo)}`,
          'strong',
        ),
        ...entry.summary.map((line) => row(`  ${line}`)),
        row('Every hold point has fallen and will be asked again whole.'),
      )
    case 'pin.missed':
      return block(row(missedText(state, entry), 'caution'))
    case 'pin.fitted':
      return block(row(`${entry.person}'s own PIN was keyed: the wrong ones before it count no more.`))
    case 'machine.named':
      return block(row(`Plate reads ${entry.typed}: this is ${defs.machine.machine}, ${defs.machine.title}`))
    case 'machine.mismatched':
      return block(
        row(
          `WRONG MACHINE? ${entry.typed} was keyed from the plate, and that is not the machine of this record.`,
          'caution',
        ),
        row('Do nothing here until you know which one you stand at.', 'caution'),
      )
    case 'instrument.picked':
      return block(row(`With ${instrumentName(defs, entry.instrument)}`))
    case 'instrument.put-back':
      return entry.mispicked === undefined
        ? block(row(`Instrument put back: ${entry.why}.`, 'caution'))
        : block(row(`${entry.mispicked} put back: ${entry.why}.`))
    case 'instrument.doubted':
    case 'branch.left':
    case 'not-applicable.taken-back':
      return takenBackBlock(defs, state, entry, margin, byLine(entry))
    case 'step.done':
      return block(row(`${titleOf(defs, entry.step)}: done`), ...backRows(entry.paper))
    case 'step.confirmed':
      return block(
        row(`${titleOf(defs, entry.step)}: seen to be so`),
        row(`  ${asKind(stepById(defs, entry.step), 'confirm').step.seen}`),
        ...backRows(entry.paper),
      )
    case 'step.objected':
      return block(row(`${titleOf(defs, entry.step)}: not so`, 'caution'), row(`  ${entry.remark}`))
    case 'step.reopened':
      return block(
        row(`Went back to ${titleOf(defs, entry.step)}: ${entry.why}`, 'caution'),
        ...voidRows(defs, entry.voids),
      )
    case 'finding.corrected':
      return withNonconformance(defs, state, entry, takenBackBlock(defs, state, entry, margin, byLine(entry)))
    case 'finding.observed':
      return withNonconformance(defs, state, entry, findingBlock(defs, entry, margin))
    case 'verdict.given':
      return withNonconformance(
        defs,
        state,
        entry,
        verdictBlock(defs, state, titleOf(defs, entry.step), entry.verdict, {
          step: entry.step,
          margin,
          right: byLine(entry),
          columns,
        }),
        permitRows(defs, state, entry.step, entry.at),
      )
    case 'disposition.set':
      return block(...dispositionRows(defs, state, entry))
    case 'disposition.countersigned':
      return block(
        entry.agrees
          ? row(
              `${entry.person} countersigned what was said by radio${bySign(entry.signed)}: ${titleOf(defs, entry.step)}`,
            )
          : row(
              `${entry.person} says it was not so by radio${bySign(entry.signed)}: ${titleOf(defs, entry.step)} is void`,
              'caution',
            ),
        ...voidRows(defs, entry.voids),
      )
    case 'deviation.permitted':
      return block(...deviationRows(defs, state, entry))
    case 'point.signed':
      return block(
        row(`${POINT_NAMES[entry.point]}, signed by ${entry.person}${bySign(entry.signed)}`, 'strong'),
        row(`  ${titleOf(defs, entry.step)}`),
      )
    case 'point.notice-given':
      return block(row(`Notice of the witness point ${titleOf(defs, entry.step)} given to: ${entry.whom}`))
    case 'point.not-attended':
      return block(
        row(`${POINT_NAMES.witness}, NOT ATTENDED: ${titleOf(defs, entry.step)}`, 'caution'),
        row(`  notice was given to ${entry.whom}, and its time has passed`),
      )
    case 'readings.questioned':
      return block(row(`Question for the review: ${entry.text}`, 'caution'), row(`  ${NO_FINDING}`))
    case 'note.written':
      return block(row(`Note: ${entry.text}`))
    case 'file.attached':
      return block(row(`Attached: ${fileText(entry)}`))
    case 'stop.raised':
    case 'stop.explained':
    case 'stop.released':
    case 'stop.stands':
      return { margin, right: byLine(entry), rows: stopRows(defs, state, entry) }
    case 'thing.placed':
    case 'thing.seen':
    case 'thing.accounted':
    case 'things.handed-on':
      return { margin, right: byLine(entry), rows: registerRows(state, entry) }
    case 'elsewhere.seen':
    case 'elsewhere.gone':
      return { margin, right: byLine(entry), rows: elsewhereRows(state, entry) }
    case 'practice.asked':
    case 'practice.called':
    case 'practice.named':
    case 'practice.hinted':
      return block(...practiceRows(defs, entry))
    case 'job.left':
      return block(row('Left here. Everything above is on disk; hold points fall when nobody watches.'))
    case 'job.taken-up':
      return block(
        row('Taken up again. Hold points will be asked again before the next step that needs them.'),
      )
    case 'record.taken-in':
      return block(...recordRows(defs, entry))
    case 'paper.row':
    case 'paper.unread':
    case 'paper.signed':
      return paperBlock(defs, entry, margin, byLine(entry))
    case 'left.adopted':
      return block(...adoptedRows(entry))
    case 'remark.made':
      return block(...remarkRows(entry))
    case 'clock.moved':
      return block(
        row(`The clock moved by ${entry.seconds} s: every hold point has fallen.`, 'caution'),
        ...(defs.steps.some((s) => pointOf(s)?.kind === 'witness')
          ? [row('Notices given for witness points count for nothing any more.', 'caution')]
          : []),
      )
    case 'job.closed':
      return block(
        row(closingLine(defs, state, entry.outcome), 'strong'),
        ...courseRows(defs, state),
        ...decidedRows(defs, state),
        ...fellAtClose(defs, state),
        ...takenInRows(state),
        ...correctedAtClose(defs, state),
        ...keptAtClose(defs, state),
        ...changeLines(defs, state).map((line) => row(line)),
        ...unsettledRows(defs, state),
        ...leftOutRows(defs, state),
        ...stillOpenRows(state),
        ...openRows(defs, state),
        ...staysOnRows(defs, state),
      )
    case 'gate.closed':
      return lapsedBlock(gateBlock(defs, entry, margin, byLine(entry)), lapsedText(defs, state, entry))
    case 'evidence.given':
    case 'evidence.failed':
    case 'gate.opened':
    case 'people.clear':
    case 'wait.begun':
      return gateBlock(defs, entry, margin, byLine(entry), falseAt(defs, state, entry.step))
    case 'reading.taken':
    case 'reading.doubted':
    case 'reading.late':
    case 'reading.corrected':
    case 'reading.not-applicable':
    case 'doubt.settled':
    case 'late.settled':
    case 'reading.dropped':
      return readingBlock(defs, state, entry, byLine(entry))
  }
}

function findingBlock(
  defs: Definitions,
  entry: Extract<Entry, { type: 'finding.observed' }>,
  margin: string,
): Block {
  const { step } = asKind(stepById(defs, entry.step), 'observe')
  const isFinding = step.conditions.find((c) => c.id === entry.condition)?.finding === true
  const rows = [
    row(`${step.title}: ${labelsOf(defs, entry.step, allOf(entry))}`, isFinding ? 'strong' : 'plain'),
  ]
  if (entry.note !== undefined) rows.push(row(`  ${entry.note}`))
  rows.push(...backRows(entry.paper))
  return { margin, right: byLine(entry), rows }
}

function openingBlock(defs: Definitions, entry: Extract<Entry, { type: 'job.opened' }>): Block {
  const { procedure, machine } = defs
  const rows = [
    row(`${procedure.title}, edition ${procedure.edition}`, 'strong'),
    // The machine is not named here: its tag is to be read from the plate, not from the screen.
    row(`Machine record edition ${machine.edition}${machine.invented === true ? ', invented' : ''}`),
    row(`Opened ${entry.at.slice(0, 10)} at ${entry.at.slice(11, 16)}, Barover ${entry.program.version}`),
  ]
  if (entry.paper === true) rows.push(FROM_PAPER_ROW)
  if (entry.record !== 'REAL')
    rows.push(row(`${entry.record}: this is no record of work on a machine.`, 'strong'))
  if (entry.clock === 'set') rows.push(row(`Its clock was set by hand to ${entry.at.slice(11, 16)}.`))
  if (entry.answers === 'script')
    rows.push(row('Its answers came from a file or a pipe: gates not enforced on a person.'))
  if (entry.practice !== undefined) rows.push(...practiceOpeningRows(defs, entry.practice))
  rows.push(
    row(
      'The maker’s manual, site permits, local code and licensed practice come first. Barover helps trained people; it replaces none of these.',
      'caution',
    ),
  )
  for (const not of procedure.not_for) rows.push(row(`Not for: ${not}`, 'faint'))
  return { margin: '', rows }
}
