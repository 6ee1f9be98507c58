// Text into markup, so that none of it is ever markup itself.

const SIGNS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** For text and for attributes in quotes. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign)
}

/** For a string in a style sheet: whatever is no plain sign is written as its code, which no browser takes for anything else. */
export function styleString(text: string): string {
  return `"${[...text].map((sign) => (/^[\w .,:/-]$/.test(sign) ? sign : `\\${sign.codePointAt(0)?.toString(16) ?? '3f'} `)).join('')}"`
}

/** An id in a page: of letters, figures and dashes alone. */
export function plainId(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]+/g, '-')
}
