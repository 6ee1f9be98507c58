// The choice of jobs in plain lines: numbered, the question last, help and make safe at hand.
import { expect, it } from 'vitest'
import type { Choice } from '../../src/core/talk/choice.ts'
import { askChoice } from '../../src/plain/choice.ts'

const choice: Choice = {
  title: 'Barover',
  lines: ['Takes you through work.'],
  options: ['Take up', 'Start the example'],
  zero: 'Leave',
  help: ['The number before a line.'],
}

async function ask(...keyed: string[]) {
  let text = ''
  const chosen = await askChoice(choice, {
    out: {
      write: (more) => {
        text += more
      },
    },
    ascii: true,
    next: async () => keyed.shift() ?? null,
    safe: () => ['MAKE SAFE. Words only'],
  })
  return { chosen, lines: text.split('\n').filter((line) => line !== '') }
}

it('lists what there is by number, and asks last', async () => {
  const { chosen, lines } = await ask('2')
  expect(chosen).toBe(1)
  expect(lines).toEqual([
    'Barover.',
    'Takes you through work.',
    '1: Take up',
    '2: Start the example',
    '0: Leave',
    'Asked: Key a number, 1 to 2, or 0 to leave. Words: help, safe.',
  ])
})

it('says help and the make-safe sheet, asks again each time, and is left by 0 or at the end of what is keyed', async () => {
  const { chosen, lines } = await ask('help', 'safe', '7', '0')
  expect(chosen).toBe('left')
  expect(lines.filter((line) => line.startsWith('Asked:'))).toHaveLength(4)
  for (const said of ['The number before a line.', 'MAKE SAFE. Words only']) expect(lines).toContain(said)
  expect((await ask()).chosen).toBe('left')
})
