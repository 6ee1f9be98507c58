// The one rule of rounding for figures that are shown: decimal figures, halves away from zero.

/** The digits of |value| to 15 significant figures, and the power of ten of the last: value = digits * 10^power. */
export function decimalParts(value: number, figures: number): { digits: bigint; power: number } {
  const [mantissa = '0', exponent = '0'] = Math.abs(value)
    .toExponential(figures - 1)
    .split('e')
  return { digits: BigInt(mantissa.replace('.', '')), power: Number(exponent) - (figures - 1) }
}

/**
 * `value` with exactly `decimals` decimals (0 to 20), halves rounded away from zero. The half is judged on the decimal
 * figures (15 of them, and no more than 8 behind those shown), not on the binary value, so 1.005 to two decimals is 1.01 as by
 * hand, and a difference of two sizes that is 0.0125 by hand is 0.013 whichever way it was worked out. Throws on a number that
 * is not finite. This is the one rule of rounding for figures that are shown: repeats of 9.5036 and 9.5037 come to 9.5037
 * in the bars, in the drawing, in the lists, in the verdict and at the close.
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`cannot format ${value}`)
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 20)
    throw new Error(`cannot show ${decimals} decimals`)
  const { digits, power } = withoutNoise(decimalParts(value, 15), decimals + BEYOND)
  const shift = power + decimals
  const scale = 10n ** BigInt(Math.abs(shift))
  const scaled = shift >= 0 ? digits * scale : (2n * digits + scale) / (2n * scale)
  const text = scaled.toString().padStart(decimals + 1, '0')
  const whole = text.slice(0, text.length - decimals)
  const sign = value < 0 && scaled !== 0n ? '-' : ''
  return decimals === 0 ? sign + whole : `${sign}${whole}.${text.slice(-decimals)}`
}

/** Places behind those shown that count for a half: what adding and taking away of sizes leaves in binary lies behind them. */
const BEYOND = 8

function withoutNoise(
  { digits, power }: { digits: bigint; power: number },
  places: number,
): { digits: bigint; power: number } {
  const over = -power - places
  if (over <= 0) return { digits, power }
  const scale = 10n ** BigInt(over)
  return { digits: (2n * digits + scale) / (2n * scale), power: -places }
}
