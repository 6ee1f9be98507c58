// A report as plain text of 79 columns: the look of the sheet, its word on every line.

import { widthOf, wrap } from '../../lib/text.ts'
import {
  type Block,
  layOut,
  plainText,
  type Row,
  row,
  type SheetStyle,
  textWidth,
} from '../../sheet/block.ts'
import type { Paper, PaperLine, Piece } from '../paper.ts'
import { SHEET_WIDTH } from '../parts/log.ts'

type Table = Extract<Piece, { is: 'table' }>

const GAP = 2

/** Ends with the check number of the log, and with a newline. */
export function reportText(paper: Paper): string {
  const style: SheetStyle = { width: SHEET_WIDTH, record: paper.record, ascii: false, linear: true }
  const blocks = paper.sections.flatMap(({ title, pieces }, n): Block[] => [
    ...(n === 0 ? [] : [{ margin: '', rows: [row('')] }]),
    {
      margin: '',
      rows: [row(title.toUpperCase(), 'strong'), row('='.repeat(Math.min(textWidth(style), widthOf(title))))],
    },
    ...pieces.flatMap((piece) => blocksOf(piece, style)),
  ])
  const end: Block = {
    margin: '',
    rows: [
      row(''),
      row(`Job: ${paper.job}`),
      row(`Check number of the log: ${paper.head}`),
      row('End of the report.'),
    ],
  }
  return `${[...blocks, end].map((block) => plainText(layOut(block, style))).join('\n')}\n`
}

function blocksOf(piece: Piece, style: SheetStyle): Block[] {
  switch (piece.is) {
    case 'lines':
      return piece.lines.map(lineBlock)
    case 'table':
      return [{ margin: '', rows: tableRows(piece, textWidth(style)) }]
    case 'sketch':
      return [{ margin: '', rows: [row(`Sketch: ${piece.title}`, 'strong'), row(`  ${piece.told}`)] }]
    case 'plot':
      return [
        {
          margin: '',
          rows: [
            row(`Plot: ${piece.scene.title}`, 'strong'),
            ...[piece.scene.told, ...piece.scene.notes].map((one) => row(`  ${one}`)),
          ],
        },
      ]
  }
}

function lineBlock({ margin, text, tone, right }: PaperLine): Block {
  return { margin, rows: [row(text, tone)], ...(right === undefined ? {} : { right }) }
}

/** In columns where every cell has room on one line; else each line of the table below the other, with its heads. */
function tableRows({ caption, columns, rows }: Table, width: number): Row[] {
  const widths = columns.map(({ head }, i) =>
    Math.max(widthOf(head), ...rows.map((cells) => widthOf(cells[i] ?? ''))),
  )
  const whole = widths.reduce((sum, one) => sum + one, 0) + GAP * (columns.length - 1)
  if (whole <= width) {
    const drawn = (cells: readonly string[]) =>
      columns
        .map(({ right }, i) => {
          const text = cells[i] ?? ''
          const fill = ' '.repeat(Math.max(0, (widths[i] ?? 0) - widthOf(text)))
          return right === true ? fill + text : text + fill
        })
        .join(' '.repeat(GAP))
        .trimEnd()
    return [
      row(caption, 'strong'),
      { ...row(drawn(columns.map(({ head }) => head)), 'faint'), keep: true },
      ...rows.map((cells) => ({ ...row(drawn(cells)), keep: true })),
    ]
  }
  return [row(caption, 'strong'), ...rows.flatMap((cells) => stacked(columns, cells, width))]
}

/** The first two cells as one line, the others set in below, each with its head; empty ones are left out. */
function stacked(columns: Table['columns'], cells: readonly string[], width: number): Row[] {
  const [first = '', second = ''] = cells
  const rest = columns.flatMap(({ head }, i) => {
    const text = cells[i] ?? ''
    return i < 2 || text === '' ? [] : [`${head}: ${text}`]
  })
  const head = [first, second].filter((one) => one !== '').join('  ')
  return [
    ...wrap(`  ${head}`, width, 2).map((text) => row(text)),
    ...(rest.length === 0 ? [] : wrap(`    ${rest.join('; ')}`, width, 2).map((text) => row(text))),
  ]
}
