// Which starts make the terminal silent before anything else: those that end in a screen a person keys on.
import { describe, expect, it } from 'vitest'
import { asksPerson } from '../../src/cli/hush.ts'

describe('a start that makes the terminal silent', () => {
  it.each([
    [[], true, true],
    [['--plain'], true, true],
    [[], false, false],
    [['run', 'bore-inspection', '--machine', 'm.yaml'], true, true],
    [['run', 'bore-inspection', '--machine', 'm.yaml'], false, true],
    [['resume', '3f2a'], true, true],
    [['run', 'x', '--machine', 'm', '--answers', 'a.txt'], true, false],
    [['run', 'x', '--machine', 'm', '--answers=a.txt'], true, false],
    [['resume', '--help'], true, false],
    [['--version'], true, false],
    [['check', 'procedures'], true, false],
    [['jobs'], true, false],
    [['adopt', '3f2a'], true, true],
    [['remark', '3f2a'], false, true],
    [['take-in', '3f2a'], true, true],
    [['doubt', '3f2a', '--instrument', 'M-3', '--by', 'KH'], true, true],
    [['doubt', '--instrument', 'M-3'], true, false],
    [['review', '3f2a'], true, true],
    [['review', '3f2a'], false, false],
    [['review', '3f2a', '--plain'], true, false],
    [['review', '3f2a', '--item=3'], true, false],
    [['adopt', '3f2a', '--json'], true, false],
  ])('%j, drawn %j: %j', (args, isDrawn, silent) => {
    expect(asksPerson(args, isDrawn)).toBe(silent)
  })
})
