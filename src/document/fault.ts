/** One thing in a document that a person must put right: where it stands, what is wrong with it, and what to do. */
export interface Fault {
  /** As in `runs[3].taps[2].atMm`; empty for the document itself. */
  readonly path: string;
  readonly message: string;
  readonly remedy: string;
}

export type PathPart = string | number;

/** Writes a path the way faults show it. `formatPath(['runs', 3, 'atMm']) = 'runs[3].atMm'`. */
export function formatPath(parts: readonly PathPart[]): string {
  return parts.map(writePart).join('').replace(/^\./, '');
}

const PLAIN_KEY = /^[A-Za-z_$][\w$]*$/;

function writePart(part: PathPart): string {
  if (typeof part === 'number') return `[${part}]`;
  return PLAIN_KEY.test(part) ? `.${part}` : `[${JSON.stringify(part)}]`;
}
