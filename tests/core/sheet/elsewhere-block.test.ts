// A STOP in another job on the machine, or a log of one that nobody can read, is framed as the HOLD that it is.
import { describe, expect, it } from 'vitest'
import type { JobSeen } from '../../../src/core/job/elsewhere.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { elsewhereRows } from '../../../src/core/sheet/elsewhere-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { QUIET } from '../../../src/core/talk/heard.ts'
import { Walk } from '../../helpers/example.ts'

const OTHER: JobSeen = {
  job: 'tc-401-1-20260314-0610-3f2a',
  record: 'EXAMPLE',
  procedure: 'Bar over',
  tag: 'TC-401-1',
  told: true,
  upTo: 9,
  head: 'a1b2',
  written: '2026-03-14T06:15:00.000+00:00',
  people: ['ML'],
  left: false,
  stop: null,
  inside: [],
  names: [],
  letting: null,
  closed: null,
  unread: null,
}

function seen(change: Partial<JobSeen>, walk = new Walk()) {
  const other = { ...OTHER, ...change }
  const entry = { type: 'elsewhere.seen', seq: 1, at: walk.last.at, ...other } as const satisfies Entry
  const state = fold(walk.state, entry)
  const style = { width: 79, record: 'EXAMPLE' as const, ascii: true }
  const texts = (rows: readonly { readonly text: string }[]) => rows.map(({ text }) => text)
  return {
    entry: texts(elsewhereRows(state, entry)),
    prompt: texts(promptView(walk.engine.defs, state, QUIET, style).must),
  }
}

const UNTIL = 'No hold point of this job opens until that is put right there.'

describe('another job on the machine', () => {
  it.each([
    ['under STOP', { stop: 'something else: a shout' }, /^STOP is open in job 3f2a on this machine\.$/],
    ['whose log cannot be read', { unread: 'line 4 was changed' }, /^The log of job 3f2a,/],
  ])('%s is framed as a HOLD on the sheet and before whoever comes', (_what, change, says) => {
    const { entry, prompt } = seen(change)
    expect(entry[1]).toBe('( HOLD )')
    expect(entry.at(-1)).toBe(UNTIL)
    expect(prompt.slice(0, 3)).toEqual(['( HOLD )', expect.stringMatching(says), UNTIL])
  })

  it('holds nothing where it is in order, has ended, or is a record of another kind', () => {
    for (const change of [
      {},
      { stop: 'a shout', closed: 'STOP' },
      { stop: 'a shout', record: 'PRACTICE' as const },
    ]) {
      const { entry, prompt } = seen(change)
      expect([...entry, ...prompt]).not.toContain('( HOLD )')
    }
  })

  it('keeps it in one line at the prompts after that', () => {
    const { prompt } = seen({ stop: 'a shout' }, new Walk().keys('RO', 'TC-401-1'))
    expect(prompt).toContain('STOP is open in job 3f2a on this machine.')
    expect(prompt).not.toContain('( HOLD )')
  })
})
