// The limits of each cylinder in the load question, at the opening that its verdict speaks of: rod load both ways, load and
// reversal at the crosshead pin, discharge temperature.
import type { CylinderAt } from '../../cycle/pocket-judge-input.ts'
import type { SettingFault } from '../../cycle/setting-checks.ts'
import type { Definitions, PlacedStep } from '../../job/definitions.ts'
import { throwName } from '../../job/pocket-record.ts'
import type { PocketVerdictRecord } from '../../job/verdict-record.ts'
import { forceUnit, rowAtOpening, settingText, temperatureUnit } from '../../talk/pocket-words.ts'
import { formatNumber, shareTold } from '../../units/index.ts'
import type { Report } from '../schema.ts'
import type { Figure } from '../schema-words.ts'
import { figureOf, figureShown } from './figure.ts'
import { pageIn } from './page-in.ts'

type Told = Report['limits'][number]

interface Checked {
  readonly judged: string
  readonly about: SettingFault['about']
  readonly bound: 'at-most' | 'at-least'
  readonly value: number
  /** Null or undefined: none on record, and no line. */
  readonly limit: number | null | undefined
  /** Of a temperature there is no share that means anything: it would change with the scale. */
  readonly hasShare: boolean
  readonly figure: (si: number, more: number) => Figure
  readonly source: string
  /** A rule of the site, which has somebody who approved it; a data sheet names nobody in the record. */
  readonly isSiteRule: boolean
}

/**
 * Values as read and worked out, without an error of their own: the readings off by theirs, both ways, are in the word. Where only
 * those are over, every line of that sort for its cylinder says HOLD.
 */
export function cylinderLimits(defs: Definitions, placed: PlacedStep, record: PocketVerdictRecord): Told[] {
  const { judged, at } = record.result
  const row = rowAtOpening(record, at)
  if (row === undefined) return []
  const rule = `Worked out with the pocket ${settingText(row)}`
  return judged.flatMap((one) => {
    const checks = checkedOf(defs, record, one)
    const faulty = row.faults
      .filter(
        ({ grade, stage, cylinder }) => grade === 'hold' && stage === one.stage && cylinder === one.cylinder,
      )
      .map(({ about }) => about)
    return checks.flatMap((check) => {
      const { limit, about } = check
      if (typeof limit !== 'number') return []
      const beyond = checks.filter((other) => other.about === about && isBeyond(other))
      const isOut = faulty.includes(about) && (beyond.length === 0 || beyond.includes(check))
      return [told(defs, placed, { ...check, limit }, isOut, rule)]
    })
  })
}

function isBeyond({ bound, value, limit }: Checked): boolean {
  if (typeof limit !== 'number') return false
  return !(bound === 'at-most' ? value <= limit : value >= limit)
}

function checkedOf(defs: Definitions, { inputs }: PocketVerdictRecord, one: CylinderAt): Checked[] {
  const whole = defs.machine.whole_compressor
  const stage = whole?.stages.find(({ stage }) => stage === one.stage)
  const source =
    stage?.cylinders?.find((each) => throwName(each.throw) === one.cylinder)?.source ?? defs.machine.machine
  const force = forceUnit(defs)
  const newtons = (si: number, more: number) => figureShown('force', si, force.unit, force.decimals + more)
  const kelvin = (si: number, more: number) => figureShown('temperature', si, temperatureUnit(defs), more)
  const { leastAngle, leastShare } = inputs.record.reversal ?? {}
  const site = whole?.site_rules?.source ?? source
  const load = { bound: 'at-most', hasShare: true, figure: newtons, source, isSiteRule: false } as const
  const turned = {
    about: 'reversal',
    bound: 'at-least',
    hasShare: true,
    source: site,
    isSiteRule: true,
  } as const
  const checks: Checked[] = [
    {
      ...load,
      judged: 'rod pushed',
      about: 'rod-load',
      value: one.compressionN,
      limit: one.compressionLimitN,
    },
    { ...load, judged: 'rod pulled', about: 'rod-load', value: one.tensionN, limit: one.tensionLimitN },
    { ...load, judged: 'load at the pin', about: 'pin-load', value: one.pinN, limit: one.pinLimitN },
    { ...turned, judged: 'reversal at the pin', value: one.reversalAngle, limit: leastAngle, figure: arc },
    {
      ...turned,
      judged: 'reversed peak',
      value: one.reversalShare,
      limit: leastShare,
      figure: (si: number, more: number) => figureShown('ratio', si, '%', more),
    },
    {
      judged: 'ideal discharge temperature',
      about: 'discharge-temperature',
      bound: 'at-most',
      value: one.dischargeK,
      limit: one.dischargeLimitK,
      hasShare: false,
      figure: kelvin,
      source: stage?.source ?? source,
      isSiteRule: false,
    },
  ]
  return checks.map((check) => ({ ...check, judged: `${check.judged}, ${one.cylinder}` }))
}

/** Down to its last place: an arc is never shown as more than it is. */
function arc(radians: number, more: number): Figure {
  const scale = 10 ** more
  const down = Math.floor(((radians * 180) / Math.PI) * scale + 1e-9) / scale
  return figureOf('angle', radians, 'deg', formatNumber(down, more))
}

function told(
  defs: Definitions,
  { number }: PlacedStep,
  { judged, bound, value, limit, hasShare, figure, source, isSiteRule }: Checked & { readonly limit: number },
  isOut: boolean,
  rule: string,
): Told {
  const share = bound === 'at-most' ? value / limit : limit / value
  const used = hasShare && Number.isFinite(share) ? Math.max(0, share) : null
  const { more } = shareTold(
    { value, limit: { value: limit, bound }, startsAt: null, used },
    (si, places) => figure(si, places).shown,
  )
  const rules = isSiteRule ? defs.machine.whole_compressor?.site_rules : undefined
  return {
    number: String(number),
    judged,
    bound: bound === 'at-most' ? 'at most' : 'at least',
    limit: figure(limit, more),
    value: figure(value, more),
    U: null,
    used,
    countedFrom: null,
    watchedFrom: null,
    word: isOut ? 'HOLD' : 'ACCEPT',
    governs: isOut,
    from: 'machine',
    book: defs.machine.machine,
    source,
    page: pageIn(source),
    rule,
    approvedBy: rules?.approved_by ?? 'nobody named',
    since: rules?.since ?? 'no day named',
  }
}
