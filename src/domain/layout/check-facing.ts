import type { Finding } from '../finding.ts';
import type { Run, Side } from '../model.ts';
import { compass } from './facing.ts';
import { isVertical, tapDirection } from './frame.ts';
import { type RunGeometry, worldDirection } from './geometry.ts';
import type { PlacedFitting } from './place-fittings.ts';
import { listed, type Say } from './say.ts';

const SOURCE = 'orientation of the run: taps face the conductor side (common practice; the maker’s drawing decides)';

/** A stop when taps must face a side that they cannot, and a warning for a leg where the slot lies on its side. */
export function checkFacing(
  run: Run,
  geometry: RunGeometry,
  fittings: readonly PlacedFitting[],
  say: Say,
): readonly Finding[] {
  return [...wrongSides(run, geometry, fittings, say), ...rolledLegs(run, geometry)];
}

function wrongSides(run: Run, geometry: RunGeometry, fittings: readonly PlacedFitting[], say: Say): Finding[] {
  const wrong = run.legs.flatMap((leg, index) =>
    leg.tapsMustFace !== null && leg.tapsMustFace !== run.conductorSide ? [index] : [],
  );
  const first = wrong[0];
  if (first === undefined) return [];
  const right = run.legs.some((leg) => leg.tapsMustFace === run.conductorSide);
  const other: Side = run.conductorSide === 'left' ? 'right' : 'left';
  const legs = wrong.map((index) => `leg ${index + 1}${headingWords(run, geometry, index)}`);
  const message =
    `The conductors lie on the ${run.conductorSide}, so taps cannot face the ${other} as they must: ${legs.join('; ')}. ` +
    (right
      ? `Other legs of this run must face the ${run.conductorSide}, so no side serves all: split the run or free a leg. `
      : '') +
    `Putting the conductors on the ${other} turns the taps round${elbowWords(fittings, say)}.`;
  return [
    { rule: 'tap.facing', severity: 'stop', run: run.id, at: geometry.legs[first]?.from ?? 0, message, source: SOURCE },
  ];
}

function headingWords(run: Run, geometry: RunGeometry, index: number): string {
  const leg = geometry.legs[index];
  if (leg === undefined) return '';
  const towards = tapDirection(leg.frame, run.conductorSide);
  if (leg.vertical) return ` is vertical, taps face ${directionName(geometry, towards)}`;
  return ` heads ${directionName(geometry, leg.frame.heading)}, taps face ${directionName(geometry, towards)}`;
}

function directionName(geometry: RunGeometry, direction: readonly [number, number, number]): string {
  if (isVertical(direction)) return direction[2] > 0 ? 'up' : 'down';
  const { x, y } = worldDirection(geometry.axisDeg, direction);
  const degrees = compass((Math.atan2(y, x) * 180) / Math.PI);
  const names = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'];
  return names[Math.round(degrees / 45) % 8] ?? 'east';
}

/** Which elbows become other parts when the run changes sides. */
function elbowWords(fittings: readonly PlacedFitting[], say: Say): string {
  const changed = fittings
    .filter((fitting) => fitting.hand === 'inside' || fitting.hand === 'outside')
    .map((fitting) => {
      const becomes = fitting.hand === 'inside' ? 'outside' : 'inside';
      return `the elbow at ${say(fitting.at)} from ${fitting.hand} to ${becomes}`;
    });
  const tees = fittings.filter((fitting) => fitting.kind === 'tee' && fitting.hand !== null).length;
  const parts = tees === 0 ? changed : [...changed, `the hand of ${tees} tee${tees === 1 ? '' : 's'}`];
  return parts.length === 0 ? '' : `, and changes ${listed(parts)}: other parts to order`;
}

function rolledLegs(run: Run, geometry: RunGeometry): Finding[] {
  return geometry.legs.flatMap((leg, index) => {
    const towards = tapDirection(leg.frame, run.conductorSide);
    if (!isVertical(towards)) return [];
    const message =
      `Leg ${index + 1} lies on its side after the riser: its taps would face ${directionName(geometry, towards)}; ` +
      `check on the maker's drawing that this type may be mounted so.`;
    return [{ rule: 'tap.facing', severity: 'warning' as const, run: run.id, at: leg.from, message, source: SOURCE }];
  });
}
