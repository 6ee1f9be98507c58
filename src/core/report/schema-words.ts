// Small pieces that the shape of a report is put together from. Every key says what it is: the published schema is made from it.
import { z } from 'zod'

export const words = (says: string) => z.string().meta({ description: says })
export const maybe = (says: string) => z.string().nullable().meta({ description: says })
export const yes = (says: string) => z.boolean().meta({ description: says })
export const whole = (says: string) => z.int().meta({ description: says })
export const real = (says: string) => z.number().meta({ description: says })
export const maybeReal = (says: string) => z.number().nullable().meta({ description: says })
export const list = <T extends z.ZodType>(of: T, says: string) => z.array(of).meta({ description: says })

export const at = words('When, with the offset of the wall clock then: 2026-03-14T06:52:10.125+01:00.')
export const seq = whole('Number of the entry in the log, from 0.')
export const by = maybe('Initials of who was at the keyboard; null where nobody had signed on.')
export const number = words('Number on the sheet, of the step or of a place in it: 7 or 7.3.')
export const step = words('Id of the step in the whole job.')

/** A quantity: in SI for programs, as people read it beside that. */
export const figureSchema = z.strictObject({
  si: real('The value in SI, not rounded.'),
  kind: words('What sort of quantity it is.'),
  unit: words('The unit it is shown in.'),
  shown: words('The figure in that unit, with the decimals that were measured.'),
  text: words('The figure with its unit.'),
})
export type Figure = z.output<typeof figureSchema>
export const figure = (says: string) => figureSchema.meta({ description: says })
export const maybeFigure = (says: string) => figureSchema.nullable().meta({ description: says })
