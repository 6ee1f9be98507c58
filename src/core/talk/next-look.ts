// What is known for the next look at a bore that is on watch: the hours of the machine, its wear, and what is left to the limit. When that
// look is to be is the lead's to say; nothing here works it out where there is no rate of wear.
import { changesOf, hoursRead, lastOverhaul } from '../job/changes.ts'
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { hoursText } from '../units/index.ts'
import { wearFigures } from './changes.ts'
import { lengthText, placeShort } from './names.ts'

/** One line each. */
export function nextLookLines(defs: Definitions, state: State, record: VerdictRecord): string[] {
  return [hoursLine(defs, state), wearLine(defs, state), ...leftLines(defs, record)]
}

/** `Counter of the machine: not read on this job; 52300 h at the last overhaul, 2024-02-11`. */
export function hoursLine(defs: Definitions, state: State): string {
  const read = hoursRead(defs, state)
  if (read !== null) return `Counter of the machine: ${hoursText(read)} h, read on this job.`
  const last = lastOverhaul(defs)
  const before = last === null ? 'no overhaul on record' : `${last.hours} h at the last overhaul, ${last.day}`
  return `Counter of the machine: not read on this job; ${before}.`
}

/** The fastest of all places. */
function wearLine(defs: Definitions, state: State): string {
  const changes = changesOf(defs, state)
  const told = changes.flatMap(({ found, rate }) =>
    found !== null && rate?.ok === true ? [{ found, rate: rate.value }] : [],
  )
  const [fastest] = told.sort((a, b) => b.rate.perHour - a.rate.perHour)
  if (fastest !== undefined) {
    const { found, rate } = fastest
    const { per1000, interval, basis } = wearFigures(defs, found, rate)
    const unit = defs.machine.shop_units.length
    const where = placeShort(defs, found.step.id, found.place.key)
    return `Wear: ${per1000} ${unit} in 1000 h at the fastest, ${where}, give or take ${interval} (${basis}).`
  }
  const no = changes.flatMap(({ rate }) => (rate !== null && !rate.ok ? [rate.error.say] : []))[0]
  return `Rate of wear: none, as ${no ?? 'there is no earlier reading on record to tell it from.'}`
}

function leftLines(defs: Definitions, record: VerdictRecord): string[] {
  if (record.compute !== 'bore_form') return []
  const { judged, governs } = record.result
  return judged.flatMap(({ characteristic, valueM, limit, judgement: { acceptAtMost: most } }) => {
    if (valueM === null || limit === null || governs?.characteristics.includes(characteristic) !== true)
      return []
    const accepted =
      most === null || !(most < limit.value)
        ? ''
        : `, and ${lengthText(defs, most - valueM)} to the most that is accepted`
    return [
      `Left to its limit: ${characteristic.replaceAll('-', ' ')} ${lengthText(defs, limit.value - valueM)}${accepted}.`,
    ]
  })
}
