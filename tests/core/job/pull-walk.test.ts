// The whole piston pull, walked on both invented machines by their answers files: whenever a step faces a hazard a gate that
// holds it is proved, no line of the answers goes astray, and each finding comes to its verdict.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { withOverhaul } from '../../../src/authoring/add-overhaul.ts'
import { definitionsFrom } from '../../../src/authoring/definitions.ts'
import { machineSchema } from '../../../src/core/definition/machine.ts'
import { leftFigures, notSaidRenewed } from '../../../src/core/job/adopt.ts'
import { hoursAtEnd, hoursRead } from '../../../src/core/job/changes.ts'
import type { FileCopy } from '../../../src/core/job/entries.ts'
import { nonconformances } from '../../../src/core/job/nonconformance.ts'
import { leftOutRows } from '../../../src/core/sheet/left-out.ts'
import { changeLines } from '../../../src/core/talk/changes.ts'
import { ROOT, Walk } from '../../helpers/example.ts'
import { expectAskedOfParts } from '../../helpers/pull-asked.ts'
import { expectReviewed } from '../../helpers/pull-review.ts'
import { expectReported } from '../../helpers/reported.ts'
import { SHIPPED } from '../../helpers/shipped-jobs.ts'
import { changed, takenEntry, takenIn } from '../../helpers/taken-in.ts'
import { playAnswers } from '../../helpers/walked.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

type Site = 'tc-401' | 'rg-27'

function defsOn(site: Site) {
  const copy = (role: FileCopy['role'], folder: string, name: string): FileCopy => ({
    role,
    name,
    sha256: '',
    text: readFileSync(join(ROOT, folder, name), 'utf8'),
  })
  const found = definitionsFrom([
    copy('procedure', 'procedures', 'piston-pull.yaml'),
    ...SHIPPED.filter((name) => name !== 'piston-pull.yaml').map((name) => copy('part', 'procedures', name)),
    ...(['machine', 'instruments', 'crew'] as const).map((role) =>
      copy(role, `examples/${site}`, `${role}.yaml`),
    ),
    copy('limit-book', 'procedures/limits', 'handbook-1996.yaml'),
  ])
  if (!found.ok) throw new Error(found.diagnostics.map((d) => `${d.file}:${d.line} ${d.message}`).join('\n'))
  return found.defs
}

/** Every line has to be taken, and nothing be wrong after it. */
function walked(site: Site, at: { step: string; keep: (walk: Walk) => void } | null = null): Walk {
  const walk = new Walk(defsOn(site))
  return playAnswers(walk, [site, 'piston-pull-answers.txt'], (text, line) => {
    const { prompt } = walk
    if (at !== null && 'step' in prompt && prompt.step.id === at.step) at.keep(walk.copy())
    const before = walk.said.length
    const had = walk.entries.length
    walk.key(text)
    const refused = walk.entries.length === had && walk.talk.ask === null && walk.said.length > before
    if (refused) throw new Error(`line ${line} was not taken: ${walk.said.slice(before).join(' ')}`)
    // Evidence sends nobody in by itself: what it opens is looked at when the next step is.
    const isEvidence = walk.entries.at(-1)?.type === 'evidence.given'
    if (walk.entries.length > had && !isEvidence) expect(violations(momentOf(walk), false)).toEqual([])
  })
}

const words = (walk: Walk) =>
  Object.fromEntries(
    Object.entries(walk.state.verdicts)
      .filter(([, v]) => !v.void && v.verdict.result.verdict !== 'ACCEPT')
      .map(([id, v]) => [id, v.verdict.result.verdict]),
  )
const found = (walk: Walk) =>
  nonconformances(walk.engine.defs, walk.state).map(({ step, word }) => `${step} ${word}`)
const doubted = (walk: Walk) =>
  walk.entries.flatMap((entry) => (entry.type === 'instrument.doubted' ? [entry.instrument] : []))

/** Another piston: the job is left, its record taken in, the answers about the record are given anew, and it goes on. */
function expectTakenIn(walk: Walk | undefined) {
  if (walk === undefined) throw new Error('the record was never asked about')
  walk.autoPin = true
  walk.keys('2', 'another piston, 41', 'KH')
  expect(walk.prompt).toMatchObject({ kind: 'confirm', step: { id: 'ends_here' } })
  walk.bring({ do: 'leave' })
  const { piston } = walk.engine.defs.machine
  if (piston === undefined) throw new Error('no piston on record')
  const length = { text: '5.30 in', kind: 'length' as const, value: 5.3, unit: 'in', si: 5.3 * 0.0254 }
  const after = takenIn(walk, changed(walk, { piston: { ...piston, length } }), { person: 'PB' })
  const { gates, voids, anew } = takenEntry(after)
  expect(gates).toEqual(
    expect.arrayContaining(['opened__isolated__isolation', 'opened__opening', 'rod_bench']),
  )
  expect(voids).toEqual(
    expect.arrayContaining(['load__decided', 'bore__bore_judged', 'bore_left__bore_judged']),
  )
  expect(anew).toEqual(['opened__pocket_agreed', 'piston_choice', 'record_is'])
  expect(after.state.done).toMatchObject({ piston_choice: 'same', record_is: 'changed' })
  after.bring({ do: 'take-up' })
  after.keys('RO', 'TC-401-1')
  expect(after.prompt).toMatchObject({ kind: 'decide', step: { id: 'load__decided' } })
}

/** What the pull left can stand in a machine record: every unit, a runout below zero, a finish. */
function expectLeft(walk: Walk) {
  const { figures } = leftFigures(walk.engine.defs, walk.state)
  const text = (of: string) => figures.filter((one) => one.of === of).map(({ value }) => value)
  expect(text('finish of the bore')).toEqual(['0.40 um'])
  expect(text('piston nut torque')).toEqual(['950.0 ft-lb'])
  expect(text('rod runout up and down')).toEqual(['-0.00120 in'])
  expect(text('rod diameter, top to bottom')).toHaveLength(3)
  // Of a bore that was cut nothing that was read before; the hours are those it went back at.
  expect(text('ridge at the end of ring travel')).toEqual([])
  expect(hoursAtEnd(walk.engine.defs, walk.state)).toBeGreaterThan(
    hoursRead(walk.engine.defs, walk.state) ?? Number.POSITIVE_INFINITY,
  )
  expect(notSaidRenewed(walk.engine.defs, walk.state, ['rings'])).toContain('the bore or liner was made new')
  const machine = readFileSync(join(ROOT, 'examples', 'tc-401', 'machine.yaml'), 'utf8')
  const added = { day: '2026-03-14', hours: 68_301, report: 'pull', renewed: ['rings'] as const, figures }
  expect(machineSchema.safeParse(parse(withOverhaul(machine, added))).success).toBe(true)
}

describe('the whole piston pull', () => {
  it('on TC-401-1: bore honed, rod runs on, rings gap too far, pocket leaks, a gauge found out late', () => {
    const kept: Walk[] = []
    const walk = walked('tc-401', { step: 'record_is', keep: (one) => kept.push(one) })
    expect(walk.state.closed).toBe('REPLACE')
    expect(words(walk)).toEqual({
      bore__bore_judged: 'REWORK',
      rings_found__gap_judged: 'REPLACE',
      rod_measured__rod_size_judged: 'MONITOR',
      pocket_tested__leak_judged: 'REWORK',
    })
    expect(doubted(walk)).toEqual(['P-7'])
    expect(found(walk)).toContain('gaps__check_valve passes')
    const leftOut = leftOutRows(walk.engine.defs, walk.state).map(({ text }) => text)
    const only = ' \\(only if step \\d+, .*finds "Old liner out, new liner in"\\)$'
    expect(leftOut.filter((line) => line.includes('"Old liner out'))).toEqual(
      ['Old liner out', 'Fit of the new liner', 'New liner in', 'Jacket seals tested'].map((part) =>
        expect.stringMatching(new RegExp(`^ {2}left out: \\d+ to \\d+ ${part}${only}`)),
      ),
    )
    expect(leftOut.length).toBeLessThan(65)
    const changes = changeLines(walk.engine.defs, walk.state).join('\n')
    expect(changes).toMatch(/last 9\.5053 in.*found 9\.5113.*left 9\.5119/)
    expect(changes).toMatch(/wear 0\.000\d+ in in 1000 h, give or take/)
    expectReviewed(walk)
    expectTakenIn(kept[0])
    expectLeft(walk)
    const { plots } = expectReported(walk)
    expect([...new Set(plots.map(({ kind }) => kind))].sort()).toEqual([
      'bore-profile',
      'gaps',
      'pocket',
      'pv',
      'wear',
    ])
  }, 240_000)

  it('on RG-27-1: pocket opened, piston vented, liner renewed, and the bore measured again by another gauge', () => {
    const walk = walked('rg-27')
    expect(walk.state.closed).toBe('REPLACE')
    expect(words(walk)).toEqual({
      load__judged: 'REWORK',
      bore__bore_judged: 'REWORK',
      rings_found__gap_judged: 'REPLACE',
      rod_measured__rod_size_judged: 'MONITOR',
      liner_fits__fit_judged: 'MONITOR',
      pocket_tested__leak_judged: 'REWORK',
    })
    expect(doubted(walk)).toEqual(['B-11'])
    const bore = walk.state.verdicts.bore__bore_judged
    expect(bore?.verdict.readings.length).toBeGreaterThan(12)
    expect(walk.state.done.piston_is).toBe('vented')
    expectReviewed(walk)
    expectAskedOfParts(walk)
  }, 240_000)
})
