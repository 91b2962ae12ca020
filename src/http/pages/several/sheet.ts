import type { FastifyReply, FastifyRequest } from 'fastify';
import type { ComponentChildren } from 'preact';
import { z } from 'zod';
import type { Context } from '../../../actions/context.ts';
import { jobHeading } from '../../../actions/job-heading.ts';
import { listRuns } from '../../../actions/runs.ts';
import { type Seen, seenSchema } from '../../../actions/several/seen.ts';
import { MOST_MADE } from '../../../document/several/plan.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { entered, type FormTrouble } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';

export const jobParams = z.object({ jobId: z.string() });

/** Which runs a form begins with: one, or all of a level. */
export const runsQuery = z.object({ run: z.string().max(64).optional(), level: z.string().max(64).optional() });

export function severalPath(jobId: string, what?: 'copies' | 'partners' | 'changes'): string {
  return `/jobs/${jobId}/runs/several${what === undefined ? '' : `/${what}`}`;
}

export async function firstRuns(
  context: Context,
  request: FastifyRequest,
  jobId: string,
  { run, level }: z.infer<typeof runsQuery>,
): Promise<readonly string[]> {
  if (run !== undefined) return [run];
  if (level === undefined) return [];
  const listed = await listRuns(context, viewerOf(request), jobId, { level, page: 1, limit: MOST_MADE });
  return listed.items.map((row) => row.key);
}

/** The versions that the preview carried; none of a form that was cut about. */
export function seenIn(request: FastifyRequest): Seen {
  try {
    return seenSchema.catch({}).parse(JSON.parse(entered(request).seen ?? '{}'));
  } catch {
    return {};
  }
}

export interface SeveralSheet {
  readonly title: string;
  readonly isRefused: boolean;
  readonly trouble: FormTrouble | undefined;
  readonly content: ComponentChildren;
}

/** A page about several runs, for those who may design. */
export async function sendSeveral(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  { title, isRefused, trouble, content }: SeveralSheet,
): Promise<FastifyReply> {
  const heading = await jobHeading(context, viewerOf(request), jobId, 'design');
  const isFaulty = trouble?.refusal.code === 'invalid';
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, { title, part: 'floors' }),
      status: trouble?.status ?? (isRefused ? 422 : 200),
      lede: 'Nothing is written before you have seen what will be.',
      trail: [
        { word: 'Jobs', href: '/jobs' },
        { word: heading.reached.number, href: `/jobs/${jobId}/floors` },
        { word: 'Several runs', href: severalPath(jobId) },
      ],
      ...(trouble === undefined || isFaulty ? {} : { flash: { kind: 'stop' as const, text: trouble.notice } }),
    },
    content,
  );
}
