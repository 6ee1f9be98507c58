// Columns and rows of the terminal, followed as it is resized.
import process from 'node:process'
import { createContext, useContext, useEffect, useState } from 'react'

export interface TerminalSize {
  readonly columns: number
  readonly rows: number
}

/** The terminal itself; the renderer's own copy of it says nothing true about its height. */
export const TerminalContext = createContext<NodeJS.WriteStream>(process.stdout)

export function useTerminalSize(): TerminalSize {
  const terminal = useContext(TerminalContext)
  const [size, setSize] = useState(() => sizeOf(terminal))
  useEffect(() => {
    const follow = () => setSize(sizeOf(terminal))
    // It may have been resized between the first frame and now.
    follow()
    terminal.on('resize', follow)
    return () => {
      terminal.off('resize', follow)
    }
  }, [terminal])
  return size
}

function sizeOf(terminal: NodeJS.WriteStream): TerminalSize {
  return { columns: terminal.columns || 80, rows: terminal.rows || 24 }
}
