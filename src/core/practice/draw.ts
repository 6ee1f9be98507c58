// Which faults a seed draws at a level. All shares are invented for practice.
import type { Level } from '../job/practice.ts'
import { chanceOf } from './chance.ts'
import type { Fault } from './fault.ts'

/** This often nothing is wrong at all: who finds a fault on every machine has learnt to find faults, not to look. */
const SOUND = 0.15
/** This often it is one of the level itself, where there is any; else of those below. */
const OF_LEVEL = 0.7
/** From this level on there may be a second one, of those that stop nothing. */
const TWO_FROM: Level = 4
const TWO = 0.5

/** Ids, none twice. At most one of them stops the job, and then it is the only one: nobody would ever see another. */
export function drawFaults(all: readonly Fault[], seed: number, level: Level): readonly string[] {
  const chance = chanceOf(seed, 'faults', level)
  if (chance.isOne(SOUND)) return []
  const first = pickOne(all, level, chance)
  if (first === null) return []
  if (level < TWO_FROM || standsAlone(first) || !chance.isOne(TWO)) return [first.id]
  const second = pickOne(
    all.filter((other) => whyNotTogether(first, other) === null),
    level,
    chance,
  )
  return second === null ? [first.id] : [first.id, second.id]
}

function standsAlone({ shows, isAlone }: Fault): boolean {
  return shows === 'stop' || isAlone === true
}

/** Why two faults cannot be hidden in one machine, as the end of a sentence; null: they can. */
export function whyNotTogether(first: Fault, other: Fault): string | null {
  const alone = [first, other].find(standsAlone)
  if (alone?.shows === 'stop') return `${alone.id} stops the work, so the other would never be met`
  if (alone !== undefined) return `${alone.id} hides what would tell the other`
  if (first.shows === other.shows) return 'both show in the same way, and the one would hide the other'
  return first.at.some((one) => other.at.includes(one)) ? 'both are met at the same place' : null
}

function pickOne(faults: readonly Fault[], level: Level, chance: ReturnType<typeof chanceOf>): Fault | null {
  const own = faults.filter((fault) => fault.level === level)
  const below = faults.filter((fault) => fault.level < level)
  const isOwn = chance.isOne(OF_LEVEL)
  const [some, other] = isOwn ? [own, below] : [below, own]
  const [one, ...more] = some.length > 0 ? some : other
  return one === undefined ? null : chance.pick([one, ...more])
}
