// One step as the crew talks it through before the job: what is done, what it exposes people to, who signs. Nothing to fill in.
import { characteristicOf } from '../definition/characteristics.ts'
import type { Evidence, EvidenceOf, Need, Point, StepOf } from '../definition/procedure.ts'
import { type Definitions, hazardName, type PlacedStep } from '../job/definitions.ts'
import { gatesBefore, inspectedWords, pointsAsked } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { ruleWords } from '../job/rule-words.ts'
import { assertNever } from '../lib/result.ts'
import { a, list } from '../lib/wording.ts'
import { alikeWithin } from '../talk/alike-within.ts'
import { POINT_NAMES } from '../talk/points.ts'
import { type Block, type Row, row } from './block.ts'
import { gasLimitText } from './gate-block.ts'

/** Conditions of the parts it stands in count for it too. */
export function briefingStep(defs: Definitions, placed: PlacedStep): Block {
  const { step } = placed
  // Names hold commas of their own.
  const names = (ids: readonly string[] | undefined) =>
    (ids ?? []).map((id) => hazardName(defs, id)).join('; ')
  const rows = [
    row(step.title, 'strong'),
    ...[...placed.inside, placed].flatMap((one) => conditionRows(defs, one)),
    ...((step.exposes ?? []).length === 0
      ? []
      : [row(`Exposes people to: ${names(step.exposes)}. ${behind(defs, placed)}`, 'caution')]),
    ...('lets_in' in step && step.lets_in !== undefined
      ? [row(`Lets in: ${names(step.lets_in)}. Hold points that hold it are asked again.`, 'caution')]
      : []),
    ...(step.hazard === undefined ? [] : [row(`Hazard: ${step.hazard}`, 'caution')]),
    ...(step.trouble === undefined ? [] : [row(`If it goes wrong: ${step.trouble}`, 'caution')]),
    ...(step.text === undefined ? [] : [row(step.text)]),
    ...kindRows(defs, placed),
    ...('places' in step ? (step.places ?? []) : []).map(({ what }) =>
      row(`Put in, and out again before the job ends: ${what}`),
    ),
    ...needsRows(step.needs ?? []),
    ...('point' in step && step.point !== undefined ? [row(pointText(step.point), 'strong')] : []),
  ]
  return { margin: String(placed.number), rows }
}

/** `Behind hold points 3 and 8.` */
export function behind(defs: Definitions, placed: PlacedStep): string {
  const numbers = gatesBefore(defs, placed).map((gate) => String(gate.number))
  if (numbers.length === 0) return 'NO HOLD POINT holds it.'
  return `Behind hold point${numbers.length === 1 ? '' : 's'} ${list(numbers)}.`
}

const UNKNOWN = {
  do: 'it is done',
  skip: 'it is left out',
  hold: 'the job waits here',
} as const

export function conditionRows(defs: Definitions, placed: PlacedStep): Row[] {
  const { step } = placed
  if (step.when === undefined) return []
  const whole = step.kind === 'part' ? `All of ${step.title}: only if` : 'Only if'
  return [row(`${whole} ${ruleWords(defs, placed)}. While that is unknown ${UNKNOWN[step.when.unknown]}.`)]
}

function needsRows(needs: readonly Need[]): Row[] {
  if (needs.length === 0) return []
  const things = needs.map(({ what, note }) => (note === undefined ? what : `${what} (${note})`))
  return [row(`Have there: ${things.join('; ')}`)]
}

export function pointText(point: Point): string {
  const who = list(point.roles, 'or')
  const notice = point.kind === 'witness' ? ` after a notice of ${point.notice.text}` : ''
  return `${POINT_NAMES[point.kind]}: signed by ${a(who)} who did not do the step${notice}`
}

function kindRows(defs: Definitions, placed: PlacedStep): Row[] {
  const { step } = placed
  switch (step.kind) {
    case 'tell':
    case 'part':
      return []
    case 'confirm':
      return [row(`To be seen: ${step.seen}`)]
    case 'gate': {
      const held = step.holds.map((id) => hazardName(defs, id))
      return [
        row(`HOLD POINT. It keeps people from: ${held.join('; ')}`, 'strong'),
        ...step.evidence.map((one) => row(`- ${evidenceText(defs, one)}`)),
        row(`Before it is asked again everybody comes out, and then: ${step.clear_words}`),
      ]
    }
    case 'read':
      return readRows(defs, step)
    case 'observe':
      return step.conditions.map(({ label, finding }) =>
        row(`- ${label}${finding === true ? ' (goes to the findings)' : ''}`),
      )
    case 'judge':
      return [row(`Barover judges ${judged(step)} against the limits on record.`)]
    case 'decide':
      return [row(`A lead decides: ${list(step.choices, 'or')}.`)]
    default:
      return assertNever(step)
  }
}

export function judged(step: StepOf<'judge'>): string {
  switch (step.compute) {
    case 'figures':
      return list(step.figures.map(({ characteristic }) => characteristicOf(characteristic).label))
    case 'pocket_setting':
      return 'driver load, and rod load, reversal and discharge temperature of every cylinder, for each opening of the pocket,'
    case 'bore_form':
      return list(step.against)
    default:
      return assertNever(step)
  }
}

export function readRows(defs: Definitions, read: StepOf<'read'>): Row[] {
  const seat = defs.seats.find((one) => one.id === read.with)
  const kinds = (seat?.kinds ?? []).map((kind) => kind.replaceAll('_', ' '))
  const { at_least: least, within } = read.repeats
  const times = least === 1 ? 'once' : `${least} times, alike within ${alikeWithin(defs, within)}`
  const directions = read.axes ?? []
  const each = directions.length > 1 ? 'each ' : ''
  const axes = directions.length === 0 ? '' : `, ${each}${list(directions.map((one) => one.label))}`
  return [
    row(`Measured: ${read.of}, ${times}, with ${a(list(kinds, 'or'))}`),
    row(`At: ${read.stations.map((one) => one.label).join('; ')}${axes}`),
  ]
}

function evidenceText(defs: Definitions, evidence: Evidence): string {
  const label = () => itemLabel(defs, { key: evidence.id, evidence, point: null, person: null, part: null })
  switch (evidence.kind) {
    case 'locks': {
      const points = pointsAsked(defs, evidence).map((point) => point.name)
      const which = evidence.taken_off === undefined ? 'at' : 'each with who took it off, off'
      return `${points.length} locks by number, ${which}: ${points.join('; ')}. ${evidence.ask}`
    }
    case 'words':
      return `${evidence.ask} Type: ${evidence.words}`
    case 'gas':
      return `Gas, ${label()}: ${gasLimitText(defs, evidence.limit)}. ${evidence.ask}`
    case 'measured':
      return `${evidence.place}, ${boundsText(evidence)}. ${evidence.ask}`
    case 'numbers':
      return `${evidence.of.replaceAll('_', ' ')} by number${PER[evidence.per]}. ${evidence.ask}`
    case 'wait':
      return `A wait of ${evidence.lasts.text}. ${evidence.ask} Type: ${evidence.words}`
    case 'lift':
      return `Lift plan. ${evidence.load} ${evidence.rating} ${evidence.sling} ${evidence.inspected} Type: ${inspectedWords(evidence)}`
    case 'witness':
      return `Witness, ${a(list(evidence.roles, 'or'))} who did none of it. ${evidence.ask}`
    default:
      return assertNever(evidence)
  }
}

const PER = {
  once: '',
  isolation_point: ', one for each isolation point',
  person: ', one for each person on the job',
} as const

export function boundsText({ at_least: least, at_most: most }: EvidenceOf<'measured'>): string {
  if (least !== undefined && most !== undefined) return `${least.text} to ${most.text}`
  return most === undefined ? `at least ${least?.text ?? '?'}` : `at most ${most.text}`
}
