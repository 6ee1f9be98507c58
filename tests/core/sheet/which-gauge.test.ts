// Where the temperature of a gauge is read before it is picked, the sheet says which gauge it is.
import { expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { BORE_LINES, exampleDefs, Walk } from '../../helpers/example.ts'

const rows = ({ engine: { defs }, state, talk }: Walk) =>
  promptView(defs, state, talk, { width: 79, record: 'EXAMPLE', ascii: true }).rows.map(({ text }) => text)
const atGauge = (walk = new Walk()) => walk.throughGate().keys('1', '1', '71.2')

it('by the numbers of those that may be picked, and the sheet where it is', () => {
  const walk = atGauge()
  expect(walk.prompt).toMatchObject({ kind: 'read', step: { number: 5 } })
  const told = rows(walk).filter((text) => text.startsWith('The gauge is'))
  expect(told).toHaveLength(1)
  walk.key('70.4')
  const fit = walk.prompt.kind === 'pick' ? walk.prompt.options.filter(({ id }) => told[0]?.includes(id)) : []
  expect(fit.map(({ id }) => id)).toContain('M-3')
})

it('by its name once it is picked', () => {
  const walk = new Walk().toBore().keys(...BORE_LINES, '3', '9.7502', '1', '1', '1', '71.6')
  expect(walk.prompt).toMatchObject({ kind: 'read', step: { step: { id: 'gauge_temp_after' } } })
  expect(rows(walk)).toContain('The gauge is M-3, Inside micrometer, 8 to 12 in.')
})

it('is said to be none where the register has none that may be used', () => {
  const none = exampleDefs({
    instruments: (text) =>
      text
        .replace(/(id: M-\d+\n[\s\S]*?due: )\d{4}-\d{2}-\d{2}/g, '$12025-01-01')
        .replace(/(id: B-\d+\n[\s\S]*?due: )\d{4}-\d{2}-\d{2}/g, '$12025-01-01'),
  })
  const told = rows(atGauge(new Walk(none))).filter((text) => /gauge/.test(text))
  expect(told).toContain(
    'No gauge of the register may be used for the bore, so none has a temperature to be read. This job keeps the register it was opened with. Leave it; once a fit one stands in the register, open the job anew.',
  )
})

it('names none that may not be used, and nothing at another reading', () => {
  const due = exampleDefs({
    instruments: (text) => text.replace(/(id: M-3[\s\S]*?due: )\d{4}-\d{2}-\d{2}/, '$12025-01-01'),
  })
  expect(rows(atGauge(new Walk(due))).join(' ')).not.toMatch(/The gauge is.*M-3/)
  expect(rows(new Walk().toBore()).join(' ')).not.toContain('The gauge is')
})
