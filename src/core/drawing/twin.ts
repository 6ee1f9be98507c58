// The ASCII twin of a picture: every box sign has one ASCII sign, so the two always have the same shape.
const TWINS: Readonly<Record<string, string>> = {
  ...signsAs('-', '─╴╶'),
  ...signsAs('=', '═━'),
  ...signsAs('|', '│║╷'),
  ...signsAs('+', '┌┐└┘├┤┬┴┼╔╗╚╝╞╡╤╧╥╨╪╫╓╙'),
  ...signsAs('.', '╭╮'),
  ...signsAs("'", '╰╯'),
}

function signsAs(ascii: string, box: string): Record<string, string> {
  return Object.fromEntries([...box].map((sign) => [sign, ascii]))
}

/** The lines in the signs asked for. A sign without a twin is a bug of whoever drew it, and throws. */
export function inSigns(lines: readonly string[], ascii: boolean): string[] {
  return ascii ? lines.map((line) => line.replace(/[^ -~]/gu, twinOf)) : [...lines]
}

function twinOf(sign: string): string {
  const twin = TWINS[sign]
  if (twin === undefined) throw new Error(`no ASCII twin for '${sign}'`)
  return twin
}
