import { z } from 'zod';
import { buswayTypeSchema, runSchema } from '../../src/document/job-document.ts';
import type { Caller } from './caller.ts';

/** What the floor of one run consists of, as the API lists it. */
const shared = { id: z.string(), mark: z.string(), version: z.number(), state: z.string() };
const sectionSchema = z.object(shared);
const jointSchema = z.object(shared);
const supportSchema = z.object(shared);
const tapSchema = z.object({ ...shared, key: z.string() });

export type FloorThing = z.infer<typeof sectionSchema>;
export type FloorTap = z.infer<typeof tapSchema>;

export interface FloorRun {
  readonly id: string;
  readonly key: string;
  readonly document: z.infer<typeof runSchema>;
  readonly lengthMm: number;
  readonly sections: readonly FloorThing[];
  readonly joints: readonly FloorThing[];
  readonly supports: readonly FloorThing[];
  readonly taps: readonly FloorTap[];
  /** The steps of a joint as the type's sheet orders them. */
  readonly steps: readonly string[];
}

const rowsSchema = z.object({ items: z.array(z.object({ id: z.string(), key: z.string() })), total: z.number() });

export async function listRuns(who: Caller, project: string): Promise<{ id: string; key: string }[]> {
  return rowsSchema.parse((await who.get(`${project}/runs?limit=500`)).body).items;
}

const runViewSchema = z.object({ document: runSchema, lengthMm: z.number() });

export async function readFloorRun(
  who: Caller,
  project: string,
  { id, key }: { id: string; key: string },
): Promise<FloorRun> {
  const view = runViewSchema.parse((await who.get(`${project}/runs/${id}`)).body);
  const things = async <T>(noun: string, row: z.ZodType<T>): Promise<T[]> => {
    const answer = await who.get(`${project}/${noun}?limit=500&run=${encodeURIComponent(key)}`);
    return z.object({ items: z.array(row) }).parse(answer.body).items;
  };
  return {
    id,
    key,
    document: view.document,
    lengthMm: view.lengthMm,
    sections: await things('sections', sectionSchema),
    joints: await things('joints', jointSchema),
    supports: await things('supports', supportSchema),
    taps: await things('taps', tapSchema),
    steps: await stepsOf(who, project, view.document.type),
  };
}

const typesSchema = z.object({ items: z.array(z.object({ document: buswayTypeSchema })) });

async function stepsOf(who: Caller, project: string, type: string): Promise<readonly string[]> {
  const { items } = typesSchema.parse((await who.get(`${project}/busway-types`)).body);
  return items.find(({ document }) => document.id === type)?.document.joint?.steps ?? [];
}
