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

const STARTER = readFileSync(join(ROOT, 'examples/first-procedure.yaml'), 'utf8')
const ANSWERS = readFileSync(join(ROOT, 'examples/first-procedure-answers.txt'), 'utf8')

function wordsIn(text: string): number {
  return text.split(/\s+/).filter((word) => /\w/.test(word)).length
}

function section(heading: string): string {
  const start = GUIDE.indexOf(`${heading}\n`)
  return GUIDE.slice(start, GUIDE.indexOf('\n##', start)).replace(/[>*`]/g, '')
}

/** Each YAML block with the line in front of it, which names the file and says where in it the block goes. */
const PIECES = [...GUIDE.matchAll(/([^\n]*)\n\n(?:<!--[^\n]*-->\n)?```yaml\n(.*?)```/gs)].map((match) => ({
  where: match[1] ?? '',
  file: /`(mine\/[\w-]+\.yaml)`/.exec(match[1] ?? '')?.[1] ?? '',
  text: match[2] ?? '',
}))

/** The file with one piece typed where the guide says: in place of lines with its keys, below a line, or at the end. */
function withPiece(file: string, { where, text }: (typeof PIECES)[number]): string {
  const put = (from: string | RegExp, to: string) => {
    if (file.split(from).length !== 2) throw new Error(`${from} does not stand there once`)
    return file.replace(from, () => to)
  }
  if (where.startsWith('Change these lines')) {
    const lines = text.trimEnd().split('\n')
    return lines.reduce((done, line) => {
      const own = new RegExp(`^${line.split(':')[0]}: .*$`, 'm')
      if (!own.test(done)) throw new Error(`no line for ${line}`)
      return done.replace(own, line)
    }, file)
  }
  const below = /below `([^`]+)`/.exec(where)?.[1]
  return below === undefined ? file + text : put(`${below}\n`, `${below}\n${text}`)
}

function fence(word: string): string {
  return new RegExp(`\`\`\`${word}\\n(.*?)\`\`\``, 's').exec(GUIDE)?.[1] ?? ''
}

/** The files as they are once the starter is copied and the first `count` pieces are typed. */
function typed(count: number): Map<string, string> {
  const files = new Map([[PROCEDURE, STARTER]])
  for (const piece of PIECES.slice(0, count))
    files.set(piece.file, withPiece(files.get(piece.file) ?? '', piece))
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

function answersIn(text: string): string[] {
  const lines = readAnswers(text, 'answers')
  if (!lines.ok) throw new Error(lines.error.say)
  return lines.value.flatMap((line) =>
    line.kind === 'answer' ? [line.text === 'done' ? '' : line.text] : [],
  )
}

function walk(
  files: ReadonlyMap<string, string>,
  own: readonly string[] = answersIn(fence('answers')),
): Walk {
  const job = new Walk(defsOf(files), 'PRACTICE')
  job.autoPin = false
  return job.keys(...answersIn(ANSWERS), ...own)
}

describe('the starter of the guide', () => {
  it('passes check as it is, by itself and with the machine', () => {
    expect(check(new Map([[PROCEDURE, STARTER]])).diagnostics).toEqual([])
    expect(check(new Map([[PROCEDURE, STARTER]]), MACHINE).diagnostics).toEqual([])
  })

  it('is walked to its end by its answers', () => {
    const { state, said } = walk(typed(0), [])
    expect(said).toEqual([])
    expect(state.closed).not.toBeNull()
  })

  it('tests the air in both places, oxygen first, and its witness comes last', () => {
    const asked = [...STARTER.matchAll(/^ {6}- id: (\w+)$/gm)].map((match) => match[1])
    const gases = ['oxygen', 'flammable', 'h2s']
    const places = ['breathing', 'inside']
    expect(asked.slice(-7)).toEqual([...places.flatMap((p) => gases.map((g) => `${g}_${p}`)), 'witness'])
  })
})

describe('the pieces of the guide', () => {
  it('are all the YAML there is in it, in order', () => {
    const own = [PROCEDURE, PROCEDURE, PROCEDURE, PROCEDURE]
    expect(PIECES.map((piece) => piece.file)).toEqual([...own, PART, PROCEDURE])
    expect(GUIDE.match(/```yaml/g)).toHaveLength(PIECES.length)
  })

  it.each([1, 2, 3, 4, 5, 6])('pass check as they are typed: %i', (count) => {
    const { diagnostics, files } = check(typed(count))
    expect(diagnostics).toEqual([])
    expect(files).toHaveLength(count < 5 ? 1 : 2)
  })

  it('pass check with the machine, as a job', () => {
    for (const count of [3, 4, 6]) {
      const { diagnostics, jobs } = check(typed(count), MACHINE)
      expect(diagnostics).toEqual([])
      expect(jobs).toContainEqual({ procedure: 'counterbore_check', machine: 'TC-401-1' })
    }
  })
})

describe('the minutes of the guide', () => {
  const chapters = [...GUIDE.matchAll(/^## (\d)\. ([^\n]*?) \(([\d.]+) minutes\)\n(.*?)(?=^## )/gms)].map(
    (match) => {
      const body = match[4] ?? ''
      const typing = [...body.matchAll(/```(?:yaml|answers)\n(.*?)```/gs)].map((one) => one[1] ?? '').join('')
      const prose = body.replace(/```.*?```|<!--.*?-->/gs, '').replace(/[>*`]/g, '')
      // What a chapter sends the reader to is read there and counts there.
      const more: Readonly<Record<string, string>> = { '1': STARTER, '3': section('### A reading') }
      const read = `${prose} ${more[match[1] ?? ''] ?? ''}`
      const words = wordsIn(read)
      const characters = typing.replace(/^[ ]+/gm, '').length
      const reckoned = words / 200 + characters / 120
      return { title: `${match[1]}. ${match[2]}`, stated: match[3], words, characters, reckoned }
    },
  )

  const introduction = GUIDE.slice(0, GUIDE.indexOf('## 1.'))
  const before = wordsIn(introduction)
  const all = chapters.reduce((sum, one) => sum + one.reckoned, before / 200)

  it('are those at its chapters, and no more than fifteen in all with the introduction', () => {
    expect(chapters).toHaveLength(5)
    for (const { stated, reckoned } of chapters) expect(stated).toBe(reckoned.toFixed(1))
    // A minute is left for the commands and for finding the places.
    expect(all).toBeLessThanOrEqual(14)
  })

  it('are shown in its table', () => {
    const rows = [...GUIDE.matchAll(/^\| (.+?) +\| +(\d+) +\| +(\d+) +\| +([\d.]+) +\|$/gm)].map((row) =>
      row.slice(1),
    )
    const words = chapters.reduce((sum, one) => sum + one.words, before)
    const characters = chapters.reduce((sum, one) => sum + one.characters, 0)
    expect(rows).toEqual([
      ['introduction', `${before}`, '0', (before / 200).toFixed(1)],
      ...chapters.map((one) => [one.title, `${one.words}`, `${one.characters}`, one.reckoned.toFixed(1)]),
      ['all', `${words}`, `${characters}`, all.toFixed(1)],
    ])
  })
})

describe('the slip of the guide', () => {
  it('is told as it shows', () => {
    const files = typed(2)
    const text = files.get(PROCEDURE) ?? ''
    const at = text.lastIndexOf('pressure')
    const slip = `${text.slice(0, at)}presure${text.slice(at + 'pressure'.length)}`
    const { diagnostics } = check(files.set(PROCEDURE, slip))
    const [first] = diagnostics
    expect(first && renderDiagnostic(first, sourceLine(slip, first.line))).toBe(fence('text').trimEnd())
    expect(diagnostics).toHaveLength(1)
  })
})

describe('the answers of the guide', () => {
  it('walk the procedure to its end, one answer to each question', () => {
    const { state, said } = walk(typed(4))
    expect(said).toEqual([])
    expect(state.closed).not.toBeNull()
    expect(Object.keys(state.readings)).toEqual(['counterbore.head'])
    expect(state.record).toBe('PRACTICE')
  })

  it('leave the reading out where a burr is found', () => {
    const { state } = walk(typed(4), ['2'])
    expect(state.closed).not.toBeNull()
    expect(state.readings).toEqual({})
  })

  it('are as many as the guide says', () => {
    const all = [...answersIn(ANSWERS), ...answersIn(fence('answers'))].length
    expect(GUIDE).toContain(`${all} short ones`)
  })

  it('are one short with the part, and 1 is what it asks', () => {
    expect(walk(typed(6)).state.closed).toBeNull()
    expect(walk(typed(6), [...answersIn(fence('answers')), '1']).state.closed).not.toBeNull()
  })
})
