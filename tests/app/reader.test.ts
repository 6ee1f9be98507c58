// Reading aloud beside the screen: it follows the sheet, gives way to what is new, never drops a warning, never gets in the way.
import { describe, expect, it } from 'vitest'
import { createSpeech } from '../../src/app/speech.ts'
import { Walk } from '../helpers/example.ts'
import { memorySession } from '../helpers/fake-terminal.ts'
import { noFiles } from '../helpers/files.ts'
import { fakeVoice, noVoice } from '../helpers/voice.ts'

function listen(walk: Walk) {
  const voice = fakeVoice()
  return { ...memorySession(walk, false, noFiles, voice.port), voice }
}
const saidOn = (session: ReturnType<typeof listen>['session']) =>
  session.snapshot().shown.flatMap((one) => (one.kind === 'said' ? one.lines : []))

describe('the word aloud', () => {
  it('says plainly where the computer has no speech program, and changes nothing', async () => {
    const { session } = memorySession(new Walk(), false, noFiles, noVoice)
    await session.hear('aloud')
    expect(saidOn(session)).toEqual([
      'Nothing can be read aloud: this computer has no speech program that Barover knows (spd-say, espeak).',
    ])
    await session.hear('RO')
    expect(session.snapshot().talk.ask).toMatchObject({ kind: 'pin' })
  })

  it('begins with what is asked, hazard first; once more says it whole again; off is silent', async () => {
    const { session, voice } = listen(new Walk().toGate())
    await session.hear('why')
    expect(voice.began).toEqual([])
    await session.hear('aloud')
    expect(voice.began[0]).toMatch(/^Read aloud by a voice/)
    voice.ends()
    expect(voice.now()).toMatch(/^Hazard: /)
    voice.ends()
    expect(voice.now()).toMatch(/Lock number at main driver breaker, E, one\.$/)
    await session.hear('aloud')
    expect(voice.now()).toMatch(/^Hazard: /)
    await session.hear('aloud off')
    expect(voice.now()).toBeNull()
    const count = voice.began.length
    await session.hear('L-101')
    expect(voice.began).toHaveLength(count)
  })
})

describe('while a job goes on', () => {
  it('a figure is read back in place of the old prompt, then the next place is said without the hazard', async () => {
    const { session, voice } = listen(new Walk().toBore())
    await session.hear('aloud')
    for (let n = 0; n < 3; n++) voice.ends()
    await session.hear('9.5033')
    expect(voice.now()).toBe('nine point five zero three three inch.')
    voice.ends()
    expect(voice.now()).toMatch(/^2nd of 2, afresh/)
  })

  it('a hazard that was cut off by the next prompt of the step is said behind it', async () => {
    const { session, voice } = listen(new Walk().toGate())
    await session.hear('aloud')
    voice.ends()
    expect(voice.now()).toMatch(/^Hazard: /)
    await session.hear('L-101')
    expect(voice.now()).toMatch(/L, one zero one/)
    voice.ends()
    expect(voice.now()).toMatch(/Lock number at/)
    voice.ends()
    expect(voice.now()).toMatch(/^Hazard: /)
    voice.ends()
    expect(voice.now()).toBeNull()
  })

  it('STOP cuts off whatever is said, and what is asked waits until it was said', async () => {
    const { session, voice } = listen(new Walk().toBore())
    await session.hear('aloud')
    await session.hear('stop')
    expect(voice.now()).toMatch(/^STOP\. Everybody out and clear/)
    await session.hear('help')
    expect(voice.now()).toMatch(/^STOP\. Everybody out and clear/)
    voice.ends()
    expect(voice.now()).toMatch(/A figure and Enter answer a reading/)
    voice.ends()
    expect(voice.now()).toMatch(/^Radio channel 1/)
  })

  it('a lapse that is near is said once, not at every minute', async () => {
    const walk = new Walk().toBore()
    const { session, voice } = listen(walk)
    await session.hear('aloud')
    const lapses = () => voice.began.filter((words) => /lapses? at/.test(words)).length
    for (let minute = 0; minute < 28; minute++) {
      walk.wait(1)
      await session.tick()
    }
    expect(lapses()).toBe(1)
    walk.wait(5)
    await session.tick()
    expect(voice.now()).toMatch(/^HOLD\. COME OUT AND STAND CLEAR/)
  })

  it('a PIN is never said, keyed where it is asked, too early or too late', async () => {
    const { session, voice } = listen(new Walk())
    await session.hear('aloud')
    for (const line of ['4071', 'RO', '4071', '4071']) {
      await session.hear(line)
      for (let n = 0; n < 9; n++) voice.ends()
    }
    expect(voice.began.join(' ')).toContain('PIN of R O')
    expect(voice.began.join(' ')).not.toMatch(/four zero seven one|4071|4 0 7 1/)
  })

  it('a speech program that fails twice is given up with a word on the sheet, and the job goes on', async () => {
    const { session, voice } = listen(new Walk())
    await session.hear('aloud')
    voice.ends('failed')
    expect(saidOn(session).join()).not.toContain('did not work')
    voice.ends('failed')
    expect(saidOn(session).at(-1)).toMatch(/^Nothing is read aloud any more: the speech program did not work/)
    const count = voice.began.length
    await session.hear('RO')
    expect(session.snapshot().talk.ask).toMatchObject({ kind: 'pin' })
    expect(voice.began).toHaveLength(count)
  })

  it('a voice that throws ends the reading aloud and nothing else', async () => {
    const broken = {
      ...fakeVoice().port,
      say: () => {
        throw new Error('no sound')
      },
    }
    const { session } = memorySession(new Walk(), false, noFiles, broken)
    await session.hear('aloud')
    await session.hear('RO')
    expect(session.snapshot().talk.ask).toMatchObject({ kind: 'pin' })
    expect(saidOn(session).filter((line) => line.includes('did not work'))).toHaveLength(1)
  })
})

describe('warnings', () => {
  it('are said one behind the other, the newest first, each to its end', () => {
    const voice = fakeVoice()
    const speech = createSpeech(voice.port, () => undefined)
    speech.replace([{ text: 'prompt' }])
    speech.warn('first')
    speech.replace([{ text: 'next prompt' }])
    speech.warn('second')
    speech.warn('second')
    voice.ends()
    voice.ends()
    voice.ends()
    expect(voice.began).toEqual(['prompt', 'first', 'second', 'first', 'next prompt'])
    expect(voice.now()).toBeNull()
  })

  it('are tried again where the program failed over one', () => {
    const voice = fakeVoice()
    const speech = createSpeech(voice.port, () => undefined)
    speech.warn('come out')
    voice.ends('failed')
    expect(voice.now()).toBe('come out')
  })
})
