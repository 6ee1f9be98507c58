// One read step of a shipped procedure as a job of its own, so that its prompt is seen without the work before it.
import type { StepOf } from '../../src/core/definition/procedure.ts'
import { assemble, type Definitions } from '../../src/core/job/definitions.ts'
import { fromSi, type QuantityKind, valueIn } from '../../src/core/units/index.ts'
import { Walk } from './example.ts'
import { SHIPPED, shippedDefs } from './shipped-jobs.ts'

type Read = StepOf<'read'>
type Step = StepOf<'read' | 'observe' | 'tell'>

export interface Alone {
  /** `rod-sizes rod_top` */
  readonly name: string
  readonly step: Read
  readonly walk: Walk
}

/** Every read step of every shipped procedure, at its first place. */
export function everyReadAlone(): Alone[] {
  return SHIPPED.flatMap((file) => {
    const defs = shippedDefs(file)
    return defs.procedure.steps
      .filter((step): step is Read => step.kind === 'read')
      .map((step) => ({
        name: `${file.replace('.yaml', '')} ${step.id}`,
        step,
        walk: walkTo(defs, step),
      }))
  })
}

function walkTo(defs: Definitions, step: Read): Walk {
  const walk = stepAlone(defs, step)
  for (let n = 0; walk.prompt.kind === 'pick' && n < 9; n += 1) walk.key('1')
  if (walk.prompt.kind !== 'read') throw new Error(`${step.id}: ${walk.prompt.kind}, ${walk.said.join(' ')}`)
  return walk
}

/** Hazard and trouble stay, as they take room; what would keep the step from being presented does not. */
export function stepAlone(defs: Definitions, step: Step): Walk {
  const { exposes: _, when: __, ...rest } = step
  const alone = { ...rest, point: undefined }
  const { values: ___, over_time: ____, ...procedure } = defs.procedure
  const job = { ...procedure, steps: [alone as Step] }
  const result = assemble({ ...defs, parts: new Map(), procedure: job })
  if (!result.ok) throw new Error(result.error.say)
  return new Walk(result.value).keys('RO', defs.machine.machine)
}

/** Reads the place that is asked for until it is settled; what is doubted is kept. */
export function settlePlace(walk: Walk): void {
  const { key } = placeOf(walk).place
  for (let n = 0; n < 5 && walk.prompt.kind === 'read' && placeOf(walk).place.key === key; n += 1)
    readOnce(walk)
}

/** One reading, from the middle of what the instrument shows. */
export function readOnce(walk: Walk): void {
  const at = placeOf(walk)
  const instrument = walk.engine.defs.instruments.instruments.find((one) => one.id === at.instrument)
  const range = instrument !== undefined && 'range' in instrument ? instrument.range : undefined
  const unit = instrument !== undefined && 'unit' in instrument ? instrument.unit : ''
  const inUnit = ({ kind, si }: { readonly kind: QuantityKind; readonly si: number }) =>
    valueIn(fromSi(kind, si), unit)
  walk.key(range === undefined ? '70' : String(round((inUnit(range.from) + inUnit(range.to)) / 2)))
  if (isDoubted(walk)) walk.keys('3', 'as read')
}

const round = (value: number) => Math.round(value * 100) / 100

function placeOf({ prompt }: Walk) {
  if (prompt.kind !== 'read') throw new Error(`at ${prompt.kind}, not at a reading`)
  return prompt
}

const isDoubted = ({ prompt }: Walk) => prompt.kind === 'doubt'
