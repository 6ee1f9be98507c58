// What stands above the first question at the desk: what the word is for, whose signature it takes, who signs on, and what cannot be
// done by somebody alone. All of it before anything is asked, so that nobody keys a choice, a reason and a PIN for nothing.
import type { Person } from '../definition/crew.ts'
import { barsTrainee } from '../job/admit-crew.ts'
import { type Asked, barsDeciding, disposable } from '../job/admit-disposition.ts'
import type { Definitions } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import { openWords } from '../job/open-words.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { type DeskWord, deskOf, takenUp } from './desk-words.ts'
import { maySignPoint, peopleText } from './may-sign.ts'
import { offersAt } from './offered.ts'

/** Words whose first question is who is at the keys. */
type Signed = Exclude<DeskWord, 'remark' | 'stop' | 'release' | 'close' | 'cause'>

/** A PIN that signed somebody on signs for the first act of theirs behind it, keyed so soon. Common practice, no source. */
export const PIN_COUNTS_MS = 5 * 60_000

/** Acts of one person that the PIN of their sign-on signs for too. What two people sign for is never among them. */
export const SIGNED_WITH_ON: readonly string[] = ['dispose', 'countersign', 'sign-point', 'sheet-sign']

/** `state`: before anybody signed on. Empty where nobody has to. */
export function deskFirst(defs: Definitions, state: State, word: DeskWord): string[] {
  if (state.closed !== null || !isSigned(word)) return []
  const up = { ...takenUp(state), doer: '' }
  const prompt = next(defs, up)
  const act = deskOf(defs, state).acts.find((one) => one.word === word)
  if (act === undefined) return []
  const on = defs.crew.crew.filter((person) => barsTrainee(state, person) === null)
  return [
    `${word}: ${act.says}.`,
    ...whoLines(defs, up, prompt, word),
    `First signs on whoever is at the keys: ${on.map(({ id }) => id).join(', ')}.`,
    ...(ONE_PIN.includes(word)
      ? [
          'Their PIN signs for the first of it that they decide too; it is asked again for the next, and after 5 min.',
        ]
      : []),
  ]
}

const ONE_PIN: readonly Signed[] = ['dispose', 'countersign', 'sign']

function isSigned(word: DeskWord): word is Signed {
  return ['dispose', 'countersign', 'sign', 'taken', 'note'].includes(word)
}

function whoLines(defs: Definitions, state: State, prompt: Prompt, word: Signed): string[] {
  switch (word) {
    case 'dispose':
      return decideLines(defs, state, prompt)
    case 'countersign': {
      const leads = [...new Set(openWords(state).map(({ lead }) => lead))]
      return [`Only the lead who said it signs or denies it: ${list(leads, 'or')}. No other lead can.`]
    }
    case 'sign':
      return signLines(defs, state, prompt)
    case 'taken':
      return ['Two people who saw it sign, each with their PIN: nobody does this alone.']
    case 'note':
      return ['Anybody of the crew file may.']
  }
}

function decideLines(defs: Definitions, state: State, prompt: Prompt): string[] {
  if (prompt.kind === 'open-things') return [`Signed by a lead: ${peopleText(leadsOf(defs))}.`]
  const asked = askedOf(defs, state, prompt)
  if (asked === null) return []
  const may = defs.crew.crew.filter((person) => barsDeciding(person, asked) === null)
  if (may.length === 0)
    return ['Nobody of the crew file may decide on it: every lead of it measured or keyed it.']
  return [`Decided by a lead who did none of that work: ${peopleText(may)}.`, radioLine(defs, asked, may)]
}

/** Whoever is alone at the keys keys no word of a lead by radio: that is somebody else's. */
function radioLine({ crew }: Definitions, asked: Asked, may: readonly Person[]): string {
  const keyers = crew.crew.filter(
    ({ id, role }) => role !== 'trainee' && !asked.doers.has(id) && may.some((lead) => lead.id !== id),
  )
  return keyers.length === 0
    ? 'Not by radio: nobody of the crew file may key it.'
    : `By radio never alone: it is keyed by somebody else than who is at the keys, who heard it and did none of the work. Of ${keyers.map(({ id }) => id).join(', ')} a second one comes on first, by the words sign on.`
}

function askedOf(defs: Definitions, state: State, prompt: Prompt): Asked | null {
  const about =
    prompt.kind === 'decide'
      ? {
          step: prompt.step.id,
          choice: offersAt(state, prompt.step).find(({ barred }) => barred === null)?.choice,
        }
      : prompt.kind === 'findings'
        ? { step: prompt.open[0]?.step, choice: 'hold' }
        : null
  if (about?.step === undefined || about.choice === undefined) return null
  const found = disposable(defs, state, { step: about.step, choice: about.choice })
  return found.ok ? found.value : null
}

function signLines(defs: Definitions, state: State, prompt: Prompt): string[] {
  if (prompt.kind === 'sheet-sign')
    return [
      prompt.as === 'keyed'
        ? 'Signed by whoever keyed it.'
        : `Signed by a lead who keyed none of it, with the paper in hand: ${peopleText(leadsOf(defs).filter(({ id }) => id !== state.paper?.keyedBy && state.paper?.keyers.includes(id) !== true))}.`,
    ]
  if (prompt.kind !== 'review') return []
  const may = maySignPoint(defs, state, prompt.step)
  return [
    may.length === 0
      ? 'Nobody of the crew file may sign it.'
      : `Signed by ${peopleText(may)}, and never by whoever is at the keys: somebody else signs on first.`,
  ]
}

const leadsOf = ({ crew }: Definitions) => crew.crew.filter(({ role }) => role === 'lead')
