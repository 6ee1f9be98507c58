// What a lead adds to a closed job: its figures as left, adopted as the next baseline, and words.
import type { LeftFigure, NotLeft } from '../job/adopt.ts'
import type { Entry } from '../job/entries.ts'
import { type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'

/** `bore diameter, centre, vertical: 9.5119 in, U 0.0003 in`. */
export function leftFigureText({ of, station, axis, value, u, from, judged }: LeftFigure): string {
  const where = [of, station, ...(axis === undefined ? [] : [axis])].map((word) => word.replaceAll('_', ' '))
  const error = u === undefined ? '' : `, U ${u}`
  const back = from === 'found' ? ', as found, went back as it was' : ''
  return `${where.join(', ')}: ${value}${error}${back}${judged === undefined ? '' : `; its verdict: ${judged}`}`
}

export function notLeftText({ of, why }: NotLeft): string {
  return `${of}: ${why}`
}

export function adoptedRows(entry: Extract<Entry, { type: 'left.adopted' }>): Row[] {
  const { person, signed, hours, renewed, figures, without, file } = entry
  return [
    row(`AS LEFT ADOPTED as the next baseline by ${person}${bySign(signed)}`, 'strong'),
    row(
      `  at ${hours} running hours; made new or cut: ${renewed.length === 0 ? 'nothing' : renewed.join(', ')}`,
    ),
    ...figures.map((one) => row(`  ${leftFigureText(one)}`)),
    ...without.map((one) => row(`  not adopted: ${leftFigureText(one)}`)),
    row(`  written to ${file.name}, SHA-256 ${file.sha256}`),
  ]
}

export function remarkRows({ person, signed, text }: Extract<Entry, { type: 'remark.made' }>): Row[] {
  return [row(`Remark of ${person}${bySign(signed)}: ${text}`)]
}
