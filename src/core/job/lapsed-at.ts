// When what fell by time was past its life: at that moment, whether or not the program was awake to note it. An entry is stamped when
// it was noted, and stays so; this is worked out from what was shown and how long it stands.
import { dayEndsMs, dayOf, type Instant, readStamp, stamp } from '../lib/instant.ts'
import { asKind, type Definitions, stepById } from './definitions.ts'
import type { Entry } from './entries.ts'
import { evidenceByKey } from './gate.ts'
import { lifeMs } from './lapse.ts'
import type { State } from './state.ts'

/** From here on the two are told apart, ms. */
const APART_MS = 60_000

/** `after`: the state right after the entry. Null: it did not fall by time, or was noted within a minute, or its time cannot be told. */
export function lapsedAt(defs: Definitions, after: State, entry: Entry): Instant | null {
  if (entry.type !== 'gate.closed' || entry.cause !== 'lapsed') return null
  const gate = asKind(stepById(defs, entry.step), 'gate')
  const noted = readStamp(entry.at)
  if (noted === null) return null
  const ends = (after.gates[entry.step]?.struck ?? []).flatMap(({ item, at, cause, seq }) => {
    const given = readStamp(at)
    const evidence = evidenceByKey(gate, item)
    if (cause !== 'lapsed' || seq > entry.seq || !entry.items.includes(item)) return []
    if (given === null || evidence === null) return []
    const life = lifeMs(defs, evidence)
    if (life !== null) return [given.ms + life]
    return evidence.kind === 'lift' ? [dayEndsMs(given)] : []
  })
  const ms = Math.min(...ends)
  return Number.isFinite(ms) && noted.ms - ms >= APART_MS ? { ms, offsetMin: noted.offsetMin } : null
}

/** `lapsed 07:09, noted 07:25`, each with its day where they are not of one. Null where they are not told apart. */
export function lapsedText(defs: Definitions, after: State, entry: Entry): string | null {
  const at = lapsedAt(defs, after, entry)
  if (at === null) return null
  const [lapsed, noted] = [stamp(at), entry.at]
  const told = (text: string) =>
    dayOf(at) === noted.slice(0, 10) ? text.slice(11, 16) : text.slice(0, 16).replace('T', ' ')
  return `lapsed ${told(lapsed)}, noted ${told(noted)}`
}
