// Which instrument is taken: all of the right kind, those that may not be used with the reason.
import { refusedNow } from '../job/admit-people.ts'
import type { Definitions } from '../job/definitions.ts'
import { inertLetIn } from '../job/inert-let-in.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { noneFits } from '../talk/none-fits.ts'
import { type Row, row } from './block.ts'
import { numbered } from './numbered.ts'
import type { PromptView } from './prompt-view.ts'

const WRONG_PICK = 'A wrong pick: back, before anything is read with it.'

export function pickView(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'pick' }>,
): Partial<PromptView> {
  const { seat, step, options } = prompt
  const none = noneFits(defs, state, prompt)
  const refused = options.map((one) => refusedNow(defs, state, seat.id, one))
  return {
    margin: String(step.number),
    title: `Which instrument for ${seat.for}?`,
    // What to know of them comes first: on a low screen the numbers stand where they are keyed.
    ask: [
      ...(options.some(({ kind }) => kind === 'gas_meter') ? [inertRow(defs, state)] : []),
      ...numbered(
        options.map(({ id, title, calibration }, i) => {
          const why = refused[i] ?? null
          return `${id}  ${title}${why === null ? `, calibration due ${calibration.due}` : `  NOT TO BE USED: ${why}`}`
        }),
      ),
      none === null ? row(WRONG_PICK) : row(none, 'caution'),
    ],
  }
}

/** In gas without air most meters show no flammables at all: whether this job let any in decides which to take. */
function inertRow(defs: Definitions, state: State): Row {
  const sheet = inertLetIn(defs, state)
  return sheet === null
    ? row('This log has no inert gas let in. In doubt take a meter that reads without air.')
    : row(`Inert gas was let in, sheet ${sheet}: take one that reads without air.`, 'caution')
}
