import {
  appendFileSync,
  mkdirSync,
  readdirSync,
  renameSync,
  symlinkSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { GENESIS, lineHash } from '../../../src/node/journal/chain.ts'
import { nodeFs } from '../../../src/node/journal/fs-port.ts'
import { createJournal, openJournal, readJournal } from '../../../src/node/journal/journal-file.ts'
import { verify } from '../../../src/node/journal/verify.ts'
import {
  AT,
  bytesOf,
  headOf,
  linesOf,
  problemOf,
  reading,
  systemWith,
  tempFolders,
  textOf,
} from './fixtures.ts'

const folder = tempFolders()
const LINES = linesOf([1, 2, 3].map((value) => reading(value, 'Ø')))

function place(content?: string | Buffer): string {
  const path = join(folder(), 'job.jsonl')
  if (content !== undefined) writeFileSync(path, content)
  return path
}

describe('making a journal', () => {
  it('puts the first entry on disk and keeps it open for more', async () => {
    const path = place()
    const { journal, entries, torn } = createJournal(path, reading(1), AT)
    expect(torn).toBeNull()
    expect(entries).toMatchObject([{ seq: 0, prev: GENESIS, at: AT, type: 'reading.recorded', value: 1 }])
    expect(textOf(path)).toBe(`${linesOf([reading(1)])[0]}\n`)
    await journal.append([{ entry: reading(2), at: AT }])
    journal.close()
    expect(textOf(path)).toBe(bytesOf(linesOf([reading(1), reading(2)])).toString())
    expect(readdirSync(join(path, '..'))).toEqual(['job.jsonl'])
  })

  it('never writes over a file, whatever is in it', async () => {
    const path = place('anything')
    expect((await problemOf(() => createJournal(path, reading(1), AT))).code).toBe('exists')
    expect(textOf(path)).toBe('anything')
    const hidden = systemWith({ statSync: () => throwMissing() })
    // Also when the file appears after the first look.
    expect((await problemOf(() => createJournal(path, reading(1), AT, hidden))).code).toBe('exists')
    expect(textOf(path)).toBe('anything')
    expect(readdirSync(join(path, '..'))).toEqual(['job.jsonl'])
  })

  it('says when the folder is not there', async () => {
    const problem = await problemOf(() => createJournal(join(folder(), 'no', 'job.jsonl'), reading(1), AT))
    expect(problem).toMatchObject({ code: 'disk', message: expect.stringContaining('ENOENT') })
  })

  it('leaves nothing behind for an entry that is a bug', () => {
    const path = place()
    expect(() => createJournal(path, reading(Number.NaN), AT)).toThrow('NaN')
    expect(readdirSync(join(path, '..'))).toEqual([])
  })
})

describe('opening a journal', () => {
  it('gives the entries and goes on from the last', async () => {
    const path = place(bytesOf(LINES))
    const { journal, entries, torn } = openJournal(path)
    expect(torn).toBeNull()
    expect(entries.map((entry) => entry.value)).toEqual([1, 2, 3])
    expect(journal).toMatchObject({ count: 3, head: headOf(LINES) })
    const added = await journal.append([4, 5].map((value) => ({ entry: reading(value, 'Ø'), at: AT })))
    expect(added.map((entry) => [entry.seq, entry.value])).toEqual([
      [3, 4],
      [4, 5],
    ])
    journal.close()
    const after = readJournal(path)
    expect(after.bytes).toEqual(bytesOf(linesOf([1, 2, 3, 4, 5].map((value) => reading(value, 'Ø')))))
    expect(after.head).toBe(journal.head)
    expect(verify(after.bytes, journal.head).whole.state).toBe('checked')
  })

  it('hands back what is on disk, not what was handed in', async () => {
    const { journal } = openJournal(place(bytesOf(LINES)))
    const [stored] = await journal.append([{ entry: reading(-0), at: AT }])
    expect(Object.is(stored?.value, 0)).toBe(true)
  })

  it('refuses a missing file and a folder', async () => {
    const path = place()
    expect((await problemOf(() => openJournal(path))).code).toBe('missing')
    expect((await problemOf(() => readJournal(path))).code).toBe('missing')
    mkdirSync(path)
    expect((await problemOf(() => openJournal(path))).code).toBe('missing')
    expect(readdirSync(join(path, '..'))).toEqual(['job.jsonl'])
  })

  it('refuses a fault with its line, changes nothing and gives the lock back', async () => {
    const content = Buffer.concat([bytesOf(LINES.toSpliced(1, 1)), Buffer.from('{"torn')])
    const path = place(content)
    for (let again = 0; again < 2; again++) {
      const problem = await problemOf(() => openJournal(path))
      expect(problem).toMatchObject({ code: 'fault', line: 2 })
      expect(problem.message).toMatch(/is not as it was written: line 2 was written as line 3.*\.$/)
    }
    expect(readJournal(path)).toMatchObject({ bytes: content, fault: { line: 2 }, torn: { bytes: 6 } })
    expect(readdirSync(join(path, '..'))).toEqual(['job.jsonl'])
  })

  it.each(['', '{"seq":0,"pr'])(
    'refuses a file without a complete entry and leaves it as it is: "%s"',
    async (text) => {
      const path = place(text)
      const problem = await problemOf(() => openJournal(path))
      expect(problem).toMatchObject({
        code: 'fault',
        line: 1,
        message: expect.stringContaining('no complete entry'),
      })
      expect(textOf(path)).toBe(text)
    },
  )

  it('lets one writer in at a time, also under another name for the file', async () => {
    const path = place(bytesOf(LINES))
    const alias = join(folder(), 'alias.jsonl')
    symlinkSync(path, alias)
    const { journal } = openJournal(path)
    expect((await problemOf(() => openJournal(path))).code).toBe('locked')
    expect((await problemOf(() => openJournal(alias))).code).toBe('locked')
    expect(readJournal(path).lines.length).toBe(3)
    journal.close()
    journal.close()
    openJournal(alias).journal.close()
  })
})

describe('a torn tail', () => {
  const piece = Buffer.from(LINES[2] ?? '').subarray(0, -9)
  const half = Buffer.from(LINES[2] ?? '').subarray(0, Buffer.from(LINES[2] ?? '').indexOf('Ø') + 1)
  const sound = bytesOf(LINES.slice(0, 2))

  it.each([
    ['cut in the middle', piece],
    ['cut inside a letter', half],
    ['without only its newline', Buffer.from(LINES[2] ?? '')],
  ])('%s is set aside byte for byte, reported, and nothing else is lost', async (_name, tail) => {
    const path = place(Buffer.concat([sound, tail]))
    const { journal, entries, torn } = openJournal(path)
    expect(entries.length).toBe(2)
    expect(torn).toMatchObject({
      bytes: tail.length,
      text: tail.toString('utf8'),
      savedTo: `${journal.path}.torn`,
    })
    expect(nodeFs.readFileSync(`${path}.torn`)).toEqual(Buffer.concat([tail, Buffer.from('\n')]))
    expect(nodeFs.readFileSync(path)).toEqual(sound)
    await journal.append([{ entry: reading(3, 'Ø'), at: AT }])
    journal.close()
    expect(nodeFs.readFileSync(path)).toEqual(bytesOf(LINES))
    expect(openJournal(path).torn).toBeNull()
  })

  it('is added below the ones set aside before', () => {
    const path = place(Buffer.concat([sound, Buffer.from('{"one')]))
    openJournal(path).journal.close()
    appendFileSync(path, '{"two')
    openJournal(path).journal.close()
    expect(textOf(`${path}.torn`)).toBe('{"one\n{"two\n')
  })

  it('is on disk beside the file before the file is cut', () => {
    const path = place(Buffer.concat([sound, piece]))
    const seen: string[] = []
    const system = systemWith({
      ftruncateSync: (fd, length) => {
        seen.push(textOf(`${path}.torn`), String(synced))
        nodeFs.ftruncateSync(fd, length)
      },
      fsyncSync: (fd) => {
        synced++
        nodeFs.fsyncSync(fd)
      },
    })
    let synced = 0
    openJournal(path, system)
    // Lock, copy, and on systems with folders to sync the folder.
    expect(seen).toEqual([`${piece}\n`, process.platform === 'win32' ? '2' : '3'])
  })

  it('is not cut when the file grows while it is being opened', async () => {
    const path = place(Buffer.concat([sound, piece]))
    const readFileSync = (from: string | number) => {
      const bytes = nodeFs.readFileSync(from)
      if (typeof from === 'number') appendFileSync(path, 'more')
      return bytes
    }
    expect((await problemOf(() => openJournal(path, systemWith({ readFileSync })))).code).toBe('locked')
    expect(nodeFs.readFileSync(path)).toEqual(Buffer.concat([sound, piece, Buffer.from('more')]))
  })

  it('is only reported when reading without a lock', () => {
    const content = Buffer.concat([sound, piece])
    const path = place(content)
    expect(readJournal(path)).toMatchObject({ torn: { bytes: piece.length }, fault: null })
    expect(readdirSync(join(path, '..'))).toEqual(['job.jsonl'])
    expect(nodeFs.readFileSync(path)).toEqual(content)
  })
})

describe('a writer whose file was touched', () => {
  it.each([
    ['added to', 'fault', (path: string) => appendFileSync(path, 'x')],
    ['cut', 'fault', (path: string) => truncateSync(path, 10)],
    ['removed', 'fault', (path: string) => unlinkSync(path)],
    ['renamed', 'fault', (path: string) => renameSync(path, `${path}.old`)],
    ['replaced by an equal copy', 'fault', replaceByCopy],
    ['robbed of its lock', 'locked', (path: string) => unlinkSync(`${path}.lock`)],
  ] as const)('%s: refuses, writes nothing and stays dead', async (_name, code, touch) => {
    const path = place(bytesOf(LINES))
    const { journal } = openJournal(path)
    touch(path)
    const before = readdirSync(join(path, '..')).map((name) => textOf(join(path, '..', name)))
    const problem = await problemOf(() => journal.append([{ entry: reading(4), at: AT }]))
    expect(problem.code).toBe(code)
    expect(problem.message).toContain('Nothing was saved')
    expect((await problemOf(() => journal.append([{ entry: reading(4), at: AT }]))).code).toBe('dead')
    expect(readdirSync(join(path, '..')).map((name) => textOf(join(path, '..', name)))).toEqual(before)
    expect(journal).toMatchObject({ count: 3, head: headOf(LINES) })
  })

  it('rejects after close', async () => {
    const { journal } = openJournal(place(bytesOf(LINES)))
    journal.close()
    const problem = await problemOf(() => journal.append([{ entry: reading(4), at: AT }]))
    expect(problem).toMatchObject({ code: 'dead', message: expect.stringContaining('it was closed') })
  })

  it('lives on after an entry that was a bug, with nothing written of the whole batch', async () => {
    const path = place(bytesOf(LINES))
    const { journal } = openJournal(path)
    const batch = [reading(4, 'Ø'), reading(Number.NaN)].map((entry) => ({ entry, at: AT }))
    await expect(journal.append(batch)).rejects.toThrow('NaN')
    expect(nodeFs.readFileSync(path)).toEqual(bytesOf(LINES))
    const [stored] = await journal.append([{ entry: reading(4, 'Ø'), at: AT }])
    expect(stored).toMatchObject({ seq: 3, prev: lineHash(LINES[2] ?? '') })
    expect(await journal.append([])).toEqual([])
  })
})

function replaceByCopy(path: string): void {
  const content = nodeFs.readFileSync(path)
  renameSync(path, `${path}.old`)
  writeFileSync(path, content)
}

function throwMissing(): never {
  throw Object.assign(new Error('ENOENT'), { code: 'ENOENT' })
}
