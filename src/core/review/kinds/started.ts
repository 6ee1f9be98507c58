// A start, or gas let in again, while a finding or a verdict was still undecided: what was found was then run on by nobody's word.
import { hazardName, type PlacedStep } from '../../job/definitions.ts'
import { type Nonconformance, nonconformances } from '../../job/nonconformance.ts'
import { list } from '../../lib/wording.ts'
import { nonconformanceText } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, type Look, type Move, named, when } from '../look.ts'

export function startedOpen(look: Look): Found[] {
  const { defs, state } = look
  const open = look.moves.flatMap((move) => {
    const placed = startOf(look, move)
    if (placed === null) return []
    const undecided = nonconformances(look.defsAt(move.before), move.before).filter(isUndecided)
    return undecided.length === 0 ? [] : [{ placed, move, undecided }]
  })
  const first = open.find(({ placed }) => /\bstart/i.test(placed.step.title)) ?? open[0]
  if (first === undefined) return []
  const names = new Set(open.flatMap(({ undecided }) => undecided.map(({ name }) => name)))
  const ncs = nonconformances(defs, state).filter(({ name }) => names.has(name))
  const decisions = ncs.map((nc) => ({
    nc,
    entry: isUndecided(nc) ? undefined : look.entries[nc.decided?.seq ?? -1],
  }))
  return [
    {
      kind: 'started',
      what: `STARTED ${byWhom(look, first.move.entry)} WITH ${list([...names])} UNDECIDED`,
      sentences: [
        `${open.map(({ placed, move }) => `${named(placed)}, ${when(look, move.entry)}`).join('; ')}.`,
        ...decisions.map(({ nc, entry }) => {
          const raised = look.entries[nc.seq]
          const since = raised === undefined ? '' : ` Raised ${when(look, raised)},`
          const until = entry === undefined ? 'not decided since' : `decided afterwards, ${when(look, entry)}`
          return `${clause(nonconformanceText(defs, nc))}.${since} ${until}.`
        }),
      ],
      entries: [
        ...ncs.map(({ seq }) => seq),
        ...open.map(({ move }) => move.entry.seq),
        ...decisions.flatMap(({ entry }) => entry?.seq ?? []),
      ],
      open: false,
    },
  ]
}

/** A lead who decides to hold has put it off. */
function isUndecided({ stands, decided }: Nonconformance): boolean {
  return stands && (decided === null || decided.choice === 'hold')
}

/** Names of hazards that only a start, or gas on its way back to service, lets in. */
const RUNNING = /\b(driver|machine|compressor|engine|motor)\b.*\bstart|\bgas let in\b/i

/**
 * A step that sets going what it exposes people to: one that only lets it in again, as a part sent to the shop with the locks
 * left to be asked anew, starts nothing.
 */
function startOf({ defs }: Look, { entry }: Move): PlacedStep | null {
  if (entry.type !== 'step.confirmed' && entry.type !== 'step.done') return null
  const placed = defs.steps.find(({ id }) => id === entry.step)
  return placed !== undefined && startsIt(defs, placed) ? placed : null
}

export function startsIt(defs: Look['defs'], placed: PlacedStep): boolean {
  const { step } = placed
  const lets = 'lets_in' in step ? (step.lets_in ?? []) : []
  return lets.some((id) => (step.exposes ?? []).includes(id) && RUNNING.test(hazardName(defs, id)))
}
