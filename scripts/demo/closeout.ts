import { createWriteStream } from 'node:fs';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { type VerifiedCloseout, verifyCloseout } from '../../src/paper/verify-closeout.ts';
import type { Caller } from './caller.ts';
import { table } from './table.ts';

const readinessSchema = z.object({
  required: z.number(),
  present: z.number(),
  percent: z.number().nullable(),
  rows: z.array(
    z.object({ title: z.string(), required: z.number(), present: z.number(), percent: z.number().nullable() }),
  ),
  gaps: z.object({
    total: z.number(),
    items: z.array(z.object({ run: z.string().nullable(), mark: z.string(), words: z.string() })),
  }),
});

type Readiness = z.infer<typeof readinessSchema>;

/** What is asked and there, and every gap, page by page. */
export async function readReadiness(who: Caller, project: string) {
  const page = async (number: number): Promise<Readiness> =>
    readinessSchema.parse((await who.get(`${project}/closeout/readiness?limit=500&page=${number}`)).body);
  const ready = await page(1);
  const gaps = [...ready.gaps.items];
  for (let next = 2; gaps.length < ready.gaps.total; next += 1) gaps.push(...(await page(next)).gaps.items);
  return { ready, gaps };
}

export function readinessTable({ rows, required, present, percent }: Readiness): string {
  const lines = rows.map((row) => [
    row.title,
    row.present,
    row.required,
    row.percent === null ? '–' : `${row.percent} %`,
  ]);
  return table(
    ['asked', 'there', 'of', 'part'],
    [...lines, ['all', present, required, percent === null ? '–' : `${percent} %`]],
  );
}

/** Takes the package from the API into the folder and checks it as anybody could. */
export async function takeCloseout(
  who: Caller,
  project: string,
  folder: string,
): Promise<{ readonly file: string; readonly verified: VerifiedCloseout }> {
  const response = await who.fetch(`${project}/closeout`);
  const name = /filename="?([^";]+)"?/.exec(response.headers.get('content-disposition') ?? '')?.[1] ?? 'closeout.zip';
  const file = path.join(folder, path.basename(name));
  if (response.body === null) throw new Error('The closeout came without a body.');
  await pipeline(response.body, createWriteStream(file));
  return { file, verified: await verifyCloseout(file) };
}
