// One step of a blank sheet: all that its screen says, and boxes for what is keyed there.
import type { StepOf } from '../definition/procedure.ts'
import { asKind, type Definitions, hazardName, type PlacedStep } from '../job/definitions.ts'
import { assertNever } from '../lib/result.ts'
import type { Tone } from '../sheet/block.ts'
import { behind, conditionRows, pointText } from '../sheet/briefing-step.ts'
import { type BlankPiece, box, boxes, INITIALS, SIGNED, TIME, words } from './blank.ts'
import { figurePieces } from './drawings.ts'
import { permit } from './gate.ts'
import { judgePieces } from './judge.ts'
import { readPieces } from './read.ts'

export function stepPieces(defs: Definitions, placed: PlacedStep): BlankPiece[] {
  const { step, number } = placed
  if (step.kind === 'gate') return [permit(defs, asKind(placed, 'gate'), told(defs, placed))]
  return [words(step.title, 'strong', String(number)), ...told(defs, placed), ...kindPieces(defs, placed)]
}

/** Conditions, hazards, trouble and what to do, in full. */
function told(defs: Definitions, placed: PlacedStep): BlankPiece[] {
  const { step } = placed
  const names = (ids: readonly string[]) => ids.map((id) => hazardName(defs, id)).join('; ')
  const line = (text: string | undefined, tone: Tone, lead = '') =>
    text === undefined ? [] : [words(`${lead}${text}`, tone)]
  const { exposes = [] } = step
  const letsIn = 'lets_in' in step ? (step.lets_in ?? []) : []
  return [
    ...[...placed.inside, placed]
      .flatMap((one) => conditionRows(defs, one))
      .map(({ text, tone }) => words(text, tone)),
    ...(exposes.length === 0
      ? []
      : [words(`Exposes people to: ${names(exposes)}. ${behind(defs, placed)}`, 'caution')]),
    ...(letsIn.length === 0
      ? []
      : [words(`Lets in: ${names(letsIn)}. Hold points that hold it are asked again.`, 'caution')]),
    ...line(step.hazard, 'caution', 'Hazard: '),
    ...line(step.trouble, 'caution', 'If it goes wrong: '),
    ...line(step.text, 'plain'),
    ...(step.needs ?? []).map(({ what, note }) =>
      words(`Have there: ${what}${note === undefined ? '' : ` (${note})`}`),
    ),
    ...('places' in step ? (step.places ?? []) : []).map(({ what }) =>
      words(`Put in, and into the register at the end: ${what}`),
    ),
    ...('drawing' in step && step.kind !== 'read' ? figurePieces(step.drawing) : []),
  ]
}

function kindPieces(defs: Definitions, placed: PlacedStep): BlankPiece[] {
  const { step } = placed
  switch (step.kind) {
    case 'tell':
      return [signed('done'), ...pointPieces(step.point)]
    case 'confirm':
      return [{ is: 'ticks', texts: [step.seen] }, signed('seen'), ...pointPieces(step.point)]
    case 'read':
      return [...readPieces(defs, asKind(placed, 'read')), ...pointPieces(step.point)]
    case 'observe':
      return [...observePieces(step), ...pointPieces(step.point)]
    case 'judge':
      return [...judgePieces(defs, step), ...pointPieces(step.point)]
    case 'decide':
      return [...decidePieces(defs, placed, step), ...pointPieces(step.point)]
    case 'gate':
    case 'part':
      return []
    default:
      return assertNever(step)
  }
}

function signed(what: string): BlankPiece {
  return boxes([box(`${what}; remarks`, 6), ...SIGNED], [[]])
}

function observePieces({ conditions }: StepOf<'observe'>): BlankPiece[] {
  return [
    words('What is seen: one of these'),
    {
      is: 'ticks',
      texts: conditions.map(
        ({ label, note, finding }) =>
          `${label}${note === true ? ' (in words below)' : ''}${finding === true ? ' (goes to what was found, at the end)' : ''}`,
      ),
    },
    boxes([box('in words', 6), ...SIGNED], [[]]),
  ]
}

function decidePieces(defs: Definitions, placed: PlacedStep, step: StepOf<'decide'>): BlankPiece[] {
  const judge = defs.steps.find(({ id }) => id === placed.scope + step.about)
  return [
    words(
      `Decided by a lead who took none of the readings, on the verdict of ${judge === undefined ? 'the judge' : `step ${judge.number}, ${judge.step.title}`}. On paper there is none until it is worked out.`,
    ),
    { is: 'ticks', texts: step.choices },
    boxes([box('verdict, and how it was worked out', 4), box('why', 4), box('lead', 1.3), TIME], [[]]),
  ]
}

function pointPieces(point: Parameters<typeof pointText>[0] | undefined): BlankPiece[] {
  if (point === undefined) return []
  return [
    words(pointText(point), 'strong'),
    boxes(
      [
        ...(point.kind === 'witness' ? [box('notice given to, time', 3)] : []),
        box('name', 3),
        box('signature', 3),
        TIME,
        INITIALS,
      ],
      [[]],
    ),
  ]
}
