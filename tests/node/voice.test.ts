// The speech program itself: a real one on the path, that writes what it is given to a file; one that fails, hangs, is not there.
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { systemVoice } from '../../src/node/voice.ts'

const folders: string[] = []
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true })
})

/** A folder with a program of that name in it. */
function withProgram(name: string, script: string) {
  const folder = mkdtempSync(join(tmpdir(), 'barover-voice-'))
  folders.push(folder)
  const file = join(folder, name)
  writeFileSync(file, `#!/bin/sh\nPATH=/usr/bin:/bin\n${script.replaceAll('$OUT', join(folder, 'out'))}\n`)
  chmodSync(file, 0o755)
  const read = (what = 'out') => {
    const path = join(folder, what)
    return existsSync(path) ? readFileSync(path, 'utf8') : ''
  }
  return { folder, read, voice: systemVoice({ platform: 'linux', path: folder }) }
}

const say = (voice: ReturnType<typeof systemVoice>, words: string) =>
  new Promise<string>((resolve) => voice.say(words, resolve))

it('gets the words on its input, and no shell in between', async () => {
  const { voice, read } = withProgram('espeak-ng', 'echo "$@" > $OUT; cat >> $OUT')
  expect(voice.program()).toEqual({ ok: true, name: 'espeak-ng' })
  expect(await say(voice, 'nine point five; touch x')).toBe('said')
  expect(read()).toBe('-v en --stdin\nnine point five; touch x')
})

it('that takes an argument gets it behind the mark that ends the options', async () => {
  const { voice, read } = withProgram('spd-say', 'for a; do echo "$a"; done > $OUT')
  await say(voice, 'STOP. Everybody out')
  expect(read().trim().split('\n')).toEqual(['--wait', '--language', 'en', '--', 'STOP. Everybody out'])
})

it('is the one of the system first', () => {
  const { folder } = withProgram('espeak-ng', 'true')
  const { folder: other } = withProgram('spd-say', 'true')
  const path = `${folder}:${other}`
  expect(systemVoice({ platform: 'linux', path }).program()).toMatchObject({ name: 'spd-say' })
  expect(systemVoice({ platform: 'darwin', path }).program()).toMatchObject({ name: 'espeak-ng' })
})

it('is not taken from a folder named from where we stand, nor if it is no program', async () => {
  const { folder } = withProgram('espeak-ng', 'true')
  chmodSync(join(folder, 'espeak-ng'), 0o644)
  for (const path of [folder, '.', '', ':bin', undefined]) {
    const voice = systemVoice({ platform: 'linux', path })
    expect(voice.program()).toEqual({ ok: false, tried: ['spd-say', 'espeak-ng', 'espeak'] })
    expect(await say(voice, 'x')).toBe('failed')
  }
})

it('that ends with a failure, or reads nothing, is no trouble but is told', async () => {
  const failing = withProgram('espeak', 'exit 3')
  expect(await say(failing.voice, 'x'.repeat(500_000))).toBe('failed')
  const deaf = withProgram('espeak', 'exec <&-; exit 0')
  expect(await say(deaf.voice, 'x'.repeat(500_000))).toBe('said')
})

it('that hangs is ended with all that it started, and is not heard of again', async () => {
  const { voice, read } = withProgram('espeak', 'sleep 600 & echo $! > $OUT; wait')
  const heard: string[] = []
  voice.say('one', (how) => void heard.push(how))
  await expect.poll(() => read()).toMatch(/\d/)
  const pid = Number(read())
  voice.hush()
  await expect.poll(() => isRunning(pid)).toBe(false)
  expect(heard).toEqual([])
})

it('that hands on to a service tells it to stop, by itself or with what is said next', async () => {
  const { voice, read } = withProgram('spd-say', 'echo "$@" >> $OUT; case "$1" in --wait) sleep 600;; esac')
  voice.say('one', () => undefined)
  await expect.poll(() => read()).toContain('-- one')
  voice.hush()
  expect(await say(voice, 'two')).toBe('said')
  expect(read().trim().split('\n').at(-1)).toBe('--cancel --wait --language en -- two')
  voice.say('three', () => undefined)
  await expect.poll(() => read()).toContain('-- three')
  voice.hush()
  await expect.poll(() => read().trim().split('\n').at(-1)).toBe('--cancel')
})

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0)
    // Ended and not yet taken leave of by anybody counts as gone.
    return !/^State:\s+Z/m.test(readFileSync(`/proc/${pid}/status`, 'utf8'))
  } catch {
    return false
  }
}
