// A disk that is full, writes short or cannot sync, made by replacing single file calls.
import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type JournalFs, nodeFs } from '../../../src/node/journal/fs-port.ts'
import {
  createJournal,
  type JournalSystem,
  openJournal,
  readJournal,
} from '../../../src/node/journal/journal-file.ts'
import {
  AT,
  bytesOf,
  headOf,
  linesOf,
  problemOf,
  reading,
  systemError,
  systemWith,
  tempFolders,
} from './fixtures.ts'

const folder = tempFolders()
const LINES = linesOf([reading(1), reading(2)])
const MORE = [reading(3), reading(4)].map((entry) => ({ entry, at: AT }))

/** An open journal whose file calls fail only once `fail` is filled in. */
function openWith(): {
  path: string
  fail: Partial<JournalFs>
  journal: ReturnType<typeof openJournal>['journal']
} {
  const path = join(folder(), 'job.jsonl')
  writeFileSync(path, bytesOf(LINES))
  const system = systemWith({})
  const { journal } = openJournal(path, system)
  return { path, fail: system.port, journal }
}

/** Writes at most `most` bytes a call and gives up with `code` after `calls` calls. */
function shortWrites(
  most: number,
  calls = Number.POSITIVE_INFINITY,
  code = 'ENOSPC',
): JournalFs['writeSync'] {
  let made = 0
  return (fd, data, offset, length) => {
    if (made++ >= calls) throw systemError(code)
    return nodeFs.writeSync(fd, data, offset, Math.min(length, most))
  }
}

/** Ends with another error, so that a writer which tries for ever fails the test instead of hanging it. */
function movesNothing(): JournalFs['writeSync'] {
  let made = 0
  return () => {
    if (made++ > 3) throw systemError('ELOOP')
    return 0
  }
}

describe('writing', () => {
  it('goes on after short writes until all is there', async () => {
    const { path, fail, journal } = openWith()
    fail.writeSync = shortWrites(7)
    await journal.append(MORE)
    expect(readJournal(path).bytes).toEqual(bytesOf(linesOf([1, 2, 3, 4].map((value) => reading(value)))))
  })

  it('is one write and then one sync of data, before it resolves', async () => {
    const { fail, journal } = openWith()
    const calls: string[] = []
    fail.writeSync = (fd, data, offset, length) => {
      calls.push(`write ${data.length === length}`)
      return nodeFs.writeSync(fd, data, offset, length)
    }
    fail.fdatasyncSync = (fd) => {
      calls.push('sync')
      nodeFs.fdatasyncSync(fd)
    }
    await journal.append(MORE).then(() => calls.push('resolved'))
    expect(calls).toEqual(['write true', 'sync', 'resolved'])
  })

  it.each([
    ['at once', shortWrites(7, 0), 'the disk is full (ENOSPC)'],
    ['half way', shortWrites(40, 3), 'the disk is full (ENOSPC)'],
    [
      'after a whole line',
      shortWrites((linesOf([reading(1), reading(2), reading(3)])[2] ?? '').length + 1, 1),
      'ENOSPC',
    ],
    ['by a disk error', shortWrites(40, 1, 'EIO'), 'the disk reported an error (EIO)'],
    ['by moving nothing', movesNothing(), 'EIO'],
  ])('that fails %s is cut back, and the journal is dead', async (_name, writeSync, says) => {
    const { path, fail, journal } = openWith()
    fail.writeSync = writeSync
    const problem = await problemOf(() => journal.append(MORE))
    expect(problem).toMatchObject({ code: 'disk', message: expect.stringContaining(says) })
    expect(problem.message).toContain('the file was cut back to the last saved entry')
    expect(readJournal(path).bytes).toEqual(bytesOf(LINES))
    fail.writeSync = nodeFs.writeSync
    expect((await problemOf(() => journal.append(MORE))).code).toBe('dead')
    expect(readJournal(path).bytes).toEqual(bytesOf(LINES))
    expect(journal).toMatchObject({ count: 2, head: headOf(LINES) })
  })

  it('says so when it could not be cut back; opening again sets the rest aside', async () => {
    const { path, fail, journal } = openWith()
    fail.writeSync = shortWrites(40, 1)
    fail.ftruncateSync = () => {
      throw systemError('EIO')
    }
    const problem = await problemOf(() => journal.append(MORE))
    expect(problem.message).toContain('could not be cut back')
    journal.close()
    const again = openJournal(path)
    expect(again.torn?.bytes).toBe(40)
    expect(again.entries.length).toBe(2)
  })

  it("never cuts off somebody else's bytes", async () => {
    const { path, fail, journal } = openWith()
    fail.writeSync = (fd, data, offset, length) => {
      if (offset > 0) {
        writeFileSync(path, 'foreign', { flag: 'a' })
        throw systemError('EIO')
      }
      return nodeFs.writeSync(fd, data, offset, Math.min(length, 40))
    }
    expect((await problemOf(() => journal.append(MORE))).message).toContain('could not be cut back')
    expect(readJournal(path).torn?.text).toMatch(/foreign$/)
  })

  it('notices another writer at the very same moment', async () => {
    const { path, fail, journal } = openWith()
    fail.writeSync = (fd, data, offset, length) => {
      writeFileSync(path, 'foreign\n', { flag: 'a' })
      return nodeFs.writeSync(fd, data, offset, length)
    }
    expect(await problemOf(() => journal.append(MORE))).toMatchObject({ code: 'fault' })
    // Appended, not written over: the foreign bytes are still there to be found.
    expect(readJournal(path).fault?.line).toBe(3)
  })
})

describe('a sync that fails', () => {
  it('is not an acknowledgement and is never tried again', async () => {
    const { path, fail, journal } = openWith()
    let syncs = 0
    fail.fdatasyncSync = () => {
      syncs++
      throw systemError('EIO')
    }
    const problem = await problemOf(() => journal.append(MORE))
    expect(problem).toMatchObject({ code: 'disk', message: expect.stringContaining('cut back') })
    fail.fdatasyncSync = nodeFs.fdatasyncSync
    expect((await problemOf(() => journal.append(MORE))).code).toBe('dead')
    expect(syncs).toBe(1)
    expect(journal.count).toBe(2)
    expect(readJournal(path).bytes).toEqual(bytesOf(LINES))
  })

  it('is asked of the journal on every opening: a killed writer may have left lines in memory only', () => {
    const { path, journal } = openWith()
    journal.close()
    const synced: number[] = []
    const fsyncSync = (fd: number) => {
      synced.push(nodeFs.fstatSync(fd).ino)
      nodeFs.fsyncSync(fd)
    }
    openJournal(path, systemWith({ fsyncSync }))
    expect(synced).toContain(nodeFs.statSync(path).ino)
  })

  it('refuses opening, as entries shown must be on disk', async () => {
    const { path, journal } = openWith()
    journal.close()
    const system = systemWith({ fsyncSync: failAfter(1) })
    expect((await problemOf(() => openJournal(path, system))).code).toBe('disk')
    openJournal(path).journal.close()
  })
})

describe('making a journal on a bad disk', () => {
  const noSpace = () => {
    throw systemError('ENOSPC')
  }
  const cases: [string, JournalSystem][] = [
    ['full for the lock', systemWith({ writeSync: noSpace })],
    ['full for the entry', systemWith({ writeSync: writeFailingAfter(1) })],
    ['that cannot sync the entry', systemWith({ fdatasyncSync: noSpace })],
    ['that cannot sync the file', systemWith({ fsyncSync: failAfter(1) })],
    ['that cannot sync the folder', systemWith({ fsyncSync: failAfter(2) })],
  ]
  it.each(cases)('%s leaves neither file nor lock', async (_name, system) => {
    const path = join(folder(), 'job.jsonl')
    const problem = await problemOf(() => createJournal(path, reading(1), AT, system))
    expect(problem).toMatchObject({ code: 'disk', message: expect.stringMatching(/^Making .*(ENOSPC|EIO)/) })
    expect(readdirSync(join(path, '..'))).toEqual([])
    createJournal(path, reading(1), AT).journal.close()
  })
})

/** A folder-and-file sync that works `calls` times and then fails for good. */
function failAfter(calls: number): JournalFs['fsyncSync'] {
  let made = 0
  return (fd) => {
    if (made++ >= calls) throw systemError('EIO')
    nodeFs.fsyncSync(fd)
  }
}

function writeFailingAfter(calls: number): JournalFs['writeSync'] {
  let made = 0
  return (fd, data, offset, length) => {
    if (made++ >= calls) throw systemError('ENOSPC')
    return nodeFs.writeSync(fd, data, offset, length)
  }
}
