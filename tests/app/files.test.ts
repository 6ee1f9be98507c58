// Attaching, as the shell does it: bytes on disk before the entry, and nothing held back meanwhile, least of all a STOP.
import { describe, expect, it } from 'vitest'
import type { FilesPort } from '../../src/app/ports.ts'
import type { KeptFile } from '../../src/core/job/attachment.ts'
import { ok, type Result, refuse } from '../../src/core/lib/result.ts'
import type { FoundFile } from '../../src/core/talk/ask-file.ts'
import { Walk } from '../helpers/example.ts'
import { memorySession } from '../helpers/fake-terminal.ts'
import { noFiles } from '../helpers/files.ts'

const FOUND: FoundFile = { path: '/p/wall.jpg', given: 'wall.jpg', size: 12, ageMs: 0, folder: '/p' }
const KEPT: KeptFile = { name: 'wall.jpg', given: 'wall.jpg', size: 12, sha256: 'ab'.repeat(32) }

/** A shell whose copies wait to be let through. */
function shell(walk = new Walk().toBore(), more: Partial<FilesPort> = {}) {
  const discarded: string[] = []
  const keeping: ((kept: Result<KeptFile>) => void)[] = []
  const files: FilesPort = {
    ...noFiles,
    find: async () => ok(FOUND),
    keep: () => new Promise((resolve) => keeping.push(resolve)),
    discard: async (name) => void discarded.push(name),
    ...more,
  }
  const { session, written } = memorySession(walk, false, files)
  const types = () => written.map((entry) => entry.type)
  const lastSaid = () => session.snapshot().shown.findLast((s) => s.kind === 'said')
  const until = async (holds: () => boolean) => expect.poll(holds).toBe(true)
  const named = async () => {
    await session.hear('attach p/wall.jpg')
    await session.settled()
    expect(session.snapshot().talk.ask?.kind).toBe('attach-caption')
  }
  return { session, written, types, lastSaid, discarded, keeping, until, named }
}

describe('an attachment', () => {
  it('is on record once its bytes are kept, and not before', async () => {
    const { session, written, keeping, named, until } = shell()
    await named()
    await session.hear('the score')
    await until(() => keeping.length === 1)
    expect(session.snapshot().talk.ask).toBeNull()
    expect(written).toEqual([])
    keeping[0]?.(ok(KEPT))
    await session.settled()
    expect(written).toMatchObject([{ type: 'file.attached', ...KEPT, caption: 'the score', by: 'RO' }])
  })

  it('holds back neither a STOP nor the clock, nor the next line, while it is copied', async () => {
    const { session, types, keeping, named, until } = shell()
    await named()
    await session.hear('the score')
    await until(() => keeping.length === 1)
    await session.tick()
    await session.hear('note still here')
    await session.hear('stop')
    expect(types()).toEqual(['note.written', 'stop.raised'])
    keeping[0]?.(ok(KEPT))
    await session.settled()
    expect(types()).toEqual(['note.written', 'stop.raised', 'file.attached'])
  })

  it('holds back no STOP while it is looked for, and what is found after that is dropped', async () => {
    let find = (_: Result<FoundFile>) => {}
    const { session, types } = shell(undefined, { find: () => new Promise((resolve) => (find = resolve)) })
    await session.hear('attach p/wall.jpg')
    await session.hear('never mind')
    expect(session.snapshot().talk.ask?.kind).toBe('attach-looking')
    await session.hear('stop')
    expect(types()).toEqual(['stop.raised'])
    find(ok(FOUND))
    await session.settled()
    expect(session.snapshot().talk.ask).toBeNull()
  })

  it('that cannot be kept is said, and leaves nothing on record', async () => {
    const { session, written, lastSaid, named, keeping, until } = shell()
    await named()
    await session.hear('the score')
    await until(() => keeping.length === 1)
    keeping[0]?.(refuse('file-disk', "'wall.jpg' could not be copied: the disk is full (ENOSPC)."))
    await session.settled()
    expect(written).toEqual([])
    expect(lastSaid()).toMatchObject({
      refusal: true,
      lines: ["'wall.jpg' could not be copied: the disk is full (ENOSPC). Nothing was attached."],
    })
    await session.hear('note goes on')
    expect(written).toHaveLength(1)
  })

  it('that is not found is asked for again', async () => {
    const { session } = shell(undefined, { find: async () => refuse('no-file', "There is no file 'x'.") })
    await session.hear('attach x')
    await session.settled()
    expect(session.snapshot().talk.ask).toEqual({ kind: 'attach-path' })
  })

  it('goes on record when the job was left meanwhile', async () => {
    const { session, types, keeping, named, until, discarded } = shell()
    await named()
    await session.hear('the score')
    await until(() => keeping.length === 1)
    await session.hear('leave')
    keeping[0]?.(ok(KEPT))
    await session.settled()
    expect(types()).toEqual(['job.left', 'file.attached'])
    expect(discarded).toEqual([])
  })

  it('is taken back from the disk when it did not go on record, as the job was closed meanwhile', async () => {
    const { session, types, keeping, named, until, discarded } = shell(new Walk().toVerdict())
    await named()
    await session.hear('the score')
    await until(() => keeping.length === 1)
    for (const line of ['1', 'KH', 'run it, none given', '8314', 'done']) await session.hear(line)
    expect(types().at(-1)).toBe('job.closed')
    keeping[0]?.(ok(KEPT))
    await session.settled()
    expect(types().at(-1)).toBe('job.closed')
    expect(discarded).toEqual(['wall.jpg'])
  })

  it('whose entry cannot be written ends the session at its next turn, and its copy stays', async () => {
    const { session, written, keeping, named, until, discarded } = shell()
    await named()
    await session.hear('the score')
    await until(() => keeping.length === 1)
    written.push = () => {
      throw new Error('full')
    }
    keeping[0]?.(ok(KEPT))
    await expect(session.settled()).rejects.toThrow('full')
    await expect(session.tick()).rejects.toThrow('full')
    expect(session.snapshot().state.files).toEqual([])
    expect(discarded).toEqual([])
  })
})
