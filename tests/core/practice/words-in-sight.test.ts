// The words by which a machine is asked stand in one line at each prompt of a whole session that nothing else fills, on a wide sheet and on
// a narrow one, and once a gas test runs out too.
import { describe, expect, it } from 'vitest'
import { widthOf } from '../../../src/core/lib/text.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, seedHiding, session } from '../../helpers/trainees.ts'

const SIZES = [
  { columns: 80, rows: 24 },
  { columns: 40, rows: 15 },
] as const
const SAID = ['hint', 'help'] as const

/** An instrument is read here, so it is measure that asks the machine. */
const isMeasured = ({ prompt }: Walk) =>
  prompt.kind === 'read' ||
  (prompt.kind === 'evidence' && ['gas', 'measured'].includes(prompt.item.evidence.kind))

function below(walk: Walk, { columns, rows }: (typeof SIZES)[number]): string {
  const { engine, state, talk, now } = walk
  const style = { width: columns - 1, record: 'PRACTICE', ascii: true } as const
  const view = promptView(engine.defs, state, talk, style)
  const at = (n: number) =>
    fitLive({
      view,
      foot: foot(engine.defs, state, now),
      style,
      rows,
      columns,
      notice: null,
      side: { of: 'question', n },
    })
  // On the last of its sides, where there is more than one.
  const live = at(99)
  for (const { margin, text } of [...live.above, ...live.below])
    expect(widthOf(margin + text)).toBeLessThanOrEqual(columns - 1)
  return [...live.above, ...live.below].map(({ text }) => text).join(' ')
}

describe.each(SIZES)('at $columns x $rows', (size) => {
  it.each([
    ['bore-inspection', 'barrel', 2],
    ['open-cylinder', 'black-dust', 3],
    ['vent-and-purge', 'valve-creeps', 3],
  ] as const)('%s has them at each of its prompts, the gas clock running or not', (name, id, level) => {
    const defs = defsOf(name)
    const without = new Set<string>()
    let isGas = false
    session(
      seedHiding(id, level, defs),
      level,
      (walk) => {
        const { kind } = walk.prompt
        const isWitness = walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.kind === 'witness'
        const isAsking =
          (kind === 'evidence' && !isWitness) || kind === 'read' || kind === 'observe' || kind === 'confirm'
        if (isAsking && walk.talk.ask === null) {
          const text = below(walk, size)
          isGas ||= /Gas \d+ min old/.test(text)
          const asks = isMeasured(walk) ? ['measure'] : ['look', 'wait']
          if (![...asks, ...SAID].every((word) => text.includes(word)))
            without.add(
              `${walk.prompt.kind === 'evidence' ? walk.prompt.item.key : ''} ${'step' in walk.prompt ? walk.prompt.step.id : kind}: ${text}`,
            )
        }
        return careful(walk)
      },
      defs,
    )
    expect([...without]).toEqual([])
    if (name !== 'vent-and-purge') expect(isGas).toBe(true)
  })
})
