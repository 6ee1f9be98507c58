// A scene on a page of a PDF: the very shapes that the SVG has.
import { INKS, type Scene, type Shape } from '../core/report/plot/scene.ts'
import { type Doc, put, take } from './ink.ts'

/** With its upper left corner at `x`, `y`, and so many points wide. */
export function drawScene(doc: Doc, scene: Scene, x: number, y: number, width: number): void {
  doc.save()
  doc.translate(x, y).scale(width / scene.width)
  for (const shape of scene.shapes) drawShape(doc, shape)
  doc.restore()
}

function drawShape(doc: Doc, shape: Shape): void {
  doc.save()
  if (shape.is === 'path') {
    const { d, stroke, fill, width = 1, dash, at } = shape
    if (at !== undefined) doc.translate(at[0], at[1])
    doc.path(d)
    if (dash !== undefined) doc.dash(dash[0], { space: dash[1] })
    if (fill !== undefined) doc.fill(INKS[fill])
    else doc.lineWidth(width).stroke(INKS[stroke ?? 'ink'])
  } else {
    const { x, y, text, size, anchor, ink = 'ink', bold, up } = shape
    if (up === true) doc.rotate(-90, { origin: [x, y] })
    take(doc, { font: bold === true ? 'bold' : 'sans', size, colour: INKS[ink] })
    put(doc, text, x, y, anchor)
  }
  doc.restore()
}
