// Copies of real files: whole or not at all, never over another, and refused in one sentence where they are no plain file.
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import * as promises from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type KeptFile, MOST_FILE_BYTES } from '../../src/core/job/attachment.ts'
import type { Result } from '../../src/core/lib/result.ts'
import { checkAttached } from '../../src/node/check-files.ts'
import { type CopyFs, filesFolderOf, jobFiles } from '../../src/node/job-files.ts'

let here = ''
let log = ''
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), 'barover-files-'))
  log = join(here, 'job.example.jsonl')
})
afterEach(() => rmSync(here, { recursive: true, force: true }))

const sha = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')
const kept = () => (existsSync(filesFolderOf(log)) ? readdirSync(filesFolderOf(log)).sort() : [])

function lay(name: string, bytes: string | Buffer = 'a picture'): string {
  mkdirSync(join(here, 'photos'), { recursive: true })
  const path = join(here, 'photos', name)
  writeFileSync(path, bytes)
  return path
}

async function attach(path: string, fs?: CopyFs): Promise<Result<KeptFile>> {
  const files = jobFiles(log, fs)
  const found = await files.find(path)
  return found.ok ? files.keep(found.value) : found
}

const codeOf = (result: Result<unknown>) => (result.ok ? 'ok' : result.error.code)

/** The real calls, with the handle of the copy, or of its source, changed. */
function withHandle(of: 'copy' | 'source', change: (handle: promises.FileHandle) => object): CopyFs {
  const open: CopyFs['open'] = async (path, flags, mode) => {
    const handle = await promises.open(path, flags, mode)
    const isMeant = of === 'copy' ? String(path).endsWith('.part') : typeof flags === 'number'
    if (!isMeant) return handle
    const changed = change(handle)
    return new Proxy(handle, {
      get: (target, key) => {
        const value = Reflect.get(changed, key) ?? Reflect.get(target, key)
        return typeof value === 'function' ? value.bind(target) : value
      },
    })
  }
  return { ...promises, open }
}

describe('a copy', () => {
  it('has the bytes, size and hash of the file, may be written by nobody, and leaves the file as it was', async () => {
    const bytes = Buffer.alloc(3_000_001, 7)
    const path = lay('wall.jpg', bytes)
    expect(await attach(path)).toEqual({
      ok: true,
      value: { name: 'wall.jpg', given: 'wall.jpg', size: bytes.length, sha256: sha(bytes) },
    })
    const copy = join(filesFolderOf(log), 'wall.jpg')
    expect(readFileSync(copy).equals(bytes)).toBe(true)
    expect(statSync(copy).mode & 0o333).toBe(0)
    expect(kept()).toEqual(['wall.jpg'])
    expect(readFileSync(path).equals(bytes)).toBe(true)
  })

  it('of a second file of one name gets a name of its own, and the first is not touched', async () => {
    const names: string[] = []
    for (const text of ['one', 'two', 'three']) {
      const done = await attach(lay('wall.jpg', text))
      if (done.ok) names.push(done.value.name)
    }
    expect(names).toEqual(['wall.jpg', 'wall-2.jpg', 'wall-3.jpg'])
    expect(names.map((name) => readFileSync(join(filesFolderOf(log), name), 'utf8'))).toEqual([
      'one',
      'two',
      'three',
    ])
  })

  it('never takes the place of what somebody else laid there', async () => {
    mkdirSync(filesFolderOf(log))
    writeFileSync(join(filesFolderOf(log), 'wall.jpg'), 'theirs')
    expect(await attach(lay('wall.jpg'))).toMatchObject({ value: { name: 'wall-2.jpg' } })
    expect(readFileSync(join(filesFolderOf(log), 'wall.jpg'), 'utf8')).toBe('theirs')
  })

  it.each([
    ['two\nlines.jpg', 'two_lines.jpg', 'two?lines.jpg'],
    ['gpj.\u202etxt', 'gpj._txt', 'gpj.?txt'],
    ['-rf', '_rf', '-rf'],
    ['back\\slash.jpg', 'back_slash.jpg', 'back?slash.jpg'],
    [`${'x'.repeat(250)}.jpg`, `${'x'.repeat(95)}.jpg`, `${'x'.repeat(250)}.jpg`],
    ['"quoted" $(x).jpg', '_quoted_ __x_.jpg', '"quoted" $(x).jpg'],
  ])('of %j has a plain name', async (name, keptAs, given) => {
    const done = await attach(lay(name))
    if (!done.ok) throw new Error(done.error.say)
    expect(done.value.given).toBe(given)
    expect(done.value.name).toBe(keptAs)
    expect(kept()).toEqual([done.value.name])
  })

  it('stays inside the folder of the job, whatever its path says', async () => {
    lay('wall.jpg')
    expect(await attach(join(here, 'photos', '..', 'photos', 'wall.jpg'))).toMatchObject({
      value: { name: 'wall.jpg' },
    })
    expect(kept()).toEqual(['wall.jpg'])
  })
})

describe('refused in one sentence, with nothing left behind, is', () => {
  const pipe = () => {
    const path = join(here, 'pipe')
    execFileSync('mkfifo', [path])
    return path
  }
  const link = () => {
    const path = join(here, 'link.jpg')
    symlinkSync(lay('wall.jpg'), path)
    return path
  }
  const large = () => {
    const path = lay('film.mp4')
    truncateSync(path, MOST_FILE_BYTES + 1)
    return path
  }
  it.each<[string, string, () => string]>([
    ['nothing of that name', 'no-file', () => join(here, 'none.jpg')],
    ['a path through a file', 'no-file', () => join(lay('wall.jpg'), 'x')],
    ['a name of 300 characters', 'file-unread', () => join(here, 'x'.repeat(300))],
    ['a name with a zero byte', 'no-file', () => `${here}/a\0b`],
    ['a folder', 'file-folder', () => here],
    ['a link', 'file-link', link],
    ['a pipe', 'file-kind', pipe],
    ['a device', 'file-kind', () => '/dev/null'],
    ['an empty file', 'file-empty', () => lay('empty.jpg', '')],
    ['one too large', 'file-large', large],
  ])('%s', async (_, code, path) => {
    const result = await attach(path())
    expect(codeOf(result)).toBe(code)
    if (!result.ok) expect(result.error.say).toMatch(/^['\w][^\n]*\.$/)
    expect(kept()).toEqual([])
  })

  it('what became a link, a folder or nothing between the look and the copy', async () => {
    for (const [put, code] of [
      [(path: string) => symlinkSync('/etc/hostname', path), 'file-link'],
      [(path: string) => mkdirSync(path), 'file-folder'],
      [() => undefined, 'file-gone'],
    ] as const) {
      const files = jobFiles(log)
      const path = lay('wall.jpg')
      const found = await files.find(path)
      rmSync(path)
      put(path)
      expect(found.ok && codeOf(await files.keep(found.value))).toBe(code)
      rmSync(path, { recursive: true, force: true })
      expect(kept()).toEqual([])
    }
  })

  it('one that nobody may read', async () => {
    const path = lay('secret.jpg')
    chmodSync(path, 0)
    // The superuser reads everything.
    if (process.getuid?.() === 0) return expect(codeOf(await attach(path))).toBe('ok')
    expect(codeOf(await attach(path))).toBe('file-unread')
  })

  it('one that grows while it is copied', async () => {
    const path = lay('wall.jpg', Buffer.alloc(2_500_000, 1))
    let reads = 0
    const growing = withHandle('source', (handle) => ({
      read: (...args: Parameters<promises.FileHandle['read']>) => {
        if (++reads === 2) appendFileSync(path, 'more')
        return handle.read(...args)
      },
    }))
    expect(codeOf(await attach(path, growing))).toBe('file-changing')
    expect(reads).toBeGreaterThan(2)
    expect(kept()).toEqual([])
  })

  it('one that is written over while it is copied, though its size stays', async () => {
    const path = lay('wall.jpg', Buffer.alloc(2_500_000, 1))
    let reads = 0
    const changing = withHandle('source', (handle) => ({
      read: (...args: Parameters<promises.FileHandle['read']>) => {
        if (++reads === 2) utimesSync(path, new Date(), new Date(Date.now() + 60_000))
        return handle.read(...args)
      },
    }))
    expect(codeOf(await attach(path, changing))).toBe('file-changing')
    expect(kept()).toEqual([])
  })

  it('one that never ends: no more is read than one byte past the largest', async () => {
    const path = lay('wall.jpg')
    let read = 0
    const endless = withHandle('source', () => ({
      read: async (_: Buffer, __: number, length: number) => {
        read += length
        return { bytesRead: length }
      },
    }))
    expect(codeOf(await attach(path, endless))).toBe('file-changing')
    expect(read).toBe(MOST_FILE_BYTES + 1)
    expect(kept()).toEqual([])
  })

  it.each(['write', 'sync'] as const)('one for which the disk fails at the %s', async (call) => {
    const full = withHandle('copy', () => ({
      [call]: async () => {
        throw Object.assign(new Error('no room'), { code: 'ENOSPC' })
      },
    }))
    const result = await attach(lay('wall.jpg'), full)
    expect(result).toMatchObject({
      ok: false,
      error: { code: 'file-disk', say: "'wall.jpg' could not be copied: the disk is full (ENOSPC)." },
    })
    expect(kept()).toEqual([])
  })

  it('one whose name cannot be given: the empty file that held the name goes too', async () => {
    const fs: CopyFs = {
      ...promises,
      rename: async () => {
        throw Object.assign(new Error('no'), { code: 'EIO' })
      },
    }
    expect(codeOf(await attach(lay('wall.jpg'), fs))).toBe('file-disk')
    expect(kept()).toEqual([])
  })

  it('a write that moves nothing, instead of never ending', async () => {
    const stuck = withHandle('copy', () => ({ write: async () => ({ bytesWritten: 0 }) }))
    expect(codeOf(await attach(lay('wall.jpg'), stuck))).toBe('file-disk')
  })
})

it('a disk that writes short still gets every byte', async () => {
  const bytes = Buffer.from(Array.from({ length: 5000 }, (_, i) => i % 251))
  const short = withHandle('copy', (handle) => ({
    write: (piece: Buffer, from: number, length: number) => handle.write(piece, from, Math.min(97, length)),
  }))
  expect(await attach(lay('wall.jpg', bytes), short)).toMatchObject({ value: { sha256: sha(bytes) } })
  expect(readFileSync(join(filesFolderOf(log), 'wall.jpg')).equals(bytes)).toBe(true)
})

describe('the newest', () => {
  it('is the one written last in the folder named last, of those that can be attached', async () => {
    const files = jobFiles(log)
    expect(codeOf(await files.newest())).toBe('no-folder')
    const old = lay('old.jpg')
    const older = lay('older.jpg')
    lay('empty.jpg', '')
    lay('.hidden.jpg')
    mkdirSync(join(here, 'photos', 'folder'))
    symlinkSync(old, join(here, 'photos', 'link.jpg'))
    utimesSync(old, 1000, Date.now() / 1000 - 120)
    utimesSync(older, 1000, Date.now() / 1000 - 4000)
    expect(codeOf(await files.find(join(here, 'photos')))).toBe('file-folder')
    const found = await files.newest()
    expect(found).toMatchObject({ value: { given: 'old.jpg', folder: join(here, 'photos') } })
    if (found.ok) expect(Math.round(found.value.ageMs / 60_000)).toBe(2)
  })

  it('of a folder without any is refused', async () => {
    const files = jobFiles(log)
    mkdirSync(join(here, 'bare'))
    await files.find(join(here, 'bare'))
    expect(codeOf(await files.newest())).toBe('no-newest')
    rmSync(join(here, 'bare'), { recursive: true })
    expect(codeOf(await files.newest())).toBe('file-unread')
  })
})

describe('a path being keyed', () => {
  const complete = (typed: string) => jobFiles(log).complete(typed)

  it('is completed as far as all that fit agree', async () => {
    lay('wall-1.jpg')
    lay('wall-2.jpg')
    lay('ring.jpg')
    lay('.hidden')
    const p = join(here, 'photos')
    expect(await complete(`${p}/w`)).toEqual({ text: `${p}/wall-`, fits: ['wall-1.jpg', 'wall-2.jpg'] })
    expect(await complete(`${p}/r`)).toEqual({ text: `${p}/ring.jpg`, fits: ['ring.jpg'] })
    expect(await complete(`${p}/x`)).toEqual({ text: `${p}/x`, fits: [] })
    expect(await complete(`${here}/pho`)).toEqual({
      text: `${p}/`,
      fits: ['ring.jpg', 'wall-1.jpg', 'wall-2.jpg'],
    })
    expect(await complete(`${p}/.h`)).toEqual({ text: `${p}/.hidden`, fits: ['.hidden'] })
    expect(await complete('/no/such/folder/x')).toEqual({ text: '/no/such/folder/x', fits: [] })
  })

  it('is never completed to what cannot be seen, and tells a few of many', async () => {
    lay('a\u202eb.jpg')
    expect((await complete(join(here, 'photos', 'a'))).fits).toEqual([])
    for (let i = 0; i < 9; i++) lay(`m${i}.jpg`)
    expect((await complete(join(here, 'photos', 'm'))).fits.at(-1)).toBe('and 3 more')
  })

  it('takes a path as a terminal hands it over when a file is dropped on it', async () => {
    lay('my wall.jpg')
    const path = join(here, 'photos', 'my wall.jpg')
    for (const typed of [`'${path}'`, `"${path}"`, path.replace(' ', '\\ '), ` ${path} `])
      expect(await jobFiles(log).find(typed)).toMatchObject({ ok: true, value: { given: 'my wall.jpg' } })
  })
})

describe('what lies with a log', () => {
  it('is held against it: as attached, changed, gone, and what it does not name', async () => {
    const list = []
    for (const name of ['a.jpg', 'b.jpg', 'c.jpg', 'd.jpg', 'e.jpg']) {
      const done = await attach(lay(name, name.repeat(20)))
      if (!done.ok) throw new Error(done.error.say)
      list.push({ ...done.value, seq: list.length + 1, at: '', by: 'RO', step: null, caption: 'x' })
    }
    const at = (name: string) => join(filesFolderOf(log), name)
    expect(checkAttached(log, list).files.map((f) => f.state)).toEqual(Array(5).fill('as-attached'))
    for (const name of ['b.jpg', 'c.jpg', 'd.jpg', 'e.jpg']) rmSync(at(name), { force: true })
    writeFileSync(at('b.jpg'), 'B.jpg'.repeat(20))
    writeFileSync(at('c.jpg'), 'short')
    symlinkSync(join(here, 'photos', 'e.jpg'), at('e.jpg'))
    writeFileSync(at('0f.part'), 'half')
    writeFileSync(at('theirs.jpg'), 'x')
    const found = checkAttached(log, list)
    expect(found.files.map((f) => [f.name, f.state])).toEqual([
      ['a.jpg', 'as-attached'],
      ['b.jpg', 'changed'],
      ['c.jpg', 'changed'],
      ['d.jpg', 'gone'],
      ['e.jpg', 'changed'],
    ])
    expect(found.strays).toEqual([
      expect.stringMatching(/^0f\.part: a copy that was not finished/),
      expect.stringMatching(/^theirs\.jpg: not in the log/),
    ])
  })

  it('is nothing where nothing was attached', () => {
    expect(checkAttached(log, [])).toEqual({ files: [], strays: [] })
  })
})
