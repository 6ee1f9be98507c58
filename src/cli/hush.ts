// The terminal shows nothing of what is keyed before there is a screen to key on: a start takes a while, and what somebody keys
// ahead from habit may be a PIN. Raw mode is what Node offers for it, so Control-C waits until the screen reads it; whatever works
// long before that, or reads nothing, gives the terminal back first.
import process from 'node:process'

/** From now on, until something that reads the terminal sets it as it needs it. Nothing where no terminal is read. */
export function hush(): void {
  if (process.stdin.isTTY === true) process.stdin.setRawMode(true)
}

/** As it was. At every end of the program Node does so by itself. */
export function unhush(): void {
  if (process.stdin.isTTY === true && process.stdin.isRaw) process.stdin.setRawMode(false)
}

/** Commands that read the log of a job and then ask who signs: what is keyed ahead may be the PIN. */
const SIGNED: readonly string[] = ['adopt', 'remark', 'take-in']

/** Whether these arguments lead to something that a person keys on. */
export function asksPerson(args: readonly string[], isDrawn: boolean): boolean {
  const [name] = args
  const isOther = args.some((arg) => /^(?:--help|-h|--version|--answers(?:=.*)?|--json)$/.test(arg))
  if (isOther) return false
  // Without a command it is the choice of jobs on a terminal; elsewhere only what can be done is said.
  if (name === undefined || name.startsWith('-')) return isDrawn
  const has = (option: string) => args.some((arg) => arg === option || arg.startsWith(`${option}=`))
  if (name === 'review') return isDrawn && !has('--item') && !has('--plain')
  if (name === 'doubt') return has('--by')
  return name === 'run' || name === 'resume' || SIGNED.includes(name)
}

/** Whether a log is read before anything is asked or shown: that takes a while, and whoever waits is told. */
export function readsFirst([name = '']: readonly string[]): boolean {
  return name === 'review' || name === 'doubt' || SIGNED.includes(name)
}
