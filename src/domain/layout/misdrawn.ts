import type { Finding } from '../finding.ts';
import type { Run } from '../model.ts';
import type { LayoutContext } from './context-for.ts';
import type { Fittings, PlacedFitting } from './place-fittings.ts';
import type { Say } from './say.ts';
import { sheetName } from './sheet-name.ts';
import type { Division, MisplacedFeed, Overlap } from './straight-parts.ts';

/** What is wrong with the run as drawn, before any section is chosen. */
export function misdrawn(
  run: Run,
  context: LayoutContext,
  fittings: Fittings,
  division: Division,
  say: Say,
): readonly Finding[] {
  const stop = (at: number | null, message: string): Finding => ({
    rule: 'section.no-cover',
    severity: 'stop',
    run: run.id,
    at,
    message,
    source: sheetName(context.type),
  });
  const missing = fittings.missing.map(({ kind, at, what }) =>
    stop(
      at,
      `At ${say(at)} ${what}, but ${context.type.id} lists no ${kind}: enter its leg length from the sheet, or choose another type.`,
    ),
  );
  const branch = branchFaults(run, context).map((message) => stop(0, message));
  const parted = divisionFault(division, say).map(({ at, message }) => stop(at, message));
  return [...missing, ...branch, ...parted, ...lastTurn(run)];
}

function lastTurn(run: Run): Finding[] {
  const turn = run.legs.at(-1)?.turn ?? 'none';
  if (turn === 'none') return [];
  const message = `The last leg turns ${turn} but no leg follows, so no elbow was placed: add the leg, or set its turn to none.`;
  return [{ rule: 'leg.last-turn', severity: 'warning', run: run.id, at: null, message, source: 'the run as drawn' }];
}

function branchFaults(run: Run, { parent }: LayoutContext): string[] {
  if (run.feed.kind !== 'tee') return [];
  const from = run.feed.fromRun === null ? 'no run' : `run ${run.feed.fromRun}`;
  if (parent === null)
    return [
      `This run is teed off ${from}, which is not there or is itself teed off this one: name a run that is fed otherwise.`,
    ];
  const faults: string[] = [];
  if (run.feed.at === null)
    faults.push(`This run is teed off ${from}, but not said where: enter the distance of the tee's centre.`);
  if (run.feed.branchSide === null)
    faults.push(`This run is teed off ${from}, but not said to which side: enter left or right.`);
  if (parent.type.tee === null) faults.push(`This run is teed off ${from}, whose type ${parent.type.id} lists no tee.`);
  return faults;
}

function divisionFault(division: Division, say: Say): { at: number; message: string }[] {
  switch (division.kind) {
    case 'parts':
      return [];
    case 'overlap':
      return [overlapFault(division.overlap, say)];
    case 'misplaced-feed':
      return [feedFault(division.feed, say)];
  }
}

function overlapFault({ before, after, at, short }: Overlap, say: Say): { at: number; message: string } {
  const start = before === null ? 'the start of the run' : fittingName(before, say);
  const end = after === null ? 'the end of the run' : fittingName(after, say);
  const message = `Between ${start} and ${end} there is ${say(short)} too little room for the fittings' legs: move them at least that far apart.`;
  return { at, message };
}

function feedFault({ feedAt, inside }: MisplacedFeed, say: Say): { at: number; message: string } {
  const where = inside === null ? 'not between the two ends of the run' : `inside ${fittingName(inside, say)}`;
  const to = inside === null ? 'a place between them' : `${say(inside.from)} or ${say(inside.to)}`;
  return { at: feedAt, message: `The centre feed at ${say(feedAt)} is ${where}: move it to ${to}.` };
}

function fittingName({ kind, at }: PlacedFitting, say: Say): string {
  return `the ${kind} at ${say(at)}`;
}
