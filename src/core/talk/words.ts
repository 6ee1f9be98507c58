// The few words that work at any prompt. Plain English and the trade's own; anything else answers the prompt.

export const WORDS = [
  { word: 'help', says: 'what is asked now, and these words' },
  { word: 'why', says: 'the reason; with a number or figure, its sums: why 7.3, why taper' },
  { word: 'readings', says: 'all readings so far' },
  { word: 'correct', says: 'put a reading, a finding, an n/a or evidence right, with the reason' },
  { word: 'open', says: 'what is still open in this job' },
  { word: 'deviation', says: 'a lead permits beforehand that something differs' },
  { word: 'notice', says: 'tell somebody of a witness point to come' },
  { word: 'instrument', says: 'an instrument was found out of calibration: its readings fall' },
  { word: 'back', says: 'go back to the last answer, or out of a question' },
  { word: 'note', says: 'write a note into the log' },
  { word: 'placed', says: 'something temporary was put in: a blind, a plug, a block, a sling' },
  { word: 'taken', says: 'something temporary is accounted for: two people sign. accounted is the same' },
  { word: 'n/a', says: 'this reading cannot be taken, with the reason' },
  {
    word: 'safe',
    says: 'MAKE SAFE: what to do now, whom to call. The key Tab does the same on a drawn screen',
  },
  { word: 'leave', says: 'leave the job; it is on disk and can be taken up again' },
  { word: 'stop', says: 'STOP: blocks everything at once, asks why after. The key ! does the same' },
] as const

export type Word = (typeof WORDS)[number]['word']

/** A line that is only "stop", or the one key, is STOP everywhere; said or pressed several times it is no less. */
export function isStop(line: string): boolean {
  return /^(?:!+|(?:stop[\s.,!]*)+)$/i.test(line.trim())
}

/** A line that asks for the make-safe sheet, wherever it is keyed. */
export function isMakeSafe(line: string): boolean {
  return /^(?:make\s+)?safe[\s.!]*$/i.test(line.trim())
}

export function wordIn(line: string): Word | null {
  const plain = line
    .trim()
    .toLowerCase()
    .replace(/^accounted$/, 'taken')
  return WORDS.find((w) => w.word === plain)?.word ?? null
}
