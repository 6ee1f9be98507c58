// A report as one page of HTML: nothing is fetched, nothing runs, its fonts are in it. It prints with page x of y, job
// and head on each page where the browser can (CSS Paged Media), and with the word of the record on every line.
import type { Paper, PaperLine, Piece, Section } from '../paper.ts'
import { escaped, plainId } from './markup.ts'
import { type PageFonts, pageStyle } from './style.ts'
import { sceneSvg } from './svg.ts'

/** Nothing may be fetched or run, whatever stands in the page. */
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'"

/** `fonts`: of the signs of this very page, as it is without them; null: those of the reader. */
export function reportHtml(paper: Paper, fonts: PageFonts | null = null): string {
  const [cover] = paper.sections
  return [
    '<!doctype html>',
    '<html lang="en" dir="ltr">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${escaped(POLICY)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    '<meta name="generator" content="Barover">',
    `<title>${escaped(paper.title)}</title>`,
    `<style>${pageStyle(paper, fonts)}</style>`,
    '</head>',
    '<body>',
    `<header class="mark">${escaped(paper.record)}  ${escaped(paper.job)}</header>`,
    '<main>',
    `<h1>${escaped(cover?.title ?? paper.title)}</h1>`,
    ...paper.sections.flatMap((section, n) => [
      sectionHtml(paper, section, n),
      ...(n === 0 ? [contents(paper)] : []),
    ]),
    '</main>',
    `<footer><p>${escaped(paper.record)}  job ${escaped(paper.job)}</p><p class="hash">check number of the log ${escaped(paper.head)}</p></footer>`,
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

function contents({ sections }: Paper): string {
  const links = sections.slice(1).map(({ id, title }) => `<li><a href="#${id}">${escaped(title)}</a></li>`)
  return `<nav aria-label="Sections"><ol>${links.join('')}</ol></nav>`
}

/** The cover has its title as that of the page. */
function sectionHtml(paper: Paper, { id, title, pieces }: Section, n: number): string {
  return [
    `<section id="${id}" aria-label="${escaped(n === 0 ? 'Cover' : title)}">`,
    ...(n === 0 ? [] : [`<h2>${escaped(title)}</h2>`]),
    ...pieces.map((piece, i) => pieceHtml(paper, piece, `${id}-${i}`)),
    '</section>',
  ].join('\n')
}

function pieceHtml(paper: Paper, piece: Piece, id: string): string {
  switch (piece.is) {
    case 'lines':
      return `<div class="sheet">${piece.lines.map((one) => lineHtml(paper, one)).join('\n')}</div>`
    case 'table':
      return tableHtml(paper, piece)
    case 'sketch':
      return `<figure><div class="table" role="group" tabindex="0" aria-label="${escaped(piece.title)}"><pre role="img" aria-label="${escaped(piece.told)}">${escaped(piece.lines.join('\n'))}</pre></div><figcaption><strong>${escaped(paper.record)}  ${escaped(piece.title)}</strong></figcaption></figure>`
    case 'plot': {
      const { title, notes } = piece.scene
      return `<figure>${sceneSvg(piece.scene, plainId(id))}<figcaption><strong>${escaped(paper.record)}  ${escaped(title)}</strong> ${notes.map(escaped).join(' ')}</figcaption></figure>`
    }
  }
}

/** A line that is set in keeps its place; of one in columns every sign is as wide as any other. */
function lineHtml({ record }: Paper, { margin, text, tone, right, columns }: PaperLine): string {
  const lead = /^ */.exec(text)?.[0].length ?? 0
  const set = lead === 0 || columns === true ? '' : ` in${Math.min(3, lead >> 1)}`
  const kind = columns === true ? ' columns' : ''
  const body = columns === true ? text : text.trim()
  return [
    `<p class="${tone}${set}${kind}">`,
    `<span class="of">${escaped(record)}</span> `,
    `<span class="no">${escaped(margin)}</span> `,
    `<span class="tx">${escaped(body)}</span>`,
    right === undefined || right === '' ? '' : ` <span class="by">${escaped(right)}</span>`,
    '</p>',
  ].join('')
}

/** A word this long is broken where it has to be, or it would push its table off the page. */
const LONG = /\S{31,}/

function tableHtml({ record }: Paper, { caption, columns, rows }: Extract<Piece, { is: 'table' }>): string {
  const kind = (i: number, text: string) => {
    if (LONG.test(text)) return ' class="long"'
    // Words in a column of figures say why there is none, and may take more lines.
    return columns[i]?.right === true && !/\s\S+\s/.test(text) ? ' class="num"' : ''
  }
  const head = columns.map(({ head: text }, i) => `<th scope="col"${kind(i, text)}>${escaped(text)}</th>`)
  const body = rows.map((cells) => {
    const [first = '', ...rest] = cells
    const more = rest.map((text, i) => `<td${kind(i + 1, text)}>${escaped(text)}</td>`)
    return `<tr><td class="of">${escaped(record)}</td><th scope="row"${kind(0, first)}>${escaped(first)}</th>${more.join('')}</tr>`
  })
  return [
    `<div class="table" role="group" tabindex="0" aria-label="${escaped(caption)}">`,
    `<table><caption>${escaped(caption)}</caption>`,
    `<thead><tr><th scope="col" class="of">record</th>${head.join('')}</tr></thead>`,
    `<tbody>${body.join('\n')}</tbody></table></div>`,
  ].join('')
}
