// What the prompt wants, in one sentence: for whoever keys a word out of habit, such as ok, where something else is asked.
import { asKind, type Definitions, gasLimitById, instrumentById } from '../job/definitions.ts'
import { GAS_UNITS } from '../job/evidence-gas.ts'
import { massUnit } from '../job/evidence-lift.ts'
import { gateState, type Item, inspectedWords } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import type { Prompt } from '../job/next.ts'
import { pointOf } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { STOP_CAUSES } from '../job/stop-causes.ts'
import { waysWanted } from './ask-stop.ts'
import { noneFits } from './none-fits.ts'

const NOTHING = 'Nothing is asked now.'

/** Never a figure: what is read stands on the instrument and nowhere here. */
export function wantedLine(defs: Definitions, state: State, prompt: Prompt): string {
  switch (prompt.kind) {
    case 'closed':
      return 'Nothing is asked: this job is closed.'
    case 'judge':
      return state.practice === null ? NOTHING : 'Asked is your verdict, and what governs it.'
    case 'finish':
      return state.practice === null ? NOTHING : 'Asked is what was hidden: its number, or 0 for nothing.'
    case 'sign-on':
      return 'Asked are your initials.'
    case 'tag':
      return 'Asked is the tag on the plate of the cylinder, as it is read there.'
    case 'pick':
      return (
        noneFits(defs, state, prompt) ??
        `Asked is ${upTo(prompt.options.length)}, or the number on the tag of the instrument.`
      )
    case 'clear':
      return `Asked are the words ${prompt.gate.step.clear_words}, once everybody is out and clear.`
    case 'evidence':
      return evidenceWanted(defs, state, prompt)
    case 'doubt':
      return 'Asked is 1, 2 or 3: what becomes of the figure that is doubted.'
    case 'late':
      return 'Asked is 1 or 2: whether the late figure counts.'
    case 'tell':
      return 'Key done, or press Enter alone, once it is done.'
    case 'confirm':
      return 'Asked is 1 if it is so, 2 if it is not.'
    case 'observe': {
      const { conditions, several } = asKind(prompt.step, 'observe').step
      const together = several === true ? `, or several with a space between, as 2 ${conditions.length}` : ''
      return `Asked is the number of what you see, 1 to ${conditions.length}${together}.`
    }
    case 'read': {
      const instrument = instrumentById(defs, prompt.instrument)
      const unit =
        instrument === undefined || !('unit' in instrument) ? '' : ` in ${unitWord(instrument.unit)}`
      return `Asked is the figure${unit}, as ${prompt.instrument} shows it.`
    }
    case 'decide':
      return `Asked is the decision, 1 to ${asKind(prompt.step, 'decide').step.choices.length} or its word.`
    case 'point':
    case 'review':
      return `Asked are the initials of a ${(pointOf(prompt.step)?.roles ?? []).join(' or ')} who did none of this.`
    case 'held':
      return 'Nothing is asked: the job is on HOLD here, for the reason above.'
    case 'stop-cause':
      return `Asked is why STOP was called, 1 to ${STOP_CAUSES.length}.`
    case 'stopped':
      return `Asked is ${waysWanted(state)}. The job is under STOP.`
    case 'open-things':
      return 'Asked is taken, for each thing that was placed; or hand on.'
    case 'findings':
      return `Asked is the number of a finding, ${upTo(prompt.open.length)}: a lead decides about it.`
    case 'sheet':
      return `Asked is what stands on the sheet: ${prompt.box.label.replace(/\.$/, '')}.`
    case 'sheet-doubt':
      return 'Asked is 1, 2 or 3: what becomes of the figure that is doubted.'
    case 'sheet-sign':
      return prompt.as === 'keyed'
        ? 'Asked are the initials of who keyed it.'
        : 'Asked are the initials of the lead who compared the sheet.'
    case 'countersign':
      return 'Asked are the initials of the lead who said it by radio.'
  }
}

export function upTo(most: number): string {
  return most === 1 ? '1' : `1 to ${most}`
}

/** The sign of the inch is a word of its own, and would be read as that. */
function unitWord(unit: string): string {
  return unit === 'in' ? 'inches' : unit
}

function evidenceWanted(
  defs: Definitions,
  state: State,
  { gate, item }: Extract<Prompt, { kind: 'evidence' }>,
): string {
  const { evidence } = item
  switch (evidence.kind) {
    case 'locks':
    case 'numbers':
      return `Asked is the number: ${itemLabel(defs, item)}${evidence.taken_off === undefined ? '' : ', and behind it the initials of who took it off'}.`
    case 'words':
      return `Asked are the words ${evidence.words}, and only if it is so.`
    case 'wait': {
      const words =
        gateState(state, gate.id).begun[item.key] === undefined ? evidence.begin_words : evidence.words
      return `Asked are the words ${words}, and only if it is so.`
    }
    case 'witness':
      return 'Asked are the initials of the witness.'
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      const unit = limit === undefined ? '' : ` in ${GAS_UNITS[limit.gas]}`
      return `Asked is the figure${unit} that the meter shows.`
    }
    case 'measured': {
      const instrument = instrumentById(defs, state.seats[evidence.with] ?? '')
      const unit =
        instrument === undefined || !('unit' in instrument) ? '' : ` in ${unitWord(instrument.unit)}`
      return `Asked is the figure${unit} that the instrument shows.`
    }
    case 'lift':
      return liftWanted(defs, item)
  }
}

function liftWanted(defs: Definitions, { evidence, part }: Item): string {
  if (evidence.kind !== 'lift') return ''
  if (part === 'inspected') return `Asked are the words ${inspectedWords(evidence)}, and only if it is so.`
  return part === 'sling' ? 'Asked is the number of the sling.' : `Asked is the mass in ${massUnit(defs)}.`
}
