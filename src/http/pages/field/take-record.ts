import type { FastifyRequest } from 'fastify';
import type { FieldTrouble } from '../../../../views/pages/field/entries.ts';
import { beside } from '../../../../views/pages/field/told-text.ts';
import { refusalWords } from '../../../../views/words/quality.ts';
import type { Context } from '../../../actions/context.ts';
import { type FieldRecord, type FieldTaken, takeFieldRecord } from '../../../actions/field-records.ts';
import { Refused } from '../../../actions/refused.ts';
import type { QualityRefusal } from '../../../domain/quality/refusal.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { tell } from '../../problem.ts';
import { entered, enteredAll } from '../form.ts';
import type { FieldEntries } from './entries.ts';

/** A form of the floor that was not taken: what to say at the head, and beside its fields. */
export interface PageTrouble extends FieldTrouble {
  readonly status: number;
  readonly notice: string;
  /** The book's own refusal, where it was that. */
  readonly refusal: QualityRefusal | null;
}

export type Took =
  | { readonly ok: true; readonly taken: FieldTaken }
  | { readonly ok: false; readonly trouble: PageTrouble };

/** The field of a form that a refusal speaks of. */
export type BesideField = Partial<Record<QualityRefusal['code'], string>>;

export interface FormOf {
  /** As the view names it. */
  readonly form: string;
  readonly beside?: BesideField;
}

type Asked = Pick<FieldRecord, 'subject' | 'subjectId' | 'body'> & Partial<Pick<FieldRecord, 'supersedes'>>;

/** Puts one form into the book. Nothing is asked of the book while a field cannot be read. */
export async function takeRecordForm(
  context: Context,
  request: FastifyRequest,
  jobId: string,
  entries: FieldEntries,
  asked: Asked,
  form: FormOf,
): Promise<Took> {
  const supersedes = asked.supersedes ?? supersedesOf(entries);
  if (entries.faults.size > 0) return { ok: false, trouble: unread(request, entries, form.form) };
  try {
    const taken = await takeFieldRecord(context, viewerOf(request), jobId, {
      ...asked,
      supersedes,
      submissionId: entries.text('submissionId'),
      seenVersion: versionOf(entries),
      heldMs: heldMsOf(entries),
    });
    return { ok: true, taken };
  } catch (error) {
    return { ok: false, trouble: refused(request, error, form) };
  }
}

/** Unread fields, all at once. */
export function unread(request: FastifyRequest, { faults }: FieldEntries, form: string): PageTrouble {
  const [first] = faults.values();
  const more = faults.size > 1 ? ` And ${faults.size - 1} more.` : '';
  return troubleOf(request, form, 422, `${first ?? ''}${more} Nothing was recorded.`, (name) => faults.get(name));
}

/** A refusal of the book in words; any other error goes on up. */
export function refused(request: FastifyRequest, error: unknown, { form, beside: fields = {} }: FormOf): PageTrouble {
  if (!(error instanceof Refused) || error.refusal.code === 'signed-out') throw error;
  const { refusal } = error;
  const { status, detail } = tell(refusal);
  if (refusal.code !== 'record-refused') return troubleOf(request, form, status, detail, () => undefined);
  const field = fields[refusal.refusal.code];
  const told = refusalWords(refusal.refusal, refusal.say);
  const trouble =
    field === undefined
      ? troubleOf(request, form, status, detail, () => undefined)
      : troubleOf(request, form, status, told.what, (name) => (name === field ? beside(told) : undefined));
  return { ...trouble, refusal: refusal.refusal };
}

function troubleOf(
  request: FastifyRequest,
  form: string,
  status: number,
  notice: string,
  faultOf: (name: string) => string | undefined,
): PageTrouble {
  return { form, status, notice, refusal: null, faultOf, entered: (name) => enteredAll(request, name) };
}

function supersedesOf(entries: FieldEntries): FieldRecord['supersedes'] {
  const id = entries.text('supersedes');
  if (id === '') return null;
  const cause = entries.needed('cause', 'Say why the first record is wrong: it stays in the book beside this one.');
  if (cause !== '' && cause.length < 3) entries.fault('cause', 'Say it in a few words: three signs at least.');
  return { id, cause };
}

function versionOf(entries: FieldEntries): number | null {
  const version = Number(entries.text('version'));
  return Number.isInteger(version) && version > 0 ? version : null;
}

const MOST_HELD_MS = 60 * 24 * 3_600_000;

/** How long the phone kept the form; written by `assets/field.js` and by nothing else. */
export function heldMsOf(entries: Pick<FieldEntries, 'text'>): number {
  const held = Number(entries.text('heldMs') || '0');
  return Number.isFinite(held) && held > 0 ? Math.min(Math.round(held), MOST_HELD_MS) : 0;
}

/** Which of the page's forms this is. */
export function formDoes(request: FastifyRequest): string {
  return entered(request).do ?? '';
}
