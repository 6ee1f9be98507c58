// The journal and the running session: nothing counts that is not on disk, nothing is read back that was changed.
import { of } from './mutant.ts'

export const JOURNAL = [
  ...of('node/journal/chain', 'node/journal/chain', [
    {
      rule: 'A line whose content does not match its own hash is a fault.',
      find: 'if (lineHash(body) !== tail[1])',
      into: "if (tail[1] === '')",
      by: 'finds every bit of a small journal, one at a time',
      in: 'node/journal/tamper',
    },
    {
      rule: 'A figure that is not a number is never written: it would read back as nothing.',
      find: 'if (!Number.isFinite(value)) throw',
      into: 'if (value === -1.5) throw',
      by: 'throws for',
    },
  ]),
  ...of('node/journal/examine', 'node/journal/tamper', [
    {
      rule: 'A line that does not follow from the one before it is a fault.',
      find: 'if (checked.seq !== index || checked.prev !== head)',
      into: 'if (checked.seq !== index)',
      by: 'a line of another journal',
      in: 'node/journal/examine',
    },
    {
      rule: 'A line out of its number is a fault.',
      find: 'if (checked.seq !== index || checked.prev !== head)',
      into: 'if (checked.prev !== head)',
      by: 'a line whose number was rewritten with its own hash',
      in: 'node/journal/examine',
    },
  ]),
  ...of('node/journal/journal-writer', 'node/journal/failing-disk', [
    {
      rule: 'An entry is synced before it counts.',
      find: '      this.#port.fdatasyncSync(this.#fd)\n',
      into: '',
      by: 'is one write and then one sync of data, before it resolves',
    },
    {
      rule: 'A writer whose write or sync failed is dead, and never tries again.',
      find: 'this.#deadBecause = because\n',
      into: '\n',
      by: 'is not an acknowledgement and is never tried again',
    },
    {
      rule: 'A writer notices that its file was changed by somebody else.',
      find: 'if (own.size !== this.#size)',
      into: 'if (own.size < 0)',
      by: 'refuses, writes nothing and stays dead',
      in: 'node/journal/journal-file',
    },
    {
      rule: 'A writer notices that its lock was taken away.',
      find: 'if (!this.#lock.isOurs())',
      into: 'if (this.#lock === null)',
      by: 'refuses, writes nothing and stays dead',
      in: 'node/journal/journal-file',
    },
  ]),
  ...of('node/journal/journal-file', 'node/journal/journal-file', [
    {
      rule: 'A journal with a fault is not opened for writing.',
      find: 'refuseUnsound(path, seen)\n',
      into: '\n',
      by: 'refuses a fault with its line, changes nothing and gives the lock back',
    },
    {
      rule: 'What an end cut short held is on disk beside the file before the file is cut.',
      find: '    port.fsyncSync(fd)\n  } finally {',
      into: '  } finally {',
      by: 'is on disk beside the file before the file is cut',
    },
    {
      rule: 'A journal is never written over.',
      find: 'constants.O_CREAT | constants.O_EXCL',
      into: 'constants.O_CREAT',
      by: 'never writes over a file, whatever is in it',
    },
  ]),
  ...of('node/journal/writer-lock', 'node/journal/writer-lock', [
    {
      rule: 'A writer on another computer is never taken for dead.',
      find: 'if (holder === null || holder.host !== view.host) return false',
      into: 'if (holder === null) return false',
      by: 'refuses another host even if no such process runs here',
    },
  ]),
  ...of('app/session', 'app/session', [
    {
      rule: 'An entry is on disk before anything of it is shown.',
      find: 'await journal.append(admitted.entries)',
      into: 'void journal.append(admitted.entries)',
      by: 'has an entry before anything of it is shown',
    },
    {
      rule: 'A wall clock that ran apart from the running clock was moved, back or ahead.',
      find: 'if (Math.abs(moved) <= CLOCK_SLACK_MS) return 0',
      into: 'if (moved >= -CLOCK_SLACK_MS) return 0',
      by: 'was moved, by',
    },
    {
      rule: 'A clock moved a little at a time is found too.',
      find: 'if (Math.abs(moved) <= CLOCK_SLACK_MS) return 0\n    apartAtStart = apart',
      into: 'apartAtStart = apart\n    if (Math.abs(moved) <= CLOCK_SLACK_MS) return 0',
      by: 'is found also when it was moved a little at a time, and said once',
    },
    {
      rule: 'While a person has to wait after wrong PINs, theirs is not even looked at.',
      find: 'if (mustWait || key === undefined)',
      into: 'if (key === undefined)',
      by: 'is not even looked at while its person has to wait, and is on no record',
    },
    {
      rule: 'A wrong PIN goes on record by name, and the PIN with it nowhere.',
      find: "shown: await take({ do: 'pin-missed', person })",
      into: "shown: await take({ do: 'note', text: `wrong PIN, `.concat(pin) })",
      by: 'is not even looked at while its person has to wait, and is on no record',
    },
  ]),
]
