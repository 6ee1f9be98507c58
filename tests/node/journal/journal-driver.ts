// Not a test: a small program that kill.test.ts bundles and runs, so that a real process can be killed.
// append <file>  opens the journal and appends for ever, printing each seq only after it was acknowledged
// pieces <file>  the same on a disk that writes short
// hold <file>    opens the journal, says "held" or "refused", and keeps it until its input ends
import { writeSync } from 'node:fs'
import { type JournalFs, nodeFs } from '../../../src/node/journal/fs-port.ts'
import { openJournal } from '../../../src/node/journal/journal-file.ts'
import { JournalProblem } from '../../../src/node/journal/problem.ts'
import { thisComputer } from '../../../src/node/journal/process-view.ts'

const AT = '2026-03-02T06:52:10-06:00'
const LONG = 'Ø'.repeat(50_000)
const [mode, path = ''] = process.argv.slice(2)

// A disk that takes 97 bytes at a time: a kill then often lands between two pieces of one line.
const inPieces: JournalFs = {
  ...nodeFs,
  writeSync: (fd, data, offset, length) => nodeFs.writeSync(fd, data, offset, Math.min(length, 97)),
}

function say(text: string): void {
  writeSync(1, `${text}\n`)
}

async function appendForEver(port: JournalFs): Promise<never> {
  const { journal } = openJournal(path, { port, view: thisComputer })
  say('open')
  for (let round = 0; ; round++) {
    const batch = Array.from({ length: (round % 3) + 1 }, (_, index) => ({
      entry: { type: 'test', round, index, note: round % 2 === 1 && index === 0 ? LONG : 'short' },
      at: AT,
    }))
    const stored = await journal.append(batch)
    say(stored.map((entry) => entry.seq).join('\n'))
  }
}

function hold(): void {
  try {
    openJournal(path)
    say('held')
  } catch (error) {
    say(error instanceof JournalProblem ? `refused ${error.code}` : String(error))
  }
  process.stdin.resume()
}

if (mode === 'hold') hold()
else await appendForEver(mode === 'pieces' ? inPieces : nodeFs)
