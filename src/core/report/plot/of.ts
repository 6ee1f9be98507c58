// From what a plot is drawn from to its scene.
import { assertNever } from '../../lib/result.ts'
import type { Plot } from '../schema-plots.ts'
import { boreScene } from './bore.ts'
import { gapsScene } from './gaps.ts'
import { pocketScene } from './pocket.ts'
import { pvScene } from './pv.ts'
import type { Scene } from './scene.ts'
import { wearScene } from './wear.ts'

export function sceneOf(plot: Plot): Scene {
  switch (plot.kind) {
    case 'bore-profile':
      return boreScene(plot)
    case 'wear':
      return wearScene(plot)
    case 'gaps':
      return gapsScene(plot)
    case 'pocket':
      return pocketScene(plot)
    case 'pv':
      return pvScene(plot)
    default:
      return assertNever(plot)
  }
}
