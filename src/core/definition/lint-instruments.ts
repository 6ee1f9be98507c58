// Cross-checks of the instrument register: ids, ranges, and figures of accuracy that cannot be true.

import { quote } from '../lib/wording.ts'
import {
  type GasMeter,
  type Instrument,
  type Instruments,
  isSetOnStandard,
  type Reader,
} from './instruments.ts'
import { type Finding, finding, type Path, repeatedIds, warning } from './lint-common.ts'

/** All findings of one register, in no set order. */
export function lintInstruments(register: Instruments): Finding[] {
  return [
    ...repeatedIds(['instruments'], register.instruments, 'instrument'),
    ...register.instruments.flatMap((instrument, n) => lintInstrument(instrument, ['instruments', n])),
  ]
}

function lintInstrument(instrument: Instrument, path: Path): Finding[] {
  if (instrument.kind === 'gas_meter') return lintMeter(instrument, path)
  const found = [...lintRange(instrument, path), ...lintAccuracy(instrument, path)]
  if (!isSetOnStandard(instrument)) return found
  const { range, set_check } = instrument
  const isInside = set_check.size.si >= range.from.si && set_check.size.si <= range.to.si
  if (isInside || range.from.si >= range.to.si) return found
  const message = `The setting standard ${quote(set_check.size.text)} is outside the range of ${quote(instrument.id)}, ${range.from.text} to ${range.to.text}.`
  return [...found, finding([...path, 'set_check', 'size'], 'outside-range', message)]
}

function lintRange(instrument: Reader, path: Path): Finding[] {
  const { from, to } = instrument.range
  if (from.si < to.si) return []
  const message = `The range of ${quote(instrument.id)} starts at ${quote(from.text)}, not below its end, ${quote(to.text)}.`
  return [finding([...path, 'range', 'from'], 'wrong-order', message)]
}

/**
 * Reading to a resolution r alone gives an expanded uncertainty of about 0.58 r at k = 2: half-width r/2, uniform, JCGM
 * 100:2008 (GUM) F.2.2.1 (clause from memory). A stated figure below r/2 left the resolution out.
 */
function lintAccuracy(instrument: Reader, path: Path): Finding[] {
  const { resolution, uncertainty } = instrument
  const found: Finding[] = []
  if (resolution.si <= 0) {
    found.push(finding([...path, 'resolution'], 'zero', `${quote(resolution.text)} is not above zero.`))
  }
  if (uncertainty === undefined) return found
  const { expanded, k } = uncertainty
  if (expanded.si <= 0) {
    const message = `${quote(expanded.text)} is not above zero, and no instrument is without error.`
    found.push(
      finding(
        [...path, 'uncertainty', 'expanded'],
        'zero',
        message,
        'leave uncertainty out when nobody has stated it',
      ),
    )
  } else if (expanded.si < resolution.si / 2) {
    const message = `The uncertainty ${quote(expanded.text)} is below half the resolution, ${quote(resolution.text)}.`
    found.push(
      warning([...path, 'uncertainty', 'expanded'], 'check-uncertainty', message, 'check the certificate'),
    )
  }
  if (k < 1.6 || k > 3.1) {
    const message = `A k of ${k} is unusual: certificates mostly state an expanded uncertainty with k = 2.`
    found.push(warning([...path, 'uncertainty', 'k'], 'check-k', message, 'check the certificate'))
  }
  return found
}

function lintMeter(meter: GasMeter, path: Path): Finding[] {
  const found: Finding[] = []
  const basis = meter.lel_basis.lower_limit
  if (basis.si <= 0) {
    found.push(
      finding([...path, 'lel_basis', 'lower_limit'], 'zero', `${quote(basis.text)} is not above zero.`),
    )
  }
  const oxygen = meter.needs_oxygen.at_least
  // A catalytic sensor burns the gas on the bead: without oxygen it reads nothing, whatever is there.
  if (meter.flammable_sensor === 'catalytic' && oxygen.si <= 0) {
    const message = `A catalytic sensor cannot read flammables without oxygen, and ${quote(oxygen.text)} asks for none.`
    found.push(
      finding(
        [...path, 'needs_oxygen', 'at_least'],
        'zero',
        message,
        'take the figure from the manual of the meter',
      ),
    )
  }
  return found
}
