// What weight and facts say of a piston that may be hollow, by the functions that say it of a real one.
import { METAL_DENSITY, weightFact } from '../piston/mass-density.ts'
import { factFromWeight, type PistonFact, pistonKind, type Says } from '../piston/solid-or-hollow.ts'
import type { CavityTruth } from './parts.ts'

/** A size to weigh by: only what it weighs of its size in solid metal counts here. */
const DIAMETER_M = 0.24

export function weightSays({ weighedKg, solidKg, ratioU }: CavityTruth): Says {
  const section = (Math.PI / 4) * DIAMETER_M ** 2
  const weighed = weightFact({
    weighedKg,
    rodKg: 0,
    diameterM: DIAMETER_M,
    lengthM: solidKg / METAL_DENSITY['grey-iron'] / section,
    rodHoleM: 0,
    groovesM3: 0,
    metal: 'grey-iron',
    ratioU,
  })
  return factFromWeight(weighed).fact.says
}

/** By the four facts of the procedure. */
export function handledAs(cavity: CavityTruth): 'hollow' | 'solid' {
  const facts: readonly PistonFact[] = [
    { from: 'record', says: cavity.written === 'silent' ? 'unknown' : cavity.written },
    { from: 'plugs-or-vents', says: cavity.plugs === 'found' ? 'hollow' : 'unknown' },
    { from: 'weight', says: weightSays(cavity) },
    { from: 'sounding', says: cavity.knock === 'rings' ? 'hollow' : 'solid' },
  ]
  return pistonKind(facts).handleAs
}
