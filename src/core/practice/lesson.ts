// What there is to say of one answer in a practice session, at once: right or wrong, why, and where that stands. Nothing of it is on
// record: it follows from the seed and the entries, and is told anew each time they are read.
import {
  asKind,
  type Definitions,
  gasLimitById,
  instrumentById,
  type PlacedStep,
} from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { GAS_UNITS, readGas } from '../job/evidence-gas.ts'
import { evidenceByKey } from '../job/gate.ts'
import { judgeMeasured } from '../job/measured-limit.ts'
import { lineOf, PLATE, type PracticeState } from '../job/practice.ts'
import type { Pending, State } from '../job/state.ts'
import { readStamp } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { quantity } from '../units/index.ts'
import { truthOf } from './ask.ts'
import { falseProofs } from './false-proof.ts'
import {
  confirmLesson,
  correctedLesson,
  decisionLesson,
  findingLesson,
  namingLesson,
} from './lesson-found.ts'
import { evidenceLesson, failedLesson, plateLesson } from './lesson-gate.ts'
import { openedLesson } from './lesson-opened.ts'
import { correctionLesson, takenLesson, waitingLesson } from './lesson-reading.ts'
import { verdictLesson } from './lesson-verdict.ts'
import { lookedAt, measuredFor, measuredForCorrection } from './looks.ts'
import { type Lesson, right, type Scene } from './marks.ts'

/** Null: nothing to say of this entry, or no practice session. `state` is the one after it. */
export function lessonOn(defs: Definitions, state: State, entry: Entry): Lesson | null {
  const { practice } = state
  if (practice === null) return null
  const at = (of: string): Scene => ({ defs, state, practice, asked: lookedAt(practice, of, entry.seq) })
  const measured = ({ place, seq }: Pick<Pending, 'place' | 'seq'>): Scene => ({
    defs,
    state,
    practice,
    asked: measuredFor(practice, place, seq),
  })
  switch (entry.type) {
    case 'machine.named':
    case 'machine.mismatched':
      return plateLesson(at(PLATE), entry)
    case 'evidence.given':
      return evidenceLesson(at(lineOf(entry.step, entry.item)), {
        ...entry,
        figure: entry.reading?.value ?? null,
        instrument: entry.instrument ?? null,
        atMs: readStamp(entry.at)?.ms ?? Number.NaN,
      })
    case 'gate.opened':
      return openedLesson(defs, state, entry)
    case 'evidence.failed':
      return failedLesson(at(lineOf(entry.step, entry.item)), entry)
    case 'reading.taken':
      return takenLesson(measured(entry), entry)
    case 'reading.doubted':
    case 'reading.late':
      return waitingLesson(measured(entry))
    case 'doubt.settled':
    case 'late.settled':
      return practice.kept === null ? null : takenLesson(measured(practice.kept), practice.kept)
    case 'reading.corrected': {
      const corrects = { place: entry.place, corrects: entry.of, before: entry.seq }
      const { asked, isAnew } = measuredForCorrection(state, practice, corrects)
      return correctionLesson({ defs, state, practice, asked }, entry, isAnew)
    }
    case 'finding.observed':
      return findingLesson(at(entry.step), entry)
    case 'finding.corrected':
      return correctedLesson(at(entry.step), entry)
    case 'step.confirmed':
    case 'step.objected':
      return confirmLesson(at(entry.step), entry)
    case 'verdict.given':
      return verdictLesson(at(entry.step), entry)
    case 'disposition.set':
      return decisionLesson(at(entry.about), entry)
    case 'practice.named':
      return namingLesson(at(''), entry)
    case 'stop.raised':
      return stopLesson(at(''))
    default:
      return null
  }
}

function stopLesson({ defs, state, practice }: Scene): Lesson {
  const saw = practice.asked.some((one) => one.alarm)
  const failed = Object.values(state.gates).some((gate) => gate.cause === 'failed')
  const called = saw || failed || sawBadLine(defs, practice)
  const proofs = called ? [] : falseProofs(defs, { ...state, gates: practice.atStop })
  // No mark: who keys it as it is and goes on is marked for that, and nobody for stopping at a slip of their own.
  if (proofs.length > 0)
    return {
      marks: [],
      isUnsafe: false,
      says: [
        `A STOP is right here: ${list(proofs, 'and')} stands as shown and is not so. Nothing is proved by it.`,
        'Once it is released, that line is shown anew: look first, then key what is there.',
      ],
    }
  return {
    marks: called ? [right('safety')] : [],
    isUnsafe: false,
    says: [
      called
        ? 'Right: what you saw calls for it. A STOP is raised first and explained after.'
        : 'Nothing you have seen called for it yet. A STOP too many costs nothing; one too few cannot be taken back.',
    ],
  }
}

/** Whether anything was looked at for which nothing may be typed, or a figure seen that shuts its hold point, whatever was keyed for it. */
function sawBadLine(defs: Definitions, practice: PracticeState): boolean {
  return practice.asked.some(({ of, atMs, figure, instrument }) => {
    if (of === PLATE) return figure !== null && figure !== defs.machine.machine
    const [step = '', item] = of.split('/')
    const placed = defs.steps.find(({ id }) => id === step)
    if (placed === undefined) return false
    if (item !== undefined && figure !== null && isOutOfLimit(defs, placed, item, { figure, instrument }))
      return true
    const truth = truthOf(defs, practice, placed, item === undefined ? {} : { item }, atMs)
    return (truth?.kind === 'line' && truth.mayType === null) || (truth?.kind === 'done' && !truth.isSo)
  })
}

function isOutOfLimit(
  defs: Definitions,
  placed: PlacedStep,
  item: string,
  { figure, instrument }: { readonly figure: string; readonly instrument: string | null },
): boolean {
  const evidence = placed.step.kind === 'gate' ? evidenceByKey(asKind(placed, 'gate'), item) : undefined
  if (evidence?.kind === 'gas') {
    const gas = gasLimitById(defs, evidence.limit)?.gas
    const read = gas === undefined ? null : readGas(defs, evidence, `${figure} ${GAS_UNITS[gas]}`)
    return read?.ok === true && read.value.outside !== null
  }
  const by = instrumentById(defs, instrument ?? '')
  if (evidence?.kind !== 'measured' || by === undefined || by.kind === 'gas_meter') return false
  return judgeMeasured(evidence, by, quantity(Number(figure), by.unit).si).kind === 'fails'
}
