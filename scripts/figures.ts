import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Fault } from '../src/document/fault.ts';
import { parseJobText } from '../src/document/parse-text.ts';
import { printFigures } from '../src/document/print-figures.ts';
import { toModel } from '../src/document/to-model.ts';
import { figures } from '../src/domain/figures.ts';

/**
 * `npm run -s figures -- FILE` prints the figures of one job document as one JSON object; `-` reads the document from
 * standard input. Exit 0 when computed, stops included; 2 when the command or the document is refused, with each fault's
 * path and remedy on standard error.
 */
const REFUSED = 2;
const USAGE = 'Give one file that holds a job document: npm run -s figures -- FILE (or - for standard input).';

interface Refusal {
  readonly refusal: string;
}

// A reader that has seen enough, such as head, closes the pipe: nothing is wrong then.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const answer = answerFor(process.argv.slice(2));
if ('refusal' in answer) {
  process.stderr.write(`${answer.refusal}\n`);
  process.exitCode = REFUSED;
} else {
  process.stdout.write(`${answer.json}\n`);
}

function answerFor(args: readonly string[]): { readonly json: string } | Refusal {
  const file = readArguments(args);
  if (typeof file !== 'string') return file;
  const bytes = readDocument(file);
  if ('refusal' in bytes) return bytes;
  const parsed = parseJobText(bytes);
  if (!parsed.ok) return { refusal: sayFaults(file, parsed.faults) };
  return { json: JSON.stringify(printFigures(figures(toModel(parsed.document))), null, 2) };
}

function readArguments(args: readonly string[]): string | Refusal {
  try {
    const { positionals } = parseArgs({ args: [...args], options: {}, allowPositionals: true });
    const [file, ...more] = positionals;
    if (file !== undefined && more.length === 0) return file;
    return { refusal: file === undefined ? USAGE : `${positionals.length} files were named. ${USAGE}` };
  } catch (error) {
    return { refusal: `${reasonOf(error)}. This command has no options. ${USAGE}` };
  }
}

function readDocument(file: string): Uint8Array | Refusal {
  try {
    return readFileSync(file === '-' ? 0 : file);
  } catch (error) {
    return { refusal: `${file} cannot be read (${reasonOf(error)}). ${USAGE}` };
  }
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message.split('. To specify')[0]! : String(error);
}

function sayFaults(file: string, faults: readonly Fault[]): string {
  const name = file === '-' ? 'The document' : file;
  const lines = faults.map(({ path, message, remedy }) => `${path || 'the document'}: ${message} ${remedy}`);
  return [`${name} is refused for ${faults.length === 1 ? 'one fault' : `${faults.length} faults`}:`, ...lines].join(
    '\n',
  );
}
