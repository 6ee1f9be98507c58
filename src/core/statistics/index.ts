// The public names of statistics.
export { binomialAtLeast } from './binomial.ts'
export { cochranCritical, cochranOdds, type Scatter } from './cochran.ts'
export { GRUBBS_SOUND_FROM, type GrubbsTest, grubbsCritical, grubbsTest } from './grubbs.ts'
export { fitLine, type Line, type Point, type Prediction, predict, spreadAt } from './line.ts'
export { normalAt } from './normal-quantile.ts'
export { coverageFactor, incompleteBeta, tAt, tBelow } from './student-t.ts'
export { meanOf, type Summary, sdOf, summarise, sumOf } from './summary.ts'
