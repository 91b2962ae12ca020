import type { PlanRun } from '../../../views/drawings/floor-plan.tsx';
import { placeOnPath } from '../../../views/drawings/plan/path-parts.ts';
import type { UnitSystem } from '../../domain/model.ts';
import { type Length, METRE, UNITS_PER_MM } from '../../domain/units/length.ts';
import { type DxfDrawing, dxfDrawing, writeNotes } from './dxf-drawing.ts';

const MM: Length = UNITS_PER_MM;
const LETTER = 150 * MM;
/** How far a tap-off, a joint or a wall is drawn off the centre line. */
const AWAY = 200 * MM;

/** A level's plan in true size and true height: centre lines of the runs, what stands along them, and their names. */
export function planDxf(runs: readonly PlanRun[], units: UnitSystem, notes: readonly string[] = []): string {
  const drawing = dxfDrawing(units);
  for (const run of runs) drawRun(drawing, run);
  const left = Math.min(0, ...runs.flatMap((run) => run.path.map((point) => point.x)));
  const low = Math.min(0, ...runs.flatMap((run) => run.path.map((point) => point.y)));
  writeNotes(drawing, { x: left, y: low - 2 * METRE }, LETTER, notes);
  return drawing.file();
}

function drawRun(drawing: DxfDrawing, run: PlanRun): void {
  const [start] = run.path;
  if (start === undefined) return;
  for (const [index, point] of run.path.slice(1).entries()) drawing.line('Runs', run.path[index]!, point);
  drawing.circle('Feeds', start, AWAY / 2);
  drawing.text('Names', { ...start, y: start.y + AWAY }, LETTER, run.id);
  for (const piece of (run.pieces ?? []).slice(1)) across(drawing, run, 'Joints', piece.from, -AWAY / 2, AWAY / 2);
  (run.taps ?? []).forEach((at, index) => {
    const side = run.conductorSide === 'left' ? 1 : -1;
    across(drawing, run, 'Tap-offs', at, 0, side * AWAY);
    const place = besideRun(run, at, side * 1.5 * AWAY);
    if (place !== null) drawing.text('Tap-off marks', place, LETTER / 2, run.tapMarks?.[index] ?? '', place.turned);
  });
  for (const { at, thickness, kind } of run.crossings ?? []) {
    const layer = kind === 'fire-wall' ? 'Fire walls' : 'Walls';
    for (const face of [at - thickness / 2, at + thickness / 2])
      across(drawing, run, layer, face, -METRE / 2, METRE / 2);
  }
  if (run.structure?.kind !== 'grid') return;
  const end = run.path.at(-1)?.at ?? 0;
  for (let at = run.structure.offset; at <= end; at += run.structure.pitch)
    across(drawing, run, 'Structure', at, -METRE, METRE);
}

type Layer = Parameters<DxfDrawing['line']>[0];

/** A line square to the run, from so far to its right (negative) to so far to its left. */
function across(drawing: DxfDrawing, run: PlanRun, layer: Layer, at: Length, from: Length, to: Length): void {
  const [first, last] = [besideRun(run, at, from), besideRun(run, at, to)];
  if (first !== null && last !== null) drawing.line(layer, first, last);
}

function besideRun(run: PlanRun, at: Length, left: Length) {
  const place = placeOnPath(run.path, at);
  if (place === null || place.heading === null) return null;
  const square = place.heading + Math.PI / 2;
  const z = heightAt(run, at);
  const turned = (square * 180) / Math.PI;
  return { x: place.x + Math.cos(square) * left, y: place.y + Math.sin(square) * left, z, turned };
}

function heightAt({ path }: PlanRun, at: Length): Length {
  return (path.findLast((point) => point.at <= at) ?? path[0])?.z ?? 0;
}
