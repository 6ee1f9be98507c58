// The form of a bore in truth, with its size: each bore is worn in some form, and only beyond a limit is that what was hidden on it.
import type { BoreForm } from '../bore/bore-form.ts'
import { formatNumber, fromSi, valueIn } from '../units/index.ts'
import { BORE, type Fault } from './fault.ts'

/** As the faults of a bore are made: each until a limit is passed for sure (faults-bore.ts). */
export const FROM_WHERE =
  'A form counts as hidden only from where it takes the bore beyond a limit; below that it is ordinary wear.'

export function isForm({ shows, procedures }: Pick<Fault, 'shows' | 'procedures'>): boolean {
  return shows === 'figures' && procedures.includes(BORE)
}

/** @param isBeyond whether the bore is beyond a limit in truth. Lengths in `unit`, `in` or `mm`. */
export function formTold(form: BoreForm, isBeyond: boolean, unit: 'in' | 'mm'): string[] {
  const size = (metres: number) =>
    `${formatNumber(valueIn(fromSi('length', metres), unit), unit === 'in' ? 4 : 3)} ${unit}`
  const middle = form.widerInMiddleM
  const by =
    form.form === 'tapered'
      ? `, by ${size(form.worstTaper.taperM)}`
      : middle === null || (form.form !== 'barrel' && form.form !== 'hourglass')
        ? ''
        : `, wider ${middle > 0 ? 'in the middle' : 'at the ends'} by ${size(Math.abs(middle))}`
  return [
    `  form: ${form.form}${by}`,
    isBeyond
      ? `  ${FROM_WHERE}`
      : '  The bore is within its limits in truth: that is ordinary wear, and no hidden fault.',
  ]
}
