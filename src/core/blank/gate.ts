// A hold point on paper: a permit with a box for every line of its evidence, in the order they are asked.
import type { Evidence, EvidenceOf } from '../definition/evidence.ts'
import { type Definitions, gasLimitById, hazardName } from '../job/definitions.ts'
import { GAS_UNITS } from '../job/evidence-gas.ts'
import { massUnit } from '../job/evidence-lift.ts'
import { type GateStep, inspectedWords, pointsAsked } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { assertNever } from '../lib/result.ts'
import { capital, list } from '../lib/wording.ts'
import { boundsText } from '../sheet/briefing-step.ts'
import { gasLimitText } from '../sheet/gate-block.ts'
import {
  type BlankPiece,
  type Box,
  box,
  boxes,
  empty,
  INITIALS,
  NOT_ENFORCED,
  SIGNED,
  TIME,
  together,
  words,
} from './blank.ts'

/** Rows for numbers that each person gives: more people take another copy of the page. */
const PEOPLE = 4

/** `told`: what its screen says above the evidence. */
export function permit(defs: Definitions, gate: GateStep, told: readonly BlankPiece[]): BlankPiece {
  const { step, number } = gate
  const held = step.holds.map((id) => hazardName(defs, id)).join('; ')
  const name = /^hold point\b/i.test(step.title) ? step.title : `Hold point: ${step.title}`
  return {
    is: 'permit',
    margin: String(number),
    name,
    pieces: [
      words(name, 'stamp', String(number)),
      words(`It keeps people from: ${held}`, 'strong'),
      words(`${capital(NOT_ENFORCED)}. Nobody goes on until every line below is filled in.`, 'caution'),
      ...told,
      ...step.evidence.map((evidence, n) => together(...evidencePieces(defs, gate, evidence, n + 1))),
      together(
        words('Complete: every line above is filled in, inside its limit, and not stale', 'strong'),
        boxes([box('the first of it is stale from', 4), ...SIGNED], [[]]),
      ),
      together(
        words(
          `Fallen, lapsed, or something let in: everybody comes out and stands clear first, and writes ${step.clear_words}. Then all that fell is proved anew, on another copy of this page.`,
          'caution',
        ),
        boxes([box(`all out and clear: write ${step.clear_words}`, 4), ...SIGNED], [[]]),
      ),
    ],
  }
}

function evidencePieces(defs: Definitions, gate: GateStep, evidence: Evidence, n: number): BlankPiece[] {
  const label = capital(
    itemLabel(defs, { key: evidence.id, evidence, point: null, person: null, part: null }).trim(),
  )
  const { against } = { against: undefined, ...evidence }
  const proves =
    against === undefined
      ? []
      : [words(`It proves only: ${against.map((id) => hazardName(defs, id)).join('; ')}`, 'faint')]
  const lead = (text: string) => words(`${n}  ${text}`, 'strong')
  switch (evidence.kind) {
    case 'locks':
    case 'numbers':
      return [lead(evidence.ask), ...numberWords(evidence), ...proves, numberBoxes(defs, evidence)]
    case 'words':
      return [
        lead(evidence.ask),
        ...wordsWords(evidence),
        ...proves,
        boxes([box(`only if it is so, write: ${evidence.words}`, 6), ...SIGNED], [[]]),
      ]
    case 'gas':
      return [
        lead(evidence.ask),
        ...gasWords(defs, gate, evidence, label),
        ...proves,
        gasBoxes(defs, evidence),
      ]
    case 'measured':
      return [
        lead(evidence.ask),
        words(`${label}: must be ${boundsText(evidence)}. ${evidence.source}`),
        words(
          `Approved: ${evidence.approved_by}, since ${evidence.since}. Stale after ${evidence.life.text}.`,
        ),
        ...proves,
        boxes([box('figure and unit', 2.4), box('instrument number', 2.4), ...STALE], [[]]),
      ]
    case 'wait':
      return [
        lead(evidence.ask),
        words(`A wait of ${evidence.lasts.text}, by the clock.`),
        ...proves,
        boxes(
          [box('write', 6), ...SIGNED],
          [
            [`To begin it: ${evidence.begin_words}`],
            [`Not before ${evidence.lasts.text} are over, and only if it is so: ${evidence.words}`],
          ],
        ),
      ]
    case 'lift':
      return [
        lead(`Lift plan: ${label.replace(/, $/, '')}. More load than rating: nothing is lifted.`),
        ...proves,
        boxes(
          [box('what', 5.4), box('', 2.6), ...SIGNED],
          [
            [`${evidence.load} (${massUnit(defs)})`],
            [`${evidence.rating} (${massUnit(defs)})`],
            [evidence.sling],
            [`${evidence.inspected} Write: ${inspectedWords(evidence)}`],
          ],
        ),
      ]
    case 'witness':
      return [
        lead(evidence.ask),
        words(`Witness: ${list(evidence.roles, 'or')}, who did none of it.`),
        boxes([box('name', 3), box('signature', 3), ...SIGNED], [[]]),
      ]
    default:
      return assertNever(evidence)
  }
}

const STALE: readonly Box[] = [TIME, box('stale from', 1.6), INITIALS]

type Numbers = EvidenceOf<'locks'> | EvidenceOf<'numbers'>

function numberWords(evidence: Numbers): BlankPiece[] {
  const named = (id: string) => id.replaceAll('_', ' ')
  return [
    ...(evidence.notes === undefined ? [] : [words(`Noted as ${named(evidence.notes)}, to compare later.`)]),
    ...(evidence.same_as === undefined
      ? []
      : [
          words(
            `It has to be the number noted before as ${named(evidence.same_as)}: look back. Another is no evidence.`,
          ),
        ]),
    ...(evidence.kind === 'numbers' && evidence.at_least !== undefined
      ? [words('Nobody does this alone: with fewer than two people it stays shut.', 'caution')]
      : []),
  ]
}

function numberBoxes(defs: Definitions, evidence: Numbers): BlankPiece {
  const off = evidence.taken_off === undefined ? [] : [box('taken off by', 1.6)]
  const number = `${evidence.kind === 'locks' ? 'lock' : evidence.of.replaceAll('_', ' ')} number`
  if (evidence.kind === 'numbers' && evidence.per === 'person')
    return boxes([box('whose', 2.4), box(number, 3.6), ...off, ...SIGNED], empty(PEOPLE))
  if (evidence.kind === 'numbers' && evidence.per === 'once')
    return boxes([box(number, 6), ...off, ...SIGNED], [[]])
  return boxes(
    [box('at', 3.6), box(number, 2.4), ...off, ...SIGNED],
    pointsAsked(defs, evidence).map(({ name }) => [name]),
  )
}

function wordsWords({ life, register, findings, seat }: EvidenceOf<'words'>): BlankPiece[] {
  return [
    ...(life === undefined ? [] : [words(`Stale after ${life.text}.`)]),
    ...(register === undefined
      ? []
      : [words('Only while nothing is open in the register at the end of this sheet.')]),
    ...(findings === undefined
      ? []
      : [words('Only once a lead has decided on everything that was found, and holds none of it.')]),
    ...(seat === undefined ? [] : [words('Said of the instrument in use: with another it is asked again.')]),
  ]
}

function gasWords(
  defs: Definitions,
  gate: GateStep,
  evidence: EvidenceOf<'gas'>,
  label: string,
): BlankPiece[] {
  const limit = gasLimitById(defs, evidence.limit)
  const oxygen = gate.step.evidence.findIndex(({ id }) => id === evidence.oxygen)
  return [
    words(`${label}: must be ${gasLimitText(defs, evidence.limit)}`),
    ...(limit === undefined
      ? []
      : [words(`${limit.source}. Approved: ${limit.approved_by}, since ${limit.since}.`)]),
    ...(oxygen < 0
      ? []
      : [words(`After the oxygen of line ${oxygen + 1}, and by a method that is good at that oxygen.`)]),
    words(
      `Stale after ${defs.machine.site.gas.life.text}. Outside its limit: everybody comes out and stands clear.`,
      'caution',
    ),
  ]
}

function gasBoxes(defs: Definitions, { limit }: EvidenceOf<'gas'>): BlankPiece {
  const gas = gasLimitById(defs, limit)?.gas
  const unit = gas === undefined ? 'figure and unit' : `figure, ${GAS_UNITS[gas]}`
  return boxes([box(unit, 2.4), box('meter number', 2.4), ...STALE], [[]])
}
