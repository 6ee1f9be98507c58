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
  if (level < TWO_FROM || first.shows === 'stop' || first.isAlone === true || !chance.isOne(TWO))
    return [first.id]
  const others = all.filter(
    ({ shows, at, isAlone }) =>
      isAlone !== true &&
      shows !== 'stop' &&
      shows !== first.shows &&
      !at.some((one) => first.at.includes(one)),
  )

  const second = pickOne(others, level, chance)
  return second === null ? [first.id] : [first.id, second.id]
}

function pickOne(faults: readonly Fault[], level: Level, chance: ReturnType<typeof chanceOf>): Fault | null {
  const own = faults.filter((fault) => fault.level === level)
  const below = faults.filter((fault) => fault.level < level)
  const isOwn = chance.isOne(OF_LEVEL)
  const [some, other] = isOwn ? [own, below] : [below, own]
  const [one, ...more] = some.length > 0 ? some : other
  return one === undefined ? null : chance.pick([one, ...more])
}
