import { canonicalJson } from '../../domain/canonical-json.ts';
import type { JobDocument } from '../job-document.ts';

/** What of a document a step changed: the job's head, or one level, type or run by its name. */
export interface StepPart {
  readonly noun: 'job' | 'level' | 'type' | 'run';
  readonly name: string;
  /** Whether the thing was there before and after. */
  readonly was: boolean;
  readonly is: boolean;
  /** The entries that differ, as they were; an entry that was absent is left out. */
  readonly before: Readonly<Record<string, unknown>>;
  /** The same entries afterwards, each as its mark: enough to see that nobody has changed it since. null: absent. */
  readonly after: Readonly<Record<string, string | null>>;
}

type Mark = (text: string) => string;
type Entries = Readonly<Record<string, unknown>>;

const LISTS = [
  ['level', 'levels'],
  ['type', 'buswayTypes'],
  ['run', 'runs'],
] as const;

/** Only what differs between two documents, entry by entry, so that a step of many runs stays small. */
export function stepParts(before: JobDocument, after: JobDocument, mark: Mark): StepPart[] {
  const lists = LISTS.flatMap(([noun, list]) => {
    const old = new Map(before[list].map((item): [string, Entries] => [item.id, { ...item }]));
    const now = new Map(after[list].map((item): [string, Entries] => [item.id, { ...item }]));
    return [...new Set([...old.keys(), ...now.keys()])].flatMap((name) =>
      partOf(noun, name, old.get(name) ?? null, now.get(name) ?? null, mark),
    );
  });
  return [...partOf('job', '', headOf(before), headOf(after), mark), ...lists];
}

function partOf(
  noun: StepPart['noun'],
  name: string,
  old: Entries | null,
  now: Entries | null,
  mark: Mark,
): StepPart[] {
  const keys = [...new Set([...Object.keys(old ?? {}), ...Object.keys(now ?? {})])];
  const differing = keys.filter((key) => !isSame(old?.[key], now?.[key]));
  if (differing.length === 0) return [];
  const before = differing.filter((key) => old?.[key] !== undefined).map((key) => [key, old?.[key]]);
  const after = differing.map((key) => [key, marked(now?.[key], mark)]);
  return [
    {
      noun,
      name,
      was: old !== null,
      is: now !== null,
      before: Object.fromEntries(before),
      after: Object.fromEntries(after),
    },
  ];
}

export type TakenBack =
  | { readonly ok: true; readonly document: JobDocument }
  /** Things that are not as the step left them. */
  | { readonly ok: false; readonly differing: readonly StepPart[] };

/** The document with a step taken back. What came back stands at the end of its list. */
export function takeBack(document: JobDocument, parts: readonly StepPart[], mark: Mark): TakenBack {
  const differing = parts.filter((part) => !isAsLeft(entriesOf(document, part), part, mark));
  if (differing.length > 0) return { ok: false, differing };
  const head = parts.find((part) => part.noun === 'job');
  const restored: Record<string, unknown> = { ...(head === undefined ? document : merged({ ...document }, head)) };
  for (const [noun, list] of LISTS) {
    const own = new Map(parts.filter((part) => part.noun === noun).map((part) => [part.name, part]));
    const stays = document[list].flatMap((item): Entries[] => {
      const part = own.get(item.id);
      own.delete(item.id);
      if (part === undefined) return [{ ...item }];
      return part.was ? [merged({ ...item }, part)] : [];
    });
    restored[list] = [...stays, ...[...own.values()].filter((part) => part.was).map((part) => part.before)];
  }
  // Checked whole by whoever saves it, like any other change of a design.
  return { ok: true, document: restored as unknown as JobDocument };
}

function entriesOf(document: JobDocument, { noun, name }: StepPart): Entries | null {
  if (noun === 'job') return headOf(document);
  const [, list] = LISTS.find(([of]) => of === noun)!;
  const found = document[list].find((item) => item.id === name);
  return found === undefined ? null : { ...found };
}

function isAsLeft(now: Entries | null, part: StepPart, mark: Mark): boolean {
  if ((now !== null) !== part.is) return false;
  return Object.entries(part.after).every(([key, left]) => marked(now?.[key], mark) === left);
}

function merged(entries: Entries, { before, after }: StepPart): Entries {
  const kept = Object.entries(entries).filter(([key]) => !(key in after));
  return { ...Object.fromEntries(kept), ...before };
}

/** What stands beside the lists: project, extras, labour book, bid. */
function headOf({ levels: _l, buswayTypes: _t, runs: _r, ...head }: JobDocument): Entries {
  return head;
}

/** Most values are written alike; only what is not is put in order first. */
function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined) return false;
  return JSON.stringify(a) === JSON.stringify(b) || canonicalJson(a) === canonicalJson(b);
}

function marked(value: unknown, mark: Mark): string | null {
  return value === undefined ? null : mark(canonicalJson(value));
}
