import { type Fault, formatPath } from './fault.ts';
import { type ParsedJobDocument, parseJobDocument } from './parse-job-document.ts';
import { type JsonSlip, scanJson } from './parsing/scan-json.ts';

export type JsonText =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const BYTE_ORDER_MARK = '\uFEFF';

/** Reads a job document from a file's bytes or text; faults of syntax name their line and column. */
export function parseJobText(source: string | Uint8Array): ParsedJobDocument {
  const read = parseJsonText(source);
  return read.ok ? parseJobDocument(read.value) : read;
}

/** JSON text to a value. A byte order mark is passed over; a key that stands twice is refused. */
export function parseJsonText(source: string | Uint8Array): JsonText {
  const decoded = typeof source === 'string' ? source : decode(source);
  if (decoded === undefined) return refuse('The file is not text in UTF-8.', 'Save it as UTF-8 and send it again.');
  const text = decoded.startsWith(BYTE_ORDER_MARK) ? decoded.slice(1) : decoded;
  if (text.trim() === '') return refuse('The file is empty.', 'Choose the file that holds the job document.');
  const slips = scanJson(text);
  if (slips.length > 0) return { ok: false, faults: slips.map((slip) => toFault(text, slip)) };
  const value: unknown = JSON.parse(text);
  return { ok: true, value };
}

function decode(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function refuse(message: string, remedy: string): JsonText {
  return { ok: false, faults: [{ path: '', message, remedy }] };
}

function toFault(text: string, { at, path, message, remedy }: JsonSlip): Fault {
  const before = text.slice(0, at).split(/\r\n|\r|\n/);
  const column = (before.at(-1)?.length ?? 0) + 1;
  return { path: formatPath(path), message: `Line ${before.length}, column ${column}: ${message}`, remedy };
}
