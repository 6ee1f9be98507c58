// A scene as SVG. Title and words are in it for those who do not see it; `id` keeps those of several plots on one page apart.
import { INKS, type Scene, type Shape } from '../plot/scene.ts'
import { escaped } from './markup.ts'

export function sceneSvg({ title, told, width, height, shapes }: Scene, id: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="${id}-title ${id}-told">`,
    `<title id="${id}-title">${escaped(title)}</title>`,
    `<desc id="${id}-told">${escaped(told)}</desc>`,
    ...shapes.map(shapeSvg),
    '</svg>',
  ].join('')
}

function shapeSvg(shape: Shape): string {
  if (shape.is === 'path') {
    const { d, stroke, fill, width, dash, at } = shape
    return [
      `<path d="${escaped(d)}"`,
      ` fill="${fill === undefined ? 'none' : INKS[fill]}"`,
      stroke === undefined ? '' : ` stroke="${INKS[stroke]}" stroke-width="${width ?? 1}"`,
      dash === undefined ? '' : ` stroke-dasharray="${dash.join(' ')}"`,
      at === undefined ? '' : ` transform="translate(${at.join(' ')})"`,
      '/>',
    ].join('')
  }
  const { x, y, text, size, anchor, ink, bold, up } = shape
  return [
    `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}" fill="${INKS[ink ?? 'ink']}"`,
    bold === true ? ' font-weight="bold"' : '',
    up === true ? ` transform="rotate(-90 ${x} ${y})"` : '',
    `>${escaped(text)}</text>`,
  ].join('')
}
