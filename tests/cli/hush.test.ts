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
  ])('%j, drawn %j: %j', (args, isDrawn, silent) => {
    expect(asksPerson(args, isDrawn)).toBe(silent)
  })
})
