// A terminal without a window: what was written to it, as a person would see it, and the raw bytes beside it.
import xterm from '@xterm/headless'

export interface Size {
  readonly cols: number
  readonly rows: number
}

/** The foot without the number of the sheet. */
const STANDS =
  /Gas (\d+ min old|lapsed|lapses \d)|Next lapse|Lapsed \d|Wait: |Wait is over|Hold point fallen|STOP open/

export class Screen {
  /** Everything ever written, escape sequences and all. */
  raw = ''
  readonly #term: InstanceType<typeof xterm.Terminal>
  #waiters: (() => void)[] = []

  constructor({ cols, rows }: Size) {
    this.#term = new xterm.Terminal({ cols, rows, scrollback: 5000, allowProposedApi: true })
  }

  write(data: string): void {
    this.raw += data
    this.#term.write(data, () => {
      for (const wake of this.#waiters.splice(0)) wake()
    })
  }

  resize({ cols, rows }: Size): void {
    this.#term.resize(cols, rows)
  }

  /** The lines in sight, without trailing spaces. */
  get lines(): string[] {
    return this.#from(this.#term.buffer.active.baseY)
  }

  get text(): string {
    return this.lines.join('\n')
  }

  /** The lines in sight and everything that scrolled out above them. */
  get all(): string {
    return this.#from(0).join('\n')
  }

  /** The words in sight as one run, without margin and right-hand column: it does not matter where lines broke. */
  get flow(): string {
    return this.#flowOf(this.lines)
  }

  /** The same of everything, also of what scrolled out above. */
  get wholeFlow(): string {
    return this.#flowOf(this.#from(0))
  }

  #flowOf(lines: readonly string[]): string {
    const words = (line: string) => line.replace(/^.*?[│|] ?/, '').replace(/ {2,}(by \w+ )?\d\d:\d\d$/, '')
    return lines.map((line) => words(line).trim()).join(' ')
  }

  /** The line being keyed: the one over the foot, without its margin; null when there is no foot in sight. */
  get input(): string | null {
    const { lines } = this
    const sheet = lines.findLastIndex((line) => /Sheet (\d+|-) of \d+/.test(line))
    // On a low terminal the number of the sheet gives way to what stands on time.
    const foot = sheet >= 0 ? sheet : lines.findLastIndex((line) => STANDS.test(line))
    const above = lines.slice(0, Math.max(0, foot)).filter((line) => !/[│|] [─-]{8,}$/.test(line))
    const line = above.at(-1)
    return foot < 0 || line === undefined ? null : line.replace(/^.*?[│|] ?/, '').trimEnd()
  }

  get isCursorShown(): boolean {
    return this.raw.lastIndexOf('\u001b[?25h') >= this.raw.lastIndexOf('\u001b[?25l')
  }

  get marksPastes(): boolean {
    return this.#term.modes.bracketedPasteMode
  }

  /** Times the scrollback was wiped. */
  get wipes(): number {
    return this.raw.split('\u001b[3J').length - 1
  }

  /** Waits, without ever sleeping blindly, until it holds; prints the screen when it does not in time. */
  async until(what: string, holds: () => boolean, withinMs = 10_000): Promise<void> {
    const end = performance.now() + withinMs
    while (!holds()) {
      if (performance.now() > end) throw new Error(`never saw ${what}; the screen was:\n${this.text}`)
      await new Promise<void>((resolve) => {
        // Woken by the next write; the timer is there for what changes without one.
        const timer = setTimeout(resolve, 50)
        this.#waiters.push(() => {
          clearTimeout(timer)
          resolve()
        })
      })
    }
  }

  see(text: string | RegExp, withinMs?: number): Promise<void> {
    const holds = () =>
      typeof text === 'string' ? `${this.text}\n${this.flow}`.includes(text) : text.test(this.text)
    return this.until(String(text), holds, withinMs)
  }

  #from(first: number): string[] {
    const buffer = this.#term.buffer.active
    const lines: string[] = []
    for (let y = first; y < buffer.length; y++)
      lines.push(buffer.getLine(y)?.translateToString(true).trimEnd() ?? '')
    return lines
  }
}
