// What this computer can tell about a process named in a lock: is it there, and is it the same one that wrote the lock?
import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'

export interface ProcessView {
  readonly pid: number
  readonly host: string
  isAlive(pid: number): boolean
  /** A text that is different for a later process with the same pid; null where the system does not tell. */
  startOf(pid: number): string | null
}

/**
 * On Linux a process is known by its boot id and its start time in clock ticks since boot (proc_pid_stat(5), field
 * 22), so a pid given out again after a crash or a restart is not taken for the old writer. Other systems get null:
 * there a reused pid looks alive, and the lock is refused until a person deletes it. That is the safe side.
 */
export const thisComputer: ProcessView = {
  pid: process.pid,
  host: hostname(),
  isAlive: (pid) => {
    try {
      process.kill(pid, 0)
    } catch (error) {
      // Only "no such process" proves death; "not permitted" means it lives under another user.
      return (error as NodeJS.ErrnoException).code !== 'ESRCH'
    }
    // A zombie still answers but has closed its files and will never write again.
    const state = statFields(pid)?.[0]
    return state !== 'Z' && state !== 'X'
  },
  startOf: (pid) => {
    const ticks = statFields(pid)?.[19]
    const boot = readText('/proc/sys/kernel/random/boot_id')
    return ticks === undefined || boot === null ? null : `${boot.trim()} ${ticks}`
  },
}

/** Fields of /proc/<pid>/stat from the third (state) on; the second is a name that may hold spaces and brackets. */
function statFields(pid: number): string[] | null {
  if (process.platform !== 'linux') return null
  const text = readText(`/proc/${pid}/stat`)
  return text === null ? null : text.slice(text.lastIndexOf(')') + 2).split(' ')
}

function readText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}
