// Not a test: a small program that attach-kill.test.ts bundles and runs, so that a real process can be killed.
// copying <log> <file>  copies for ever, piece by piece, and says "copying" once the first piece is written
// kept <log> <file>     copies, says "kept", and writes no entry
// logged <log> <file>   copies, writes the entry, says "logged", and shows nothing
import { writeSync } from 'node:fs'
import * as promises from 'node:fs/promises'
import { setTimeout as wait } from 'node:timers/promises'
import { type CopyFs, jobFiles } from '../../src/node/job-files.ts'
import { openJob } from '../../src/node/job-store.ts'

const [mode, log = '', file = ''] = process.argv.slice(2)

const say = (text: string) => void writeSync(1, `${text}\n`)

/** A disk that takes a few bytes at a time, and its time over each. */
const slow: CopyFs = {
  ...promises,
  open: async (path, flags, how) => {
    const handle = await promises.open(path, flags, how)
    if (!String(path).endsWith('.part')) return handle
    const write = async (piece: Buffer, from: number) => {
      const written = await handle.write(piece, from, 100)
      say('copying')
      await wait(20)
      return written
    }
    return new Proxy(handle, {
      get: (target, key) => {
        const value = key === 'write' ? write : Reflect.get(target, key)
        return typeof value === 'function' ? value.bind(target) : value
      },
    })
  },
}

async function run(): Promise<void> {
  const opened = openJob(log)
  const files = jobFiles(log, mode === 'copying' ? slow : promises)
  const found = await files.find(file)
  if (!found.ok) throw new Error(found.error.say)
  const kept = await files.keep(found.value)
  if (!kept.ok) throw new Error(kept.error.say)
  if (mode === 'logged') {
    const last = opened.entries[opened.entries.length - 1]
    if (last === undefined) throw new Error('an empty log')
    const entry = { type: 'file.attached', step: null, ...kept.value, caption: 'the wall' } as const
    await opened.port.append([{ ...entry, seq: last.seq + 1, at: last.at, by: 'RO' }])
  }
  say(mode === 'logged' ? 'logged' : 'kept')
  process.stdin.resume()
}

await run()
