import type { Finding } from '../finding.ts';
import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { LayoutContext } from './context-for.ts';
import { barAt, jointBars } from './joint-bars.ts';
import type { RunLayout } from './result.ts';
import { sayIn } from './say.ts';
import { sheetName } from './sheet-name.ts';

/**
 * A joint that somebody wants or finds at a distance, against what keeps joints away there; says the barred stretch and the
 * sections that the layout would use instead. Nothing to say of a joint that stands free, or exactly at a limit.
 */
export function judgeJoint(run: Run, context: LayoutContext, layout: RunLayout, at: Length): readonly Finding[] {
  const say = sayIn(context.project.units);
  const taps = run.taps.flatMap((tap) => {
    const placed = layout.taps.find((candidate) => candidate.id === tap.id);
    return placed === undefined ? [] : [{ tap, at: placed.at }];
  });
  const bar = barAt(jointBars(run, context.type, taps, say), at);
  if (bar === null) return [];
  const message =
    `Joint at ${say(at)} is within ${say(bar.from)} to ${say(bar.to)}, which ${bar.name} keeps free of joints. ` +
    instead(layout, at, say);
  return [{ rule: 'joint.in-crossing', severity: 'stop', run: run.id, at, message, source: sheetName(context.type) }];
}

/** The sections of the straight part that the joint lies in, as the layout has them. */
function instead(layout: RunLayout, at: Length, say: (length: Length) => string): string {
  if (!layout.ok) return 'No other sections hold either: see the stops of this run.';
  const isFitting = (index: number) => ['elbow', 'tee'].includes(layout.pieces[index]?.kind ?? 'elbow');
  const here = layout.pieces.findIndex((piece) => piece.from <= at && at <= piece.to);
  if (here < 0 || isFitting(here)) return 'Move the fitting or what bars the joint.';
  let [first, last] = [here, here];
  while (!isFitting(first - 1)) first--;
  while (!isFitting(last + 1)) last++;
  const sections = layout.pieces.slice(first, last + 1).map((piece) => say(piece.to - piece.from));
  return `Try ${sections.join(' / ')} from ${say(layout.pieces[first]?.from ?? 0)}.`;
}
