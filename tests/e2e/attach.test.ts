// A photo attached in a real terminal and from an answers file, and what show and verify say of it afterwards.
import { chmodSync, mkdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { barover, runArgs } from '../helpers/cli.ts'
import { jobStarter, logged, logPath, TO_BORE, TO_GATE, terminals } from '../helpers/pty.ts'

const terminal = terminals()
const jobAt = jobStarter(terminal)

function photos(): string {
  const folder = join(terminal.folder(), 'pics')
  mkdirSync(folder)
  const lay = (name: string, agoS: number) => {
    writeFileSync(join(folder, name), `picture ${name}`)
    utimesSync(join(folder, name), 1000, Date.now() / 1000 - agoS)
  }
  lay('wall-head-end.jpg', 600)
  lay('wall-crank-end.jpg', 200)
  lay('permit.pdf', 4000)
  return folder
}

const attached = (jobs: string) => logged(jobs).filter((e) => e.type === 'file.attached')

describe('attach', { timeout: 60_000 }, () => {
  it.each([{}, { NO_COLOR: '1' }])(
    'with Tab to a path, and as the newest by a number, at 80 by 24, %j',
    async (env) => {
      const folder = photos()
      const { t, jobs } = await jobAt(TO_BORE, { env })
      await t.say('attach')
      await t.see('Path of the file')
      await t.see('Hazard: Both arms in the bore')
      await t.key(`${folder}/w`, '/w')
      await t.key('\t', '/wall-')
      await t.see('Fits: wall-crank-end.jpg   wall-head-end.jpg')
      await t.key('h', '/wall-h')
      await t.key('\t', '/wall-head-end.jpg')
      expect(t.all).not.toContain('MAKE SAFE')
      t.send('\r')
      await t.see('What does it show? One line')
      await t.say('score at 12 o clock')
      await t.see('Attached: wall-head-end.jpg, 25 bytes: score at 12 o clock')
      await t.see('Reading (in) with M-3')
      await t.dialogue([
        ['attach', 'Path of the file'],
        ['', 'wall-crank-end.jpg, 26 bytes, last written 3 min ago'],
      ])
      expect(attached(jobs)).toHaveLength(1)
      await t.dialogue([
        ['1', 'What does it show? One line'],
        ['the other end', 'Attached: wall-crank-end.jpg'],
      ])
      expect(attached(jobs)).toMatchObject([
        { name: 'wall-head-end.jpg', given: 'wall-head-end.jpg', size: 25, step: 'bore', by: 'RO' },
        { name: 'wall-crank-end.jpg', caption: 'the other end' },
      ])
      // Nothing of this computer is in the log but the name.
      expect(readFileSync(logPath(jobs), 'utf8')).not.toContain(folder)
      expect(t.wipes).toBe(0)
      if ('NO_COLOR' in env) expect(t.raw).not.toMatch(/\u001b\[(?:\d+;)*3[0-7]m/)
      await t.say('9.5033')
      await t.see('2nd of 2, afresh (in)')
    },
  )

  it('refuses what is no file in one sentence and asks again; Tab twice and stop are what they always are', async () => {
    const folder = photos()
    const { t, jobs } = await jobAt(TO_GATE)
    await t.dialogue([
      ['attach', 'Path of the file'],
      [join(folder, 'none.jpg'), 'There is no file'],
      [folder, "'pics' is a folder"],
    ])
    await t.see('Path of the file')
    await t.key('x', 'x')
    t.send('\t\t')
    await t.see('MAKE SAFE. Words only')
    await t.see('1  Come out, everybody.')
    await t.key('\u0015', '')
    await t.dialogue([
      ['stop', 'STOP. Everybody out and clear.'],
      ['attach', 'Path of the file'],
      ['newest', 'Is it this one?'],
    ])
    await t.say('1')
    await t.say('the head, as it lay')
    await t.see('Attached: wall-crank-end.jpg')
    expect(
      logged(jobs)
        .map((e) => e.type)
        .slice(-2),
    ).toEqual(['stop.raised', 'file.attached'])
  })
})

describe('from an answers file', { timeout: 60_000 }, () => {
  it('attaches, and show and verify tell each file as it was attached, changed or gone', async () => {
    const folder = photos()
    const jobs = terminal.folder()
    const answers = join(folder, 'answers.txt')
    const lines = ['clock 2026-03-14 06:20+00:00', 'RO', '4071', `attach ${join(folder, 'permit.pdf')}`]
    const more = ['the permit', 'TC-401-1', `attach ${folder}/wall-head-end.jpg`, 'head end', 'attach']
    writeFileSync(answers, [...lines, ...more, 'newest', '2', 'back', 'leave'].join('\n'))
    utimesSync(answers, 1000, 1000)
    const ran = await barover(runArgs(jobs, '--answers', answers))
    expect(ran.code).toBe(3)
    expect(ran.out).toContain('Attached: permit.pdf, 18 bytes: the permit')
    expect(ran.out).toContain('The newest in')
    expect(attached(jobs).map((e) => e.name)).toEqual(['permit.pdf', 'wall-head-end.jpg'])

    const log = logPath(jobs)
    const kept = log.replace(/\.jsonl$/, '.files')
    const show = await barover(['show', log])
    expect(show.out.split('permit.pdf, 18 bytes: the permit')).toHaveLength(3)
    expect(show.out).toContain('Attached files')
    const sha = String(attached(jobs)[0]?.sha256)
    expect(show.out.replace(/[\s|│]|EXAMPLE/g, '')).toContain(`SHA-256${sha}`)
    expect((await barover(['show', log, '--handover'])).out).toContain('Files attached: 2, the last')
    expect(JSON.parse((await barover(['show', log, '--json'])).out).files).toHaveLength(2)

    const sound = await barover(['verify', log])
    expect(sound.code).toBe(0)
    expect(sound.out).toContain('file      permit.pdf: as attached')
    chmodSync(join(kept, 'permit.pdf'), 0o644)
    writeFileSync(join(kept, 'permit.pdf'), 'picture PERMIT.pdf')
    rmSync(join(kept, 'wall-head-end.jpg'))
    writeFileSync(join(kept, 'stranger.jpg'), 'x')
    const changed = await barover(['verify', log])
    expect(changed.code).toBe(1)
    expect(changed.out).toContain('file      permit.pdf: CHANGED: its SHA-256 is not that of the log')
    expect(changed.out).toContain('file      wall-head-end.jpg: GONE')
    expect(changed.out).toContain('stray     stranger.jpg: not in the log')
    expect(JSON.parse((await barover(['verify', log, '--json'])).out)).toMatchObject({
      sound: true,
      files: [{ state: 'changed' }, { state: 'gone' }],
    })
    // The log itself goes on as it was.
    expect((await barover(['show', log])).code).toBe(0)
  })

  it('says which line named no file, and goes on', async () => {
    const jobs = terminal.folder()
    const answers = join(terminal.folder(), 'answers.txt')
    writeFileSync(
      answers,
      'clock 2026-03-14 06:20+00:00\nRO\n4071\nattach /no/such.jpg\nback\nTC-401-1\nleave\n',
    )
    const ran = await barover(runArgs(jobs, '--answers', answers))
    expect(ran.out).toContain("There is no file '/no/such.jpg'.")
    expect(logged(jobs).map((e) => e.type)).toContain('machine.named')
    expect(attached(jobs)).toEqual([])
  })
})
