import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { refusalWords } from '../../views/words/quality.ts';
import { type RecordRefused, type Refusal, Refused } from '../actions/refused.ts';
import { type Fault, formatPath } from '../document/fault.ts';

/** RFC 9457 problem details, with every faulty field at once in `errors`. */
export const problemSchema = z
  .object({
    type: z.string().describe('Names the kind of problem; stable.'),
    title: z.string(),
    status: z.number().int(),
    detail: z.string().describe('What is wrong and what to do.'),
    instance: z.string().optional(),
    errors: z
      .array(z.object({ path: z.string(), message: z.string(), remedy: z.string() }))
      .optional()
      .describe('Every faulty field, each with a remedy.'),
    current: z.unknown().optional().describe('What stands in the record now.'),
    currentVersion: z.number().int().optional(),
    reason: z.string().optional().describe('Of a record of the floor: the rule that refuses it; stable.'),
    remedy: z.string().optional().describe('Of a record of the floor: what to do.'),
    requestId: z.string().optional(),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof problemSchema>;

interface Told {
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly errors?: readonly Fault[];
  readonly current?: unknown;
  readonly currentVersion?: number;
  readonly reason?: string;
  readonly remedy?: string;
}

/** The one table from a refusal to a status and its words. */
export function tell(refusal: Refusal): Told {
  switch (refusal.code) {
    case 'signed-out':
      return {
        status: 401,
        title: 'Sign in first',
        detail: 'This needs an account: sign in, or send a token as "Authorization: Bearer …".',
      };
    case 'wrong-login':
      return {
        status: 401,
        title: 'Not signed in',
        detail:
          'Address and password do not match an open account. Check both, or ask an administrator for a new link.',
      };
    case 'too-many':
      return {
        status: 429,
        title: 'Too many tries',
        detail: `Too many tries to sign in. Wait ${refusal.minutes} min, or ask an administrator for a new link.`,
      };
    case 'forbidden':
      return {
        status: 403,
        title: 'Not yours to do',
        detail: `Your role in this job does not include "${refusal.needs}". Ask the office or an administrator.`,
      };
    case 'forged':
      return {
        status: 403,
        title: 'Form out of date',
        detail:
          'The form did not carry this session’s token. Load the page again and send it once more; nothing was changed.',
      };
    case 'not-found':
      return {
        status: 404,
        title: 'Not found',
        detail: `There is no such ${refusal.what}, or it is not in a job of yours.`,
      };
    case 'used-link':
      return {
        status: 410,
        title: 'Link used or expired',
        detail: 'This one-time link was used already or is too old. Ask an administrator for a new one.',
      };
    case 'stale':
      return {
        status: 412,
        title: 'Somebody changed this meanwhile',
        detail: `You worked on an older reading; version ${refusal.version} stands now and is given as "current". Compare, then send your change again with If-Match: "${refusal.version}". Nothing of yours was written.`,
        current: refusal.current,
        currentVersion: refusal.version,
      };
    case 'version-needed':
      return {
        status: 428,
        title: 'Say which reading you changed',
        detail: 'Send If-Match with the ETag you read, so that nobody’s newer change is overwritten.',
      };
    case 'duplicate':
      return {
        status: 409,
        title: 'Already there',
        detail: `There is already a ${refusal.what} with ${refusal.field} "${refusal.value}". Choose another, or change the one that exists.`,
        errors: [{ path: refusal.field, message: `"${refusal.value}" is taken`, remedy: 'Choose another.' }],
      };
    case 'in-use':
      return {
        status: 409,
        title: 'In use',
        detail: `This ${refusal.what} is used by ${refusal.by}. Change that first.`,
      };
    case 'key-reused':
      return {
        status: 422,
        title: 'Key used before',
        detail: 'This idempotency key was sent before with another request. Use a new key for a new request.',
      };
    case 'invalid':
      return { status: 422, title: 'Not taken', detail: describe(refusal.faults), errors: refusal.faults };
    case 'not-releasable':
      return { status: 409, title: 'Not ready for the floor', detail: refusal.reasons.join(' ') };
    case 'work-refused':
      return { status: 409, title: refusal.what, detail: [refusal.number, refusal.remedy].filter(Boolean).join(' ') };
    case 'record-refused':
      return tellRecord(refusal);
  }
}

function tellRecord({ refusal, say, current, version }: RecordRefused): Told {
  const { what, number, remedy } = refusalWords(refusal, say);
  return {
    status: refusal.code === 'record.stale' ? 412 : 409,
    title: 'Not recorded',
    detail: [what, number === null ? null : sentence(number), remedy].filter(Boolean).join(' '),
    reason: refusal.code,
    remedy,
    ...(current === undefined ? {} : { current }),
    ...(version === undefined ? {} : { currentVersion: version }),
  };
}

function sentence(number: string): string {
  const first = number.charAt(0).toUpperCase() + number.slice(1);
  return /[.!?]$/.test(first) ? first : `${first}.`;
}

function describe(faults: readonly Fault[]): string {
  const first = faults[0];
  if (first === undefined) return 'Nothing was written.';
  const more = faults.length > 1 ? ` And ${faults.length - 1} more.` : '';
  return `${first.path === '' ? '' : `${first.path}: `}${first.message} ${first.remedy}${more} Nothing was written.`;
}

/** Any error to a problem. A fault of ours tells nothing but its request id. */
export function problemOf(error: unknown, requestId: string, instance: string): Problem {
  if (error instanceof Refused) {
    const { status, title, detail, errors, current, currentVersion, reason, remedy } = tell(error.refusal);
    return {
      type: `/problems/${error.refusal.code}`,
      title,
      status,
      detail,
      instance,
      ...(errors === undefined ? {} : { errors: [...errors] }),
      ...(current === undefined ? {} : { current }),
      ...(currentVersion === undefined ? {} : { currentVersion }),
      ...(reason === undefined ? {} : { reason }),
      ...(remedy === undefined ? {} : { remedy }),
    };
  }
  if (hasZodFastifySchemaValidationErrors(error))
    return problemOf(new Refused({ code: 'invalid', faults: requestFaults(error.validation) }), requestId, instance);
  const status = statusOf(error);
  if (status >= 400 && status < 500) return clientProblem(error, status, instance);
  return {
    type: '/problems/fault',
    title: 'Our fault',
    status: status === 503 ? 503 : 500,
    instance,
    requestId,
    detail: `Something went wrong on our side and nothing was written. Tell an administrator this number: ${requestId}.`,
  };
}

function statusOf(error: unknown): number {
  const status = error instanceof Error && 'statusCode' in error ? error.statusCode : 500;
  return typeof status === 'number' ? status : 500;
}

function clientProblem(error: unknown, status: number, instance: string): Problem {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('FST_CSRF')) return problemOf(new Refused({ code: 'forged' }), '', instance);
  if (status === 429)
    return {
      type: '/problems/too-many',
      title: 'Too many tries',
      status,
      instance,
      detail: error instanceof Error ? error.message : 'Wait a minute and try again.',
    };
  if (status === 413)
    return {
      type: '/problems/too-large',
      title: 'Too large',
      status,
      instance,
      detail: 'The request is larger than is taken here. Send it in parts.',
    };
  return {
    type: '/problems/request',
    title: 'Request not understood',
    status,
    instance,
    detail: `${error instanceof Error ? error.message : 'The request could not be read'}. Nothing was written.`,
  };
}

function requestFaults(
  issues: readonly { readonly instancePath: string; readonly message?: string | undefined }[],
): Fault[] {
  return issues.map((issue) => ({
    path: formatPath(
      issue.instancePath
        .split('/')
        .filter(Boolean)
        .map((part) => (/^\d+$/.test(part) ? Number(part) : part)),
    ),
    message: `${issue.message ?? 'not as expected'}.`,
    remedy: 'Correct this field and send again.',
  }));
}
