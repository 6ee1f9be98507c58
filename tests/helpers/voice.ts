// Voices for tests: a computer that has none, and one that keeps what it was given and ends it when it is told to.
import type { VoicePort } from '../../src/app/ports.ts'

export const noVoice: VoicePort = {
  program: () => ({ ok: false, tried: ['spd-say', 'espeak'] }),
  say: () => undefined,
  hush: () => undefined,
}

export interface FakeVoice {
  readonly port: VoicePort
  /** Everything it ever began to say. */
  readonly began: string[]
  /** What it is saying now. */
  readonly now: () => string | null
  /** It comes to the end of what it says, or breaks down over it. */
  readonly ends: (how?: 'said' | 'failed') => void
}

export function fakeVoice(): FakeVoice {
  const began: string[] = []
  let saying: { readonly words: string; readonly ended: (how: 'said' | 'failed') => void } | null = null
  return {
    began,
    now: () => saying?.words ?? null,
    ends: (how = 'said') => {
      const was = saying
      saying = null
      was?.ended(how)
    },
    port: {
      program: () => ({ ok: true, name: 'a voice' }),
      say: (words, ended) => {
        began.push(words)
        saying = { words, ended }
      },
      hush: () => {
        saying = null
      },
    },
  }
}
