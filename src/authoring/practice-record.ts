// A machine record as practice takes it: without what earlier overhauls left, as a hidden machine has a bore of its own, and every
// reading of it would be held against the wear of another.
import { parseDocument } from 'yaml'

/** Columns that a line of the record may take before it is broken. */
const WIDTH = 120

/** @throws where the text is no YAML document: it is read and checked by whoever calls. */
export function practiceRecord(record: string): string {
  const doc = parseDocument(record, { version: '1.2' })
  if (doc.errors.length > 0 || !doc.has('overhauls')) return record
  doc.delete('overhauls')
  return doc.toString({ lineWidth: WIDTH })
}
