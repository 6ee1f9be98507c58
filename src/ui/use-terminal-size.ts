// Columns and rows of the terminal, followed as it is resized.
import { useStdout } from 'ink'
import { useEffect, useState } from 'react'

export interface TerminalSize {
  readonly columns: number
  readonly rows: number
}

export function useTerminalSize(): TerminalSize {
  const { stdout } = useStdout()
  const read = (): TerminalSize => ({ columns: stdout.columns || 80, rows: stdout.rows || 24 })
  const [size, setSize] = useState(read)
  useEffect(() => {
    const follow = () => setSize({ columns: stdout.columns || 80, rows: stdout.rows || 24 })
    stdout.on('resize', follow)
    return () => {
      stdout.off('resize', follow)
    }
  }, [stdout])
  return size
}
