// The computer's own speech program, if it has one. Words go to it on its input, or as one argument behind the mark that ends the
// options; no shell is ever between. Nothing waits for it, and nothing of it is left running.
import { type ChildProcess, spawn } from 'node:child_process'
import { accessSync, constants, statSync } from 'node:fs'
import { delimiter, isAbsolute, join } from 'node:path'
import process from 'node:process'
import type { Writable } from 'node:stream'
import type { VoicePort } from '../app/ports.ts'

interface SpeechProgram {
  readonly file: string
  /** As people know it. */
  readonly name: string
  readonly args: (words: string) => readonly string[]
  /** The words go to its input; else they are among the arguments. */
  readonly takesInput: boolean
  /** Of one that hands the words on to a service: what tells that to cut them off. */
  readonly cancel: readonly string[]
}

interface Found {
  readonly program: SpeechProgram
  readonly file: string
}

/** Options as their manuals have them (spd-say 0.12, espeak-ng 1.51, say of macOS 14): from memory but for spd-say. */
const SPD_SAY: SpeechProgram = {
  file: 'spd-say',
  name: 'spd-say',
  args: (words) => ['--wait', '--language', 'en', '--', words],
  takesInput: false,
  cancel: ['--cancel'],
}
const espeak = (file: string): SpeechProgram => ({
  file,
  name: file,
  args: () => ['-v', 'en', '--stdin'],
  takesInput: true,
  cancel: [],
})
const SAY: SpeechProgram = {
  file: 'say',
  name: 'say',
  args: () => ['-f', '-'],
  takesInput: true,
  cancel: [],
}
/** Reads its input as UTF-8, to its end, and says it with the voice that Windows brings. */
const SPEAK = [
  '[Console]::InputEncoding = [Text.Encoding]::UTF8',
  'Add-Type -AssemblyName System.Speech',
  '$s = New-Object System.Speech.Synthesis.SpeechSynthesizer',
  '$s.Speak([Console]::In.ReadToEnd())',
].join('; ')
const POWERSHELL: SpeechProgram = {
  file: 'powershell.exe',
  name: 'the speech of Windows',
  args: () => ['-NoProfile', '-NonInteractive', '-Command', SPEAK],
  takesInput: true,
  cancel: [],
}

/** In the order they are looked for. A `say` elsewhere than on macOS may be anything. */
function programsOf(platform: NodeJS.Platform): readonly SpeechProgram[] {
  if (platform === 'darwin') return [SAY, espeak('espeak-ng'), espeak('espeak')]
  if (platform === 'win32') return [POWERSHELL]
  return [SPD_SAY, espeak('espeak-ng'), espeak('espeak')]
}

interface Surroundings {
  readonly platform: NodeJS.Platform
  readonly path: string | undefined
}

/** A program that hangs is given up: this long, and so much more for each character. */
const PATIENCE_MS = 20_000
const PER_CHARACTER_MS = 200

const SIGNALS = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const

export function systemVoice(
  { platform, path }: Surroundings = { platform: process.platform, path: process.env.PATH },
): VoicePort {
  const programs = programsOf(platform)
  let running: { readonly found: Found; readonly child: ChildProcess; readonly end: () => void } | null = null
  /** A service goes on saying what was cut off here until it is told. */
  let goesOn: Found | null = null

  const cutOff = (): void => {
    if (running === null) return
    const { found, child, end } = running
    end()
    kill(child)
    if (found.program.cancel.length > 0) goesOn = found
  }
  const tellService = (): void => {
    if (goesOn !== null) start(goesOn.file, goesOn.program.cancel)
    goesOn = null
  }
  const hushNow = (): void => {
    cutOff()
    tellService()
  }
  // A signal that nobody else hears ends the program, as it would have without us.
  const onSignal = (signal: NodeJS.Signals): void => {
    hushNow()
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal)
  }

  return {
    hush: () => {
      cutOff()
      // What is said in its place tells the service by itself, so that the one never cuts off the other.
      setImmediate(tellService).unref()
    },
    program: () => {
      const found = find(programs, path)
      return found === null
        ? { ok: false, tried: programs.map(({ name }) => name) }
        : { ok: true, name: found.program.name }
    },
    say: (words, ended) => {
      cutOff()
      const found = find(programs, path)
      const before = goesOn === null ? [] : goesOn.program.cancel
      goesOn = null
      const child = found === null ? null : start(found.file, [...before, ...found.program.args(words)])
      if (found === null || child === null) {
        setImmediate(ended, 'failed')
        return
      }
      const end = (): void => {
        running = null
        clearTimeout(timer)
        process.off('exit', hushNow)
        for (const signal of SIGNALS) process.off(signal, onSignal)
      }
      const mine = { found, child, end }
      const over = (how: 'said' | 'failed'): void => {
        if (running !== mine) return
        end()
        ended(how)
      }
      const timer = setTimeout(
        () => {
          kill(child)
          over('failed')
        },
        PATIENCE_MS + PER_CHARACTER_MS * words.length,
      ).unref()
      running = mine
      child.on('error', () => over('failed'))
      child.on('exit', (code) => over(code === 0 ? 'said' : 'failed'))
      process.on('exit', hushNow)
      for (const signal of SIGNALS) process.once(signal, onSignal)
      child.stdin?.end(found.program.takesInput ? words : '')
    },
  }
}

/**
 * Neither its output nor its life holds up ours. In a group of its own, so that whatever it started ends with it, and away from
 * the terminal, which is ours.
 */
function start(file: string, args: readonly string[]): ChildProcess | null {
  try {
    const detached = process.platform !== 'win32'
    const child = spawn(file, args, { stdio: ['pipe', 'ignore', 'ignore'], detached, windowsHide: true })
    child.on('error', () => undefined)
    child.unref()
    const input = child.stdin as (Writable & { readonly unref?: () => void }) | null
    input?.unref?.()
    // It may have gone, or not read to the end: that is seen by how it ends.
    input?.on('error', () => undefined)
    return child
  } catch {
    return null
  }
}

function kill(child: ChildProcess): void {
  if (child.pid === undefined) return
  try {
    if (process.platform === 'win32') child.kill('SIGKILL')
    else process.kill(-child.pid, 'SIGKILL')
  } catch {
    // It had gone already.
  }
}

/** The first that is there. Folders named from where we stand are passed over: a file there is no program of the system. */
function find(programs: readonly SpeechProgram[], path: string | undefined): Found | null {
  const folders = (path ?? '').split(delimiter).filter(isAbsolute)
  for (const program of programs)
    for (const folder of folders) {
      const file = join(folder, program.file)
      if (canRun(file)) return { program, file }
    }
  return null
}

function canRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return statSync(file).isFile()
  } catch {
    return false
  }
}
