// The cylinder as a compressor: every computation of core/cycle that procedures, the command line and `why` may name.

import type { Computation } from './computation.ts'
import {
  pvCycleComputation,
  rodLoadComputation,
  rodReversalComputation,
  sliderCrankComputation,
} from './cycle-loads.ts'
import { pocketCurveComputation, pocketSettingComputation } from './cycle-pocket.ts'
import {
  capacityComputation,
  dischargeTemperatureComputation,
  indicatedPowerComputation,
} from './cycle-power.ts'
import {
  clearanceComputation,
  displacementComputation,
  volumetricEfficiencyComputation,
} from './cycle-size.ts'

export const CYCLE_COMPUTATIONS: readonly Computation[] = [
  displacementComputation,
  clearanceComputation,
  volumetricEfficiencyComputation,
  capacityComputation,
  indicatedPowerComputation,
  dischargeTemperatureComputation,
  rodLoadComputation,
  rodReversalComputation,
  sliderCrankComputation,
  pvCycleComputation,
  pocketCurveComputation,
  pocketSettingComputation,
]
