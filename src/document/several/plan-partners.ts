import { z } from 'zod';
import type { Fault } from '../fault.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import { coordinateMm } from '../schema/fields.ts';
import { landings } from './landings.ts';
import { type MirrorLine, mirroredRun, turnedOver } from './mirrored-run.ts';
import { filled, type NewPlace, newId, otherSide } from './naming.ts';
import { type MadeRun, MOST_MADE, type SeveralPlan } from './plan.ts';
import { absentFaults, cut, fault, nameFaults, namingFaults } from './plan-faults.ts';
import { shiftedRun, tidyMm } from './shifted-run.ts';
import { chosenRuns, parentOf } from './with-branches.ts';

const waySchema = z.discriminatedUnion('kind', [
  z
    .strictObject({ kind: z.literal('x'), atMm: coordinateMm('The line, mm east of the origin') })
    .describe('Mirror image over a line north to south'),
  z
    .strictObject({ kind: z.literal('y'), atMm: coordinateMm('The line, mm north of the origin') })
    .describe('Mirror image over a line east to west'),
  z
    .strictObject({
      kind: z.literal('axis'),
      side: z.enum(['left', 'right']),
      awayMm: coordinateMm('From the run to the axis of its row, mm'),
    })
    .describe('Mirror image over the axis of the row, along the first leg of each run'),
  z
    .strictObject({ kind: z.literal('beside'), xMm: coordinateMm('East, mm'), yMm: coordinateMm('North, mm') })
    .describe('The same course beside it, turned over: inside elbows become outside ones'),
]);

export const partnersAskedSchema = z
  .strictObject({
    runs: z.array(z.string()).max(MOST_MADE).describe('Runs of one feed side that have no partner yet.'),
    way: waySchema,
    names: z.string().max(200).nullable().default(null).describe('Naming; null: the letter of the side is changed.'),
    supply: z
      .string()
      .max(200)
      .nullable()
      .default(null)
      .describe('What feeds the partners, as a naming; null: likewise.'),
    taps: z.boolean().default(true).describe('The partners get tap-offs for the same equipment.'),
    pairTaps: z.boolean().default(true).describe('Tap-offs without a pair label get one, on both sides.'),
    branches: z.boolean().default(true).describe('Branches of the runs come along.'),
  })
  .meta({ id: 'RunPartners' });
export type PartnersAsked = z.infer<typeof partnersAskedSchema>;

/**
 * The partners of runs on the other feed side, and the runs as they stand once they name their partner. `taken` and `job` as
 * for copies.
 */
export function planPartners(job: JobDocument, taken: ReadonlySet<string>, asked: PartnersAsked): SeveralPlan {
  const chosen = chosenRuns(job.runs, asked.runs, asked.branches);
  const early = [...absentFaults(asked.runs, taken), ...askedFaults(job, chosen, asked)];
  if (early.length > 0) return { ok: false, faults: early };
  const labelled = asked.taps && asked.pairTaps ? chosen.map(withPairLabels) : chosen;
  const ids = new Map(labelled.map((run) => [run.id, newId(run, placeOf(run), asked.names)]));
  const unnamed = labelled.filter((run) => ids.get(run.id) === run.id);
  if (unnamed.length > 0) return { ok: false, faults: cut(unnamed.map(unnamedFault)) };
  const made = labelled.map((run) => ({ run: partnerOf(run, job, ids, asked), from: run.id }));
  const late = nameFaults(made, taken);
  if (late.length > 0) return { ok: false, faults: late };
  const landed = landings(job, made).map(({ made: { run, from }, on }) =>
    fault(
      wayField(asked),
      `${run.id}, the partner of ${from}, would lie in ${on}.`,
      'Choose a line farther away, or move the run that is there.',
    ),
  );
  if (landed.length > 0) return { ok: false, faults: cut(landed) };
  const changed = labelled.map((run) => ({ ...run, pairedRun: ids.get(run.id) ?? run.id }));
  return { ok: true, made, changed, notes: notesOn(made, asked) };
}

function placeOf(run: RunDocument): NewPlace {
  return { level: run.level, rowsOn: 0, side: run.side === 'A' ? 'B' : 'A' };
}

function partnerOf(
  run: RunDocument,
  job: JobDocument,
  ids: ReadonlyMap<string, string>,
  asked: PartnersAsked,
): RunDocument {
  const { taps, ...rest } = placed(run, job, asked);
  return {
    ...rest,
    id: ids.get(run.id) ?? run.id,
    side: placeOf(run).side,
    pairedRun: run.id,
    feed: feedOf(rest.feed, run, job, ids, asked.supply),
    ...(taps === undefined || !asked.taps ? {} : { taps }),
  };
}

/** The partner's course. Its tap-offs serve the same equipment, which stays where it stands. */
function placed(run: RunDocument, job: JobDocument, { way }: PartnersAsked): RunDocument {
  // What the floor put into the one says nothing about the other.
  const { taps, fieldHold: _held, ...bare } = run;
  const course = way.kind === 'beside' ? turnedOver(shiftedRun(bare, way)) : mirroredRun(bare, lineOf(run, job, way));
  return taps === undefined ? course : { ...course, taps };
}

function lineOf(
  run: RunDocument,
  job: JobDocument,
  way: Exclude<PartnersAsked['way'], { kind: 'beside' }>,
): MirrorLine {
  if (way.kind === 'x') return { xMm: way.atMm, yMm: 0, deg: 90 };
  if (way.kind === 'y') return { xMm: 0, yMm: way.atMm, deg: 0 };
  const root = rootOf(run, job);
  const deg = root.headingDeg ?? 0;
  const aside = ((deg + (way.side === 'left' ? 90 : -90)) * Math.PI) / 180;
  return {
    xMm: tidyMm((root.start?.xMm ?? 0) + way.awayMm * Math.cos(aside)),
    yMm: tidyMm((root.start?.yMm ?? 0) + way.awayMm * Math.sin(aside)),
    deg,
  };
}

/** The run at the head of a branch's tees. */
function rootOf(run: RunDocument, job: JobDocument): RunDocument {
  const parent = job.runs.find((other) => other.id === parentOf(run));
  return parent === undefined ? run : rootOf(parent, job);
}

function feedOf(
  feed: RunDocument['feed'],
  run: RunDocument,
  job: JobDocument,
  ids: ReadonlyMap<string, string>,
  pattern: string | null,
): RunDocument['feed'] {
  const place = placeOf(run);
  const parent = parentOf(run);
  const fromRun = parent === null ? null : (ids.get(parent) ?? partnerId(parent, job));
  const supply =
    pattern !== null && feed.kind !== 'tee'
      ? filled(pattern, run, place)
      : feed.supply === undefined
        ? undefined
        : otherSide(feed.supply, run.side ?? null, place.side);
  return { ...feed, ...(fromRun === null ? {} : { fromRun }), ...(supply === undefined ? {} : { supply }) };
}

function partnerId(id: string, job: JobDocument): string | null {
  const run = job.runs.find((other) => other.id === id);
  return run?.pairedRun ?? job.runs.find((other) => other.pairedRun === id)?.id ?? null;
}

/** Tap-offs that share their equipment with the partner's get one label; two for the same equipment get the same one. */
function withPairLabels(run: RunDocument): RunDocument {
  if (run.taps === undefined) return run;
  const first = new Map<string, string>();
  const taps = run.taps.map((tap) => {
    if (tap.pair !== undefined) return tap;
    const serves = tap.serves ?? '';
    const label = (serves === '' ? undefined : first.get(serves)) ?? `${run.id} ${tap.id}`;
    if (serves !== '') first.set(serves, label);
    return { ...tap, pair: label };
  });
  return { ...run, taps };
}

function askedFaults(job: JobDocument, chosen: readonly RunDocument[], asked: PartnersAsked): Fault[] {
  return [
    ...cut(chosen.flatMap((run) => sideFaults(run, job))),
    ...cut(chosen.flatMap((run) => branchFaults(run, job, chosen))),
    ...wayFaults(asked),
    ...namingFaults('names', asked.names),
    ...namingFaults('supply', asked.supply),
  ];
}

function sideFaults(run: RunDocument, job: JobDocument): Fault[] {
  if ((run.side ?? null) === null)
    return [fault('runs', `${run.id} has no feed side.`, 'Say on its own page whether it is A-side or B-side first.')];
  const partner = partnerId(run.id, job);
  if (partner === null) return [];
  const remedy = `Leave it out, or take the pair off both first.`;
  return [fault('runs', `${run.id} has a partner already, ${partner}.`, remedy)];
}

function branchFaults(run: RunDocument, job: JobDocument, chosen: readonly RunDocument[]): Fault[] {
  const parent = parentOf(run);
  if (parent === null || chosen.some((other) => other.id === parent) || partnerId(parent, job) !== null) return [];
  const remedy = `Tick ${parent} as well, or take ${run.id} out.`;
  return [fault('runs', `${run.id} is a branch of ${parent}, which has no partner to branch from.`, remedy)];
}

function wayFaults({ way }: PartnersAsked): Fault[] {
  const remedy = 'Give a distance, so that the two hang apart.';
  if (way.kind === 'axis' && way.awayMm < 0)
    return [fault('way.awayMm', 'A distance to the axis is not negative.', 'Choose the other side instead.')];
  if (way.kind === 'axis' && way.awayMm === 0)
    return [fault('way.awayMm', 'At 0 from the axis the partner would lie in the run itself.', remedy)];
  if (way.kind === 'beside' && way.xMm === 0 && way.yMm === 0)
    return [fault('way.xMm', 'With 0 east and 0 north the partner would lie in the run itself.', remedy)];
  return [];
}

function wayField({ way }: PartnersAsked): string {
  if (way.kind === 'axis') return 'way.awayMm';
  return way.kind === 'beside' ? 'way.xMm' : 'way.atMm';
}

function unnamedFault(run: RunDocument): Fault {
  return fault(
    'names',
    `No ${run.side} stands in ${run.id}, so its partner would have the same name.`,
    'Write a naming such as {run}-{side}.',
  );
}

function notesOn(made: readonly MadeRun[], { way, taps }: PartnersAsked): string[] {
  const turns = made.some(({ run }) => run.legs.some((leg) => leg.turn === 'left' || leg.turn === 'right'));
  const along = made.some(({ run }) => (run.crossings?.length ?? 0) + (run.noJoint?.length ?? 0) > 0);
  const zones = made.some(({ run }) => (run.noSupport?.length ?? 0) > 0);
  return [
    ...(turns && way.kind === 'beside' ? ['Corners keep their way: inside elbows become outside ones, and back.'] : []),
    ...(turns && way.kind !== 'beside'
      ? ['Left turns become right ones, so an inside elbow stays an inside elbow.']
      : []),
    ...(along || zones
      ? ['Walls and zones stand at the same distances as before: check them against the building.']
      : []),
    ...(taps ? [] : ['The partners have no tap-offs.']),
  ];
}
