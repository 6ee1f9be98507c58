// The few words that work at any prompt. Plain English and the trade's own; anything else answers the prompt.

export const WORDS = [
  { word: 'help', says: 'what is asked now, and these words' },
  { word: 'why', says: 'the reason; with a number or figure, its sums: why 7.3, why taper' },
  { word: 'readings', says: 'all readings so far' },
  { word: 'correct', says: 'put an earlier reading right, with the reason' },
  { word: 'back', says: 'go back to the last answer, or out of a question' },
  { word: 'note', says: 'write a note into the log' },
  { word: 'n/a', says: 'this reading cannot be taken, with the reason' },
  { word: 'sign on', says: 'somebody else comes onto the job; the keyboard stays with you' },
  { word: 'sign off', says: 'somebody goes off the job' },
  { word: 'hand over', says: 'what is done, next and open, and then the keyboard to somebody else' },
  { word: 'countersign', says: 'a lead signs for what they said by radio' },
  { word: 'leave', says: 'leave the job; it is on disk and can be taken up again' },
  { word: 'stop', says: 'STOP: blocks everything at once, asks why after. The key ! does the same' },
] as const

export type Word = (typeof WORDS)[number]['word']

/** A line that is only "stop", or the one key, is STOP everywhere; said or pressed several times it is no less. */
export function isStop(line: string): boolean {
  return /^(?:!+|(?:stop[\s.,!]*)+)$/i.test(line.trim())
}

export function wordIn(line: string): Word | null {
  const plain = line
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .replace(/^handover$/, 'hand over')
  return WORDS.find((w) => w.word === plain)?.word ?? null
}
