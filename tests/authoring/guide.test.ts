// The authoring guide does what it says: its pieces pass `check` one after the other, its slip is told as shown, and its
// answers walk the procedure to its end.
import { readFileSync } from 'node:fs'
import { join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import { renderDiagnostic, sourceLine } from '../../src/authoring/diagnostic.ts'
import type { Disk } from '../../src/authoring/folder.ts'
import { checkTogether } from '../../src/authoring/together.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { readAnswers } from '../../src/plain/answers.ts'
import { fileCopies, ROOT, Walk } from '../helpers/example.ts'

const GUIDE = readFileSync(join(ROOT, 'procedures/README.md'), 'utf8')
const PROCEDURE = 'mine/counterbore-check.yaml'
const PART = 'mine/count-tools.yaml'
const MACHINE = 'examples/tc-401/machine.yaml'

/** Each YAML block with the file that the line in front of it names. */
const PIECES = [
  ...GUIDE.matchAll(/`(mine\/[\w-]+\.yaml)`[^\n]*:\n\n(?:<!--[^\n]*-->\n)?```yaml\n(.*?)```/gs),
].map((match) => ({
  file: match[1] ?? '',
  text: match[2] ?? '',
}))

function fence(word: string): string {
  return new RegExp(`\`\`\`${word}\\n(.*?)\`\`\``, 's').exec(GUIDE)?.[1] ?? ''
}

/** The files as they are once the first `count` pieces are typed. */
function typed(count: number): Map<string, string> {
  const files = new Map<string, string>()
  for (const { file, text } of PIECES.slice(0, count)) files.set(file, (files.get(file) ?? '') + text)
  return files
}

function check(files: ReadonlyMap<string, string>, ...more: string[]) {
  const disk: Disk = {
    read: (path) =>
      files.get(path) ?? (path.startsWith('mine/') ? undefined : readFileSync(join(ROOT, path), 'utf8')),
    resolve: (from, name) => normalize(join(from, '..', name)),
    beside: (path) => [...files.keys()].filter((one) => join(one, '..') === join(path, '..')),
  }
  const given = [...files.keys(), ...more].map((path) => ({ path, text: disk.read(path) ?? '' }))
  return checkTogether(given, disk)
}

function defsOf(files: ReadonlyMap<string, string>): Definitions {
  const own = (role: FileCopy['role'], path: string): FileCopy[] => {
    const text = files.get(path)
    return text === undefined ? [] : [{ role, name: path, sha256: '', text }]
  }
  const rest = fileCopies().filter((file) => file.role !== 'procedure')
  const result = definitionsFrom([...own('procedure', PROCEDURE), ...own('part', PART), ...rest])
  if (!result.ok) throw new Error(result.diagnostics.map((one) => one.message).join('\n'))
  return result.defs
}

function walk(files: ReadonlyMap<string, string>, more: readonly string[] = []): Walk {
  const lines = readAnswers(fence('answers'), 'answers')
  if (!lines.ok) throw new Error(lines.error.say)
  const answers = lines.value.flatMap((line) =>
    line.kind === 'answer' ? [line.text === 'done' ? '' : line.text] : [],
  )
  return new Walk(defsOf(files), 'PRACTICE').keys(...answers, ...more)
}

describe('the pieces of the guide', () => {
  it('are all the YAML there is in it', () => {
    expect(PIECES.map((piece) => piece.file)).toEqual([PROCEDURE, PROCEDURE, PROCEDURE, PART, PROCEDURE])
    expect(GUIDE.match(/```yaml/g)).toHaveLength(PIECES.length)
  })

  it.each([1, 2, 3, 4, 5])('pass check as they are typed: %i', (count) => {
    const { diagnostics, files } = check(typed(count))
    expect(diagnostics).toEqual([])
    expect(files).toHaveLength(count < 4 ? 1 : 2)
  })

  it('pass check with the machine, as a job', () => {
    for (const count of [3, 5]) {
      const { diagnostics, jobs } = check(typed(count), MACHINE)
      expect(diagnostics).toEqual([])
      expect(jobs).toContainEqual({ procedure: 'counterbore_check', machine: 'TC-401-1' })
    }
  })

  it('are short enough for the time it says', () => {
    const bare = typed(3).get(PROCEDURE)?.replace(/\n +/g, '\n') ?? ''
    expect(bare.length).toBeGreaterThan(2000)
    expect(bare.length).toBeLessThanOrEqual(2450)
  })
})

describe('the slip of the guide', () => {
  it('is told as it shows', () => {
    const files = typed(3)
    const text = files.get(PROCEDURE)?.replace('rotation, pressure', 'rotation, presure') ?? ''
    const { diagnostics } = check(files.set(PROCEDURE, text))
    const [first] = diagnostics
    expect(first && renderDiagnostic(first, sourceLine(text, first.line))).toBe(fence('text').trimEnd())
    expect(diagnostics.slice(1).map((one) => one.code)).toEqual(['not-held', 'not-held'])
  })
})

describe('the answers of the guide', () => {
  it('walk the procedure to its end, one answer to each question', () => {
    const { state, said } = walk(typed(3))
    expect(said).toEqual([])
    expect(state.closed).not.toBeNull()
    expect(Object.keys(state.readings)).toEqual(['counterbore.head_end.vertical'])
    expect(state.record).toBe('PRACTICE')
  })

  it('are one short with the part, and 1 is what it asks', () => {
    expect(walk(typed(5)).state.closed).toBeNull()
    expect(walk(typed(5), ['1']).state.closed).not.toBeNull()
  })
})
