// Who may witness where each hangs a lock of their own: nobody who keyed any of it, whosever lock it was; and two blinds are told apart.
import { expect, it } from 'vitest'
import { didThis } from '../../../src/core/job/evidence-words.ts'
import { itemsOf } from '../../../src/core/job/gate.ts'
import { itemLabel } from '../../../src/core/job/item-label.ts'
import { careful, defsOf, look, session, type Trainee } from '../../helpers/trainees.ts'

const defs = defsOf('isolation')
/** The first machine on which somebody comes as far as that. */
function at(kind: 'witness' | 'discharge_blind') {
  for (let seed = 1; seed < 60; seed++) {
    const { walk } = session(
      seed,
      1,
      upTo((evidence, id) => evidence === kind || id === kind),
      defs,
    )
    const { prompt } = walk
    if (prompt.kind === 'evidence') return { walk, gate: prompt.gate }
  }
  throw new Error(`nobody comes to ${kind}`)
}

const upTo =
  (is: (kind: string, id: string) => boolean): Trainee =>
  (walk) =>
    walk.prompt.kind === 'evidence' && is(walk.prompt.item.evidence.kind, walk.prompt.item.evidence.id)
      ? false
      : careful(walk)

it('whoever keyed numbers of locks witnesses none of it; whose lock another keyed may', () => {
  const { walk, gate } = at('witness')
  const owners = Object.keys(walk.state.gates[gate.id]?.given ?? {})
    .filter((key) => key.startsWith('own_lock.'))
    .map((key) => key.slice('own_lock.'.length))
  const keyed = walk.state.doer ?? ''
  expect(owners).toContain(keyed)
  expect(owners).toHaveLength(2)
  for (const one of owners) expect(didThis(walk.state, gate, one), one).toBe(one === keyed)
  // Another is at the keys now: what was keyed before stays keyed by whoever did it.
  const later = { ...walk.state, doer: 'KH' }
  expect(didThis(later, gate, keyed)).toBe(true)
  walk.said.length = 0
  walk.key('who may witness?')
  const said = walk.said.join(' ')
  expect(said).toContain(`Not ${keyed}: whoever keyed any of it`)
  expect(said).toContain('A lock of their own on the box keeps nobody from it')
})

it('a blind is called by its place, in its box and where it is looked at', () => {
  const { walk, gate } = at('discharge_blind')
  const blinds = itemsOf(defs, walk.state, gate).filter(({ evidence }) => evidence.id.endsWith('_blind'))
  expect(blinds.map((one) => itemLabel(defs, one))).toEqual(['suction blind', 'discharge blind'])
  expect(look(walk).shown).toMatch(/^At the discharge blind\. /)
})
