// What the plots of a report are drawn from: values and limits in SI, and nothing about where they come to lie on paper.
import { z } from 'zod'
import { figure, list, maybeFigure, maybeReal, real, words, yes } from './schema-words.ts'

const line = z.strictObject({ label: words('What it is.'), value: figure('Where it lies.') })
const common = {
  title: words('What is drawn.'),
  unit: words('Unit of the figures on it.'),
  notes: list(z.string(), 'What has to be said beside it.'),
}

export const boreProfileSchema = z.strictObject({
  kind: z.literal('bore-profile'),
  ...common,
  travel: figure('Length of ring travel, over which the stations lie.'),
  points: list(
    z.strictObject({
      number: words('Number on the sheet of the step that judged it.'),
      station: words('Station.'),
      at: real('Share of ring travel from its head end.'),
      axis: words('Direction across the bore.'),
      value: figure('Diameter at 20 degC, as it was judged.'),
    }),
    'One for each place.',
  ),
  lines: list(line, 'Nominal, and the limits of size.'),
})

export const wearSchema = z.strictObject({
  kind: z.literal('wear'),
  ...common,
  readings: list(
    z.strictObject({
      hours: real('Running hours.'),
      value: figure('As read.'),
      U: real('Its measuring error at k = 2, metres.'),
      isNow: yes('true: read on this job.'),
    }),
    'What the overhauls left, and what this job found.',
  ),
  band: list(
    z.strictObject({
      hours: real('Running hours.'),
      low: real('Lower edge, metres.'),
      fit: real('Straight on, metres.'),
      high: real('Upper edge, metres.'),
    }),
    'Where one further reading may lie.',
  ),
  basis: words('What the band accounts for.'),
  limit: maybeFigure('The limit it wears towards; null where none is told.'),
})

export const gapsSchema = z.strictObject({
  kind: z.literal('gaps'),
  ...common,
  bars: list(
    z.strictObject({ label: words('Which one.'), value: figure('As judged.') }),
    'One for each place.',
  ),
  lines: list(line, 'Limits.'),
})

export const pocketSchema = z.strictObject({
  kind: z.literal('pocket'),
  ...common,
  rows: list(
    z.strictObject({
      opening: real('0 shut to 1 full open.'),
      load: figure('Driver load, raised so that it never flatters.'),
      capacity: real('Flow over that at the present setting.'),
      isOut: yes('true: something is beyond its limit at this opening.'),
    }),
    'The table of openings.',
  ),
  target: maybeFigure('Rating less margin.'),
  measured: maybeFigure('Driver load as read.'),
  present: maybeReal('Where it stands.'),
  setting: maybeReal('The opening that the verdict recommends.'),
})

export const pvSchema = z.strictObject({
  kind: z.literal('pv'),
  ...common,
  ends: list(
    z.strictObject({
      label: words('Which end.'),
      points: list(
        z.strictObject({ volume: real('Cubic metres.'), pressure: real('Pascal, absolute.') }),
        'Once round.',
      ),
    }),
    'One loop for each end that acts.',
  ),
})

export const plotSchema = z.discriminatedUnion('kind', [
  boreProfileSchema,
  wearSchema,
  gapsSchema,
  pocketSchema,
  pvSchema,
])
export type Plot = z.output<typeof plotSchema>
export type PlotOf<K extends Plot['kind']> = Extract<Plot, { kind: K }>
