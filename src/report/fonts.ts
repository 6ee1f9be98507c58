// The fonts that go into a PDF: DejaVu, whose licence lets anybody embed and pass them on. Of each only the signs that are used go in.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

export interface Fonts {
  readonly sans: Buffer
  readonly bold: Buffer
  readonly mono: Buffer
}

/** @throws where the package of the fonts is not installed beside the program. */
export function readFonts(): Fonts {
  const { resolve } = createRequire(import.meta.url)
  const font = (name: string) => readFileSync(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))
  return { sans: font('DejaVuSans'), bold: font('DejaVuSans-Bold'), mono: font('DejaVuSansMono') }
}
