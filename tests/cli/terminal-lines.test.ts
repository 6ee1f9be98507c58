// A line keyed without being shown: what ends it, what erases, what is no part of it. And the line keyed right after it.
import { EventEmitter } from 'node:events'
import { describe, expect, it } from 'vitest'
import { keyUnseen, terminalLines } from '../../src/cli/terminal-lines.ts'

describe('a line that is not shown', () => {
  it.each([
    ['80\u001b[1;5P41\u001b[A\r', { text: '8041', end: 'line', rest: '' }],
    ['8049\u007f1\n', { text: '8041', end: 'line', rest: '' }],
    ['99\u00158041\rNEXT', { text: '8041', end: 'line', rest: 'NEXT' }],
    ['\u007f\u007f80', { text: '80', end: 'open', rest: '' }],
    ['80\u0003', { text: '', end: 'interrupted', rest: '' }],
    ['\u0004', { text: '', end: 'ended', rest: '' }],
    ['80\u000441\r', { text: '8041', end: 'line', rest: '' }],
  ])('takes %j', (keys, line) => {
    expect(keyUnseen('', keys)).toEqual(line)
  })

  it('goes on from what was keyed before', () => {
    expect(keyUnseen('80', '41\r')).toEqual({ text: '8041', end: 'line', rest: '' })
  })
})

describe('the line after one that was not shown', () => {
  it('is taken though its Enter came before the terminal edits lines again', async () => {
    const none = () => undefined
    const stdin = Object.assign(new EventEmitter(), { setRawMode: none, resume: none, pause: none })
    const lines = terminalLines(stdin as unknown as NodeJS.ReadStream)
    const pin = lines.next(true)
    stdin.emit('data', '4071\r')
    expect(await pin).toBe('4071')
    stdin.emit('data', 'TC-401-1\r')
    expect(await lines.next(false)).toBe('TC-401-1')
    const later = lines.next(false)
    stdin.emit('data', 'done\n')
    expect(await later).toBe('done')
    lines.close()
  })
})
