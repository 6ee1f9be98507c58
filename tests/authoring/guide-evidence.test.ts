// The evidence that the guide writes out: together in one gate it passes check as a job, and is walked to its end.
import { readFileSync } from 'node:fs'
import { join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkTogether } from '../../src/authoring/together.ts'
import { evidenceSchema } from '../../src/core/definition/evidence.ts'
import { everyKindFile } from '../helpers/all-kinds.ts'
import { exampleDefs, ROOT, Walk } from '../helpers/example.ts'
import { rightLine } from '../helpers/right-line.ts'

const GUIDE = readFileSync(join(ROOT, 'procedures/REFERENCE.md'), 'utf8')
const MACHINE = 'examples/tc-401/machine.yaml'

function piecesUnder(heading: string): string[] {
  const start = GUIDE.indexOf(`${heading}\n`)
  const end = GUIDE.indexOf('\n##', start + heading.length)
  return [...GUIDE.slice(start, end).matchAll(/```text\n(.*?)```/gs)].map((match) => match[1] ?? '')
}

const EVIDENCE = piecesUnder('### Evidence written out')
const [STEP = ''] = piecesUnder('### What evidence proves, and what lets a hazard in again')

function indented(text: string, by: number): string {
  return text.replace(/^(?=.)/gm, ' '.repeat(by))
}

/** The head of the file of every kind, one gate with all that the guide writes out, its step, and one behind. */
const PROCEDURE = [
  everyKindFile().split('steps:\n')[0],
  'steps:\n',
  '  - id: hold_point\n    kind: gate\n    title: Hold point\n    holds: [start, pressure, bad_air, fall]\n',
  '    hazard: All of it.\n    trouble: Come out and say STOP.\n    clear_words: ALL OUT\n    evidence:\n',
  ...EVIDENCE.map((piece) => indented(piece, 6)),
  indented(STEP, 2),
  '  - id: looked\n    kind: tell\n    title: Look in\n    exposes: [bad_air]\n    hazard: Face in.\n    trouble: Out.\n',
].join('')

describe('the evidence of the guide', () => {
  it('is one of each kind', () => {
    const kinds = EVIDENCE.map((piece) => /kind: (\w+)/.exec(piece)?.[1])
    expect([...kinds].sort()).toEqual(evidenceSchema.options.map((one) => one.shape.kind.value).sort())
  })

  it('passes check as a job', () => {
    const { diagnostics, jobs } = checkTogether(
      [
        { path: 'mine/p.yaml', text: PROCEDURE },
        { path: MACHINE, text: readFileSync(join(ROOT, MACHINE), 'utf8') },
      ],
      {
        read: (path) => (path.startsWith('mine/') ? undefined : readFileSync(join(ROOT, path), 'utf8')),
        resolve: (from, name) => normalize(join(from, '..', name)),
        beside: () => [],
      },
    )
    // One gas test of each kind is enough to show how it is written, and no gate to work behind.
    expect(diagnostics.map((one) => one.code)).toEqual(['untested-limit'])
    expect(jobs).toContainEqual({ procedure: 'every_evidence', machine: 'TC-401-1' })
  })

  it('is walked to its end, with the air asked twice', () => {
    const walk = new Walk(exampleDefs({ procedure: () => PROCEDURE }))
    for (let n = 0; n < 60 && walk.state.closed === null; n++) {
      if (walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.kind === 'wait') walk.wait(10)
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
    }
    expect(walk.state.closed).toBe('NONE')
    const oxygen = walk.entries.filter((e) => e.type === 'evidence.given' && e.item === 'oxygen')
    expect(oxygen).toHaveLength(2)
  })
})
