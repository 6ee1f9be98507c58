// Cross-checks of the whole compressor in a machine record: what contradicts this cylinder's own figures, or itself. What is
// only missing is no finding: the verdict names it and holds.
import { quote } from '../lib/wording.ts'
import type { WrittenQuantity } from './common.ts'
import { type Finding, finding, type Path, repeats } from './lint-common.ts'
import type { Machine } from './machine.ts'

type Whole = NonNullable<Machine['whole_compressor']>
type Throw = NonNullable<Whole['stages'][number]['cylinders']>[number]

/** Inch and millimetre of one figure differ in the last place of a double. */
const NOISE = 1e-9

export function lintWholeCompressor(machine: Machine): Finding[] {
  const whole = machine.whole_compressor
  if (whole === undefined) return []
  return [
    ...lintStages(whole),
    ...lintThrows(machine, whole),
    ...lintPocket(machine, whole),
    ...lintTarget(machine, whole),
  ]
}

const at = (...path: Path): Path => ['whole_compressor', ...path]

function lintStages({ stages, stages_in_all: all, between = [] }: Whole): Finding[] {
  const found = repeats(stages.map(({ stage }) => String(stage))).map(({ at: n }) =>
    finding(at('stages', n, 'stage'), 'repeated-id', `Stage ${stages[n]?.stage} is listed twice.`),
  )
  stages.forEach(({ stage }, n) => {
    if (stage > all)
      found.push(
        finding(
          at('stages', n, 'stage'),
          'contradiction',
          `Stage ${stage} is listed, and the compressor has ${all} in all.`,
        ),
      )
  })
  for (const { at: n } of repeats(between.map(({ after }) => String(after))))
    found.push(
      finding(
        at('between', n, 'after'),
        'repeated-id',
        `Behind stage ${between[n]?.after} there are two entries.`,
      ),
    )
  between.forEach(({ after }, n) => {
    if (after >= all)
      found.push(
        finding(at('between', n, 'after'), 'contradiction', `Behind stage ${after} no other stage follows.`),
      )
  })
  return found
}

function lintThrows(machine: Machine, whole: Whole): Finding[] {
  const listed = whole.stages.flatMap(({ stage, cylinders = [] }, n) =>
    cylinders.map((one, i) => ({ one, stage, path: at('stages', n, 'cylinders', i) })),
  )
  const found = repeats(listed.map(({ one }) => String(one.throw))).flatMap(({ at: n }) => {
    const twice = listed[n]
    if (twice === undefined) return []
    return [finding([...twice.path, 'throw'], 'repeated-id', `Throw ${twice.one.throw} is listed twice.`)]
  })
  if (listed.length > whole.cylinders_in_all) {
    const message = `${listed.length} cylinders are listed, and the compressor has ${whole.cylinders_in_all} in all.`
    found.push(finding(at('cylinders_in_all'), 'contradiction', message))
  }
  for (const { one, stage, path } of listed) {
    if (one.throw === machine.cylinder.throw) found.push(...lintOwn(machine, one, stage, path))
    if (one.bore !== undefined && one.rod !== undefined && !(one.rod.si < one.bore.si)) {
      const message = `The rod ${quote(one.rod.text)} is not smaller than the bore, ${quote(one.bore.text)}.`
      found.push(finding([...path, 'rod'], 'contradiction', message))
    }
  }
  return found
}

/** The cylinder that the record is of stands here a second time: its figures have to be the same. */
function lintOwn(machine: Machine, one: Throw, stage: number, path: Path): Finding[] {
  const found: Finding[] = []
  if (stage !== machine.cylinder.stage) {
    const message = `Throw ${one.throw} is listed in stage ${stage}, and this record is of it in stage ${machine.cylinder.stage}.`
    found.push(finding([...path, 'throw'], 'contradiction', message))
  }
  const same = (key: 'bore' | 'rod', own: WrittenQuantity | undefined, where: string) => {
    const here = one[key]
    if (here === undefined || own === undefined || Math.abs(here.si - own.si) <= NOISE) return
    const message = `The ${key} of throw ${one.throw} is ${quote(here.text)} here, and ${quote(own.text)} under ${where}.`
    found.push(finding([...path, key], 'contradiction', message, 'correct one of the two'))
  }
  same('bore', machine.bore.nominal, 'bore')
  same('rod', machine.rod?.diameter, 'rod')
  return found
}

function lintPocket({ pocket }: Machine, whole: Whole): Finding[] {
  const { least_step: step, stem } = whole.pocket ?? {}
  const found: Finding[] = []
  if (step !== undefined && !(step.si > 0))
    found.push(finding(at('pocket', 'least_step'), 'zero', `${quote(step.text)} is not above zero.`))
  const travel = (pocket?.turns ?? Number.NaN) * 2 * Math.PI
  if (step !== undefined && step.si > travel) {
    const message = `${quote(step.text)} is more than the whole travel of the hand-wheel, ${pocket?.turns} turns.`
    found.push(finding(at('pocket', 'least_step'), 'contradiction', message))
  }
  if (stem !== undefined && !(Math.abs(stem.shut.si - stem.open.si) > 0)) {
    const message = `The stem stands at ${quote(stem.open.text)} open and shut, so it tells nothing.`
    found.push(finding(at('pocket', 'stem', 'open'), 'contradiction', message))
  }
  return found
}

/** Two figures for how far the driver may be loaded: the margin must not leave more than the limit allows. */
function lintTarget({ driver, limits }: Machine, whole: Whole): Finding[] {
  const margin = whole.site_rules?.margin
  const limit = limits.find(({ characteristic }) => characteristic === 'driver-load')?.at_most
  if (margin === undefined || driver === undefined || limit === undefined) return []
  if (driver.rating.si * (1 - margin.si) <= limit.si * (1 + NOISE)) return []
  const message = `With a margin of ${quote(margin.text)} under ${quote(driver.rating.text)} the driver may take more than its limit, ${quote(limit.text)}.`
  return [finding(at('site_rules', 'margin'), 'contradiction', message)]
}
