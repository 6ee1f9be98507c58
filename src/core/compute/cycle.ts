// The cylinder as a compressor: every computation of core/cycle that procedures, the command line and `why` may name.

import {
  pvCycleComputation,
  rodLoadComputation,
  rodReversalComputation,
  sliderCrankComputation,
} from '../cycle/compute-loads.ts'
import { pocketCurveComputation, pocketSettingComputation } from '../cycle/compute-pocket.ts'
import {
  capacityComputation,
  dischargeTemperatureComputation,
  indicatedPowerComputation,
} from '../cycle/compute-power.ts'
import {
  clearanceComputation,
  displacementComputation,
  volumetricEfficiencyComputation,
} from '../cycle/compute-size.ts'
import type { Computation } from './computation.ts'

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
