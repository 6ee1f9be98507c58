// What may be quoted to somebody who asks: every text of this job's steps, the limits that count for this machine, and the
// terms of the trade. Each passage stands as it was written; nothing of another job, machine or book is among them.
import { CHARACTERISTIC_IDS, type CharacteristicId } from '../definition/characteristics.ts'
import type { Evidence } from '../definition/evidence.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { itemLabel } from '../job/item-label.ts'
import { phrased } from './ask-words.ts'
import { GLOSSARY } from './glossary.ts'
import { gasPassage, limitPassage, sizePassages, standardPassage } from './limit-passages.ts'

export type PassageKind = 'term' | 'limit' | 'size' | 'why' | 'hazard' | 'trouble' | 'step'

export interface Passage {
  readonly id: string
  readonly kind: PassageKind
  /** Where it stands, as `Step 7, Bore, why`. */
  readonly from: string
  /** Sheet number of the step it stands in; null: in none. */
  readonly step: number | null
  /** What it is the passage of, where it has a name of its own: the term, what is limited; else empty. */
  readonly name: string
  /** The words, as they stand there. */
  readonly text: string
  /** Looked through too, and not quoted: the title over it, other words for it. */
  readonly about: string
  /** A limit from a book, used as the machine's own is silent: its caution goes with it. */
  readonly fallback: boolean
  /** What it limits, where it is the limit that a verdict would be held against. */
  readonly limits?: CharacteristicId
  /** A limit of the same site that nothing in this job asks for. */
  readonly elsewhere?: boolean
}

/** `fallback` is left out where it is none. */
export type Bare = Omit<Passage, 'id' | 'fallback'> & { readonly fallback?: boolean }

export function passagesOf(defs: Definitions): readonly Passage[] {
  const all: Bare[] = [
    ...GLOSSARY.map(({ term, also, says }): Bare => {
      return {
        kind: 'term',
        from: `Terms of the trade, ${term}`,
        step: null,
        name: phrased(term),
        text: says,
        about: `${phrased(term)} ${also}`,
      }
    }),
    ...CHARACTERISTIC_IDS.flatMap((id) => limitPassage(defs, id)),
    ...defs.machine.site.gas.limits.map((limit) => gasPassage(defs, limit)),
    ...defs.instruments.instruments
      .filter(({ kind }) => defs.seats.some((seat) => seat.kinds.includes(kind)))
      .flatMap(standardPassage),
    ...sizePassages(defs),
    ...defs.steps.flatMap((placed) => stepPassages(defs, placed)),
  ]
  return all.map((one, i) => ({ fallback: false, ...one, id: String(i) }))
}

function stepPassages(defs: Definitions, placed: PlacedStep): Bare[] {
  const { step, number } = placed
  const from = `Step ${number}, ${step.title}`
  // A hold point is a list: no line of it is about all that its title names.
  const title = step.kind === 'gate' ? [] : [step.title]
  const about = [...title, ...placed.inside.map((part) => part.step.title)].join(' ')
  const passage = (kind: PassageKind, what: string, text: string | undefined): Bare[] =>
    text === undefined
      ? []
      : [
          {
            kind,
            from: what === '' ? from : `${from}, ${what}`,
            step: number,
            name: '',
            text,
            about: `${about} ${what}`,
          },
        ]
  return [
    ...passage('step', '', step.text),
    ...passage('why', 'why', step.why),
    ...passage('hazard', 'hazard', step.hazard),
    ...passage('trouble', 'in trouble', step.trouble),
    ...(step.kind === 'confirm' ? passage('step', 'to be seen', step.seen) : []),
    ...(step.kind === 'read'
      ? Object.entries(step.how).flatMap(([kind, how]) =>
          passage('step', `how, with ${kind.replaceAll('_', ' ')}`, how),
        )
      : []),
    ...(step.kind === 'gate' ? step.evidence.flatMap((one) => evidencePassages(defs, one, passage)) : []),
  ]
}

function evidencePassages(
  defs: Definitions,
  evidence: Evidence,
  passage: (kind: PassageKind, what: string, text: string) => Bare[],
): Bare[] {
  if (evidence.kind === 'lift')
    return [evidence.load, evidence.rating, evidence.sling, evidence.inspected].flatMap((ask) =>
      passage('step', 'lift plan', ask),
    )
  const item = { key: evidence.id, evidence, point: null, person: null, part: null }
  const name = evidence.kind === 'locks' ? 'locks' : itemLabel(defs, item)
  return passage('step', name, evidence.ask)
}
