// Exit codes, in one table; the README prints the same.

export const EXIT = {
  done: 0,
  checkFailed: 1,
  wrongUse: 2,
  /** Left unfinished, or ended in HOLD or STOP. */
  unfinished: 3,
  fileProblem: 4,
  bug: 70,
  interrupted: 130,
} as const

export const EXIT_WORDS: readonly (readonly [number, string])[] = [
  [EXIT.done, 'done'],
  [EXIT.checkFailed, 'a check failed, a job was refused, or its kit holds it'],
  [EXIT.wrongUse, 'wrong use of the command line'],
  [EXIT.unfinished, 'job left unfinished, or ended in HOLD or STOP'],
  [EXIT.fileProblem, 'a file is missing, unreadable, locked or damaged'],
  [EXIT.bug, 'a fault in Barover itself'],
  [EXIT.interrupted, 'interrupted'],
]
