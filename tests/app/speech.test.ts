// What is said aloud, one thing at a time, without a session around it: a warning waits for nothing.
import { expect, it } from 'vitest'
import { createSpeech } from '../../src/app/speech.ts'
import { fakeVoice } from '../helpers/voice.ts'

it('a warning cuts off what is being said, and is said at once', () => {
  const voice = fakeVoice()
  const speech = createSpeech(voice.port, () => undefined)
  speech.replace([{ text: 'the long text of a step' }, { text: 'its question' }])
  expect(voice.now()).toBe('the long text of a step')
  speech.warn('STOP')
  expect(voice.now()).toBe('STOP')
  // What was cut off is not said again, and what waited is.
  voice.ends()
  expect(voice.now()).toBe('its question')
})

it('a warning before another one is said first, and the other whole behind it', () => {
  const voice = fakeVoice()
  const speech = createSpeech(voice.port, () => undefined)
  speech.warn('gas lapses')
  speech.warn('STOP')
  expect(voice.now()).toBe('STOP')
  voice.ends()
  expect(voice.now()).toBe('gas lapses')
})
