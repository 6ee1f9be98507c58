// Which parts a lead decided to have made new or cut in this job, as the log tells: nothing that was read of one of them before that
// is what went back. Only what a decision says for certain is told: a figure that several parts make names none of them.
import type { RenewedPart } from './adopt.ts'
import { CHANGES_IT } from './as-left.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { State } from './state.ts'
import { partsOf } from './trade-words.ts'
import { refersTo } from './values.ts'

export interface Renewed {
  /** One of them it was; a bore and its liner are told apart by no figure. */
  readonly parts: readonly RenewedPart[]
  /** rework, repair or replace. */
  readonly choice: string
  readonly person: string
  /** Title of what was decided on. */
  readonly about: string
  /** Entry of the decision. */
  readonly seq: number
}

/** In the order of the log. */
export function renewedByLog(defs: Definitions, state: State): Renewed[] {
  return Object.values(state.dispositions)
    .filter(({ choice, void: fell }) => !fell && CHANGES_IT.includes(choice))
    .sort((a, b) => a.seq - b.seq)
    .flatMap(({ about, choice, person, seq }): Renewed[] => {
      const placed = defs.steps.find(({ id }) => id === about)
      const parts = placed === undefined ? [] : partsJudged(defs, placed)
      return placed === undefined || parts.length === 0
        ? []
        : [{ parts, choice, person, about: placed.step.title, seq }]
    })
}

const BORE: readonly RenewedPart[] = ['bore', 'liner']

/** Findings that are of one part, by the whole of their title: words within a longer one may be of another part. */
const SEEN =
  /^(?:(?:surface|state|condition|look) of )?(?:the )?(bore|liner|rings|riders|rod|piston)(?: as found)?$/i

/** Empty where nothing says for certain which part it is of. */
function partsJudged(defs: Definitions, placed: PlacedStep): readonly RenewedPart[] {
  if (placed.step.kind === 'observe') {
    const part = SEEN.exec(placed.step.title)?.[1]?.toLowerCase() as RenewedPart | undefined
    return part === undefined ? [] : part === 'bore' ? BORE : [part]
  }
  if (placed.step.kind !== 'judge') return []
  const ids = refersTo(defs, placed)
  const each = defs.steps.flatMap(({ id, step }) =>
    step.kind === 'read' && step.stage !== undefined && ids.includes(id) ? [partsOf(step.of)] : [],
  )
  const named = each.filter((parts) => parts.length > 0)
  const [first = [], ...rest] = named
  const common = first.filter((part) => rest.every((parts) => parts.includes(part)))
  const isSure = common.length === 1 || (common.length > 0 && common.every((part) => BORE.includes(part)))
  return isSure ? common : []
}

/** The decision by which something that this figure is of was made new or cut; null where the log has none. */
export function renewedWith(renewed: readonly Renewed[], of: string): Renewed | null {
  const own = partsOf(of)
  return renewed.find(({ parts }) => parts.some((part) => own.includes(part))) ?? null
}

/** `the bore or liner was made new or cut`. */
export function madeText({ parts }: Renewed): string {
  const name = parts.join(' or ')
  return `the ${name} ${name.endsWith('s') ? 'were' : 'was'} made new or cut`
}
