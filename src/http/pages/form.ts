import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { Submission } from '../../actions/once.ts';
import { type Refusal, Refused, refuse } from '../../actions/refused.ts';
import type { Fault } from '../../document/fault.ts';
import { tell } from '../problem.ts';
import { sayFault } from './say-fault.ts';

/** The fields of a posted form as text; files and repeated fields apart. */
export type Entered = Readonly<Record<string, string>>;

export function entered(request: FastifyRequest): Entered {
  const body = request.body;
  if (typeof body !== 'object' || body === null) return {};
  return Object.fromEntries(
    Object.entries(body).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  );
}

/** Every value of a field that may stand several times, as ticks do. */
export function enteredAll(request: FastifyRequest, name: string): readonly string[] {
  const body = request.body;
  if (typeof body !== 'object' || body === null || !(name in body)) return [];
  const value = (body as Record<string, unknown>)[name];
  return (Array.isArray(value) ? value : [value]).filter((one): one is string => typeof one === 'string');
}

/** A file that was sent along, or null when none was chosen. */
export function enteredFile(request: FastifyRequest, name: string): Uint8Array | null {
  const body = request.body;
  if (typeof body !== 'object' || body === null || !(name in body)) return null;
  const value = (body as Record<string, unknown>)[name];
  return value instanceof Uint8Array && value.length > 0 ? value : null;
}

/** The form's submission id: the same form sent twice makes one record. */
export function formSubmission(request: FastifyRequest): Submission | null {
  const { submissionId, _csrf, ...rest } = entered(request);
  return submissionId === undefined || submissionId === ''
    ? null
    : { key: submissionId, request: { url: request.url, ...rest } };
}

/** The version that the form was made from. */
export function formVersion(request: FastifyRequest): number {
  const version = Number(entered(request).version);
  return Number.isInteger(version) && version > 0 ? version : refuse({ code: 'version-needed' });
}

/** Checks a form by a schema; every faulty field is refused at once. */
export function readForm<T extends z.ZodType>(schema: T, fields: Entered): z.infer<T> {
  const { _csrf, submissionId: _id, version: _version, ...own } = fields;
  const parsed = schema.safeParse(own);
  if (parsed.success) return parsed.data;
  return refuse({
    code: 'invalid',
    faults: parsed.error.issues.map((issue) => ({
      path: issue.path.join('.'),
      message: sentence(issue.message),
      remedy: '',
    })),
  });
}

export interface FormTrouble {
  readonly refusal: Refusal;
  readonly status: number;
  readonly notice: string;
  readonly faults: readonly Fault[];
  /** What to say beside a field. */
  readonly faultOf: (name: string) => string | undefined;
}

/** Runs what a form asks for; a refusal comes back as words to show beside the entered text, a fault of ours goes on up. */
export async function attempt<T>(
  work: () => Promise<T>,
): Promise<{ ok: true; value: T } | { ok: false; trouble: FormTrouble }> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (!(error instanceof Refused) || error.refusal.code === 'signed-out') throw error;
    const told = tell(error.refusal);
    const faults = told.errors ?? [];
    const faultOf = (name: string) => {
      const found = faults.filter((fault) => fault.path === name);
      return found.length === 0 ? undefined : found.map((fault) => sayFault(fault, null)).join(' ');
    };
    return {
      ok: false,
      trouble: {
        refusal: error.refusal,
        status: told.status,
        notice: noticeOf(error.refusal, told.detail, faults.length),
        faults,
        faultOf,
      },
    };
  }
}

/** What a script is told of versions and of keys says nothing to a person at a form. */
function noticeOf(refusal: Refusal, detail: string, faults: number): string {
  if (refusal.code === 'invalid' && faults > 0)
    return `${faults === 1 ? 'One entry is' : `${faults} entries are`} to be put right: the words stand beside ${faults === 1 ? 'it' : 'them'}. Nothing was saved.`;
  if (refusal.code !== 'stale') return detail;
  return 'Somebody changed this while you did. Nothing of yours is written yet: what stands now is shown here; compare, then save again.';
}

function sentence(text: string): string {
  const first = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(first) ? first : `${first}.`;
}
