// The jobs an instrument read on, what of it stands and what would fall. It reads only.

import { replay } from '../app/replay.ts'
import type { RecordKind } from '../core/job/definitions.ts'
import { layOut, plainText, row } from '../core/sheet/block.ts'
import { standingOf } from '../core/talk/standing.ts'
import { entriesRead, type WouldFall, wouldFall, wouldFallLines } from '../core/talk/would-fall.ts'
import type { JobFile } from '../node/job-folder.ts'
import { readSound } from '../node/job-store.ts'
import { behindText } from '../node/journal/examine.ts'
import { UserError } from '../node/user-error.ts'
import type { Values } from './args.ts'
import { asCalled } from './called.ts'
import { EXIT } from './exit.ts'
import { definitionsIn } from './left-lines.ts'
import { print, sheetStyle } from './terminal.ts'

interface Listed {
  readonly job: string
  readonly record: RecordKind
  readonly path: string
  /** Null where none of its log can be read; of a damaged one, those before the break. */
  readonly readings: number | null
  readonly falls: WouldFall | null
  readonly standing: string
  readonly isDamaged: boolean
}

/** A log that cannot be read whole may hold more readings of it, so it is named, and the exit code says so. */
export function listDoubted(
  files: readonly JobFile[],
  instrument: string,
  folder: string,
  values: Values,
): number {
  const found = files.flatMap((file) => look(file, instrument))
  if (values.json === true) print(JSON.stringify(found))
  else if (found.length === 0)
    print(
      files.length === 0
        ? `No jobs in ${folder}.`
        : `No job in ${folder} has readings by ${instrument}: looked through ${files.length}.`,
    )
  else for (const one of found) tell(one, instrument, values)
  return found.some((one) => one.isDamaged) ? EXIT.fileProblem : EXIT.done
}

function look(file: JobFile, instrument: string): Listed[] {
  const base = { job: file.id, record: file.record, path: file.path }
  try {
    const { entries, fault } = readSound(file.path)
    const { state } = replay(entries)
    const readings = entriesRead(entries, instrument).length
    if (readings === 0 && fault === null) return []
    const defs = definitionsIn(entries)
    return [
      {
        ...base,
        readings,
        falls: defs === null ? null : wouldFall(defs, state, entries, instrument),
        standing:
          fault === null ? standingOf(state) : `DAMAGED at line ${fault.line}. ${behindText(fault.behind)}`,
        isDamaged: fault !== null,
      },
    ]
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    const standing = asCalled('DAMAGED: not a line can be read. barover verify says what could be checked')
    return [{ ...base, readings: null, falls: null, standing, isDamaged: true }]
  }
}

function tell(
  { record, job, readings, falls, standing, isDamaged }: Listed,
  instrument: string,
  values: Values,
) {
  // An id is to be copied: nothing breaks it but the edge of the screen.
  print(`${record.padEnd(8)}  ${job}`)
  const lines = [
    standing,
    ...(readings === null ? [`Readings by ${instrument}: not known`] : []),
    ...(falls !== null
      ? wouldFallLines(falls, instrument)
      : readings === null
        ? []
        : [
            `${readings} readings by ${instrument}; what rests on them is not known: its files are not taken`,
          ]),
    ...(isDamaged && readings !== null ? ['Only the lines before the break were looked through.'] : []),
  ]
  print(plainText(layOut({ margin: '', rows: lines.map((line) => row(line)) }, sheetStyle(values, record))))
}
