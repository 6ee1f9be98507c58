// The program's version, put in by the build from package.json.
declare const BAROVER_VERSION: string | undefined

export const VERSION = typeof BAROVER_VERSION === 'string' ? BAROVER_VERSION : '0.0.0-source'
