// A terminal in memory for the renderer: what it writes lands on a screen, and keys can be sent to it.
import { PassThrough, Writable } from 'node:stream'
import type { FilesPort, VoicePort } from '../../src/app/ports.ts'
import type { Session, Shown } from '../../src/app/session.ts'
import { createSession } from '../../src/app/session.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import type { Terminal } from '../../src/ui/show.tsx'
import { pinOf, type Walk } from './example.ts'
import { noFiles } from './files.ts'
import { Screen, type Size } from './screen.ts'
import { noVoice } from './voice.ts'

export interface FakeTerminal extends Terminal {
  readonly screen: Screen
  readonly send: (keys: string) => void
  readonly resize: (size: Size) => void
}

export function fakeTerminal(size: Size): FakeTerminal {
  const screen = new Screen(size)
  const stdout = new Writable({
    decodeStrings: false,
    write: (chunk: string | Buffer, _encoding, done) => {
      // A real terminal turns a line feed into a new line; a bare one would only move down.
      screen.write(String(chunk).replace(/\r?\n/g, '\r\n'))
      done()
    },
  })
  const shape = (at: Size) => ({ isTTY: true, columns: at.cols, rows: at.rows })
  const stdin = Object.assign(new PassThrough(), {
    isTTY: true,
    setRawMode: () => undefined,
    ref: () => undefined,
    unref: () => undefined,
  })
  return {
    screen,
    stdout: Object.assign(stdout, shape(size)) as unknown as NodeJS.WriteStream,
    stdin: stdin as unknown as NodeJS.ReadStream,
    send: (keys) => void stdin.write(keys),
    resize: (at) => {
      screen.resize(at)
      Object.assign(stdout, shape(at))
      stdout.emit('resize')
    },
  }
}

export interface MemorySession {
  readonly session: Session
  readonly written: Entry[]
  /** Held back: entries are not on disk until it is called. */
  readonly letThrough: () => void
}

/** A session that goes on from where a walk stands. With `slow`, the disk and the check of a PIN wait to be let through. */
export function memorySession(
  walk: Walk,
  slow = false,
  files: FilesPort = noFiles,
  voice: VoicePort = noVoice,
  /** What is on the sheet when it begins. */
  shown: readonly Shown[] = [],
): MemorySession {
  const written: Entry[] = []
  let waiting: (() => void)[] = []
  const held = async () => {
    if (slow) await new Promise<void>((resolve) => waiting.push(resolve))
  }
  const session = createSession({
    engine: walk.engine,
    state: walk.state,
    shown,
    journal: {
      append: async (entries) => {
        await held()
        written.push(...entries)
      },
    },
    clock: { now: () => walk.now, running: () => walk.now.ms },
    others: { look: walk.others },
    files,
    voice,
    pins: {
      fits: async (pin, key) => {
        await held()
        return pin === pinOf(walk.engine.defs.crew.crew.find((p) => p.pin === key)?.id ?? '')
      },
    },
  })
  return {
    session,
    written,
    letThrough: () => {
      for (const go of waiting) go()
      waiting = []
    },
  }
}
