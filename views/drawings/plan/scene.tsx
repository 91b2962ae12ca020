import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import type { Inks } from '../ink.tsx';
import { type Box, tenth } from '../scale.ts';
import { clipLine, type Point } from './clip.ts';
import { facingArrows } from './facing-arrows.ts';
import { type NamePlace, placeNames } from './place-names.ts';
import { DrawnRun } from './plan-run.tsx';
import type { PlanRun } from './props.ts';
import { STRUCTURE_LETTER, structureLines } from './structure-lines.ts';
import { TAP_LETTER, tapMarks } from './tap-marks.ts';
import { LETTER, type View } from './view.ts';

export interface SceneProps {
  readonly runs: readonly PlanRun[];
  readonly view: View;
  readonly units: UnitSystem;
  readonly inks: Inks;
  readonly detailed?: boolean;
  readonly allAlike?: boolean;
}

/** Everything of a level that lies in the view: lines of the structure, runs with their names, marks of tap-offs. */
export function Scene({ runs, view, units, inks, detailed, allAlike }: SceneProps): JSX.Element {
  const seen = runs.flatMap((run) => {
    const lines = linesOf(run, view);
    return lines.length === 0 ? [] : [{ run, lines }];
  });
  const bands = seen.flatMap(({ lines }) => lines.map((line) => bandOf(line, view.band)));
  const names = placeNames(
    seen.filter(({ run }) => run.path.length > 1).map(({ run, lines }) => nameOf(run, lines)),
    LETTER,
    bands,
    view.sheet,
  );
  const named = new Map(names.map((name) => [name.text, name]));
  const drawn = seen.map(({ run }) => run);
  const arrows = drawn.flatMap((run) => facingArrows(run, view).map(({ box }) => box));
  const taken = [...bands, ...arrows, ...names.map((name) => name.box)];
  const marks = detailed ? tapMarks(drawn, view, taken) : [];
  const lines = detailed ? structureLines(drawn, view, units, roundAbout(bands, view.frame)) : [];
  return (
    <>
      {lines.length > 0 && (
        <path
          d={lines.map((line) => line.d).join('')}
          stroke={inks.ink}
          stroke-width={0.4}
          stroke-dasharray="10 3 2 3"
          fill="none"
        />
      )}
      {lines.map(
        ({ label }) =>
          label && (
            <text
              key={`${label.x} ${label.y}`}
              x={label.x}
              y={label.y}
              font-size={STRUCTURE_LETTER}
              text-anchor="middle"
              fill={inks.ink}
            >
              {label.text}
            </text>
          ),
      )}
      {seen.map(({ run }) => (
        <DrawnRun key={run.id} run={run} view={view} name={named.get(run.id)} inks={inks} allAlike={allAlike} />
      ))}
      {lines.length > 0 &&
        marks.map(({ box }) => (
          <rect
            key={`${box.x} ${box.y}`}
            x={tenth(box.x)}
            y={tenth(box.y)}
            width={tenth(box.width)}
            height={tenth(box.height)}
            fill={inks.ground}
          />
        ))}
      {marks.map(({ x, y, text, upright }) => (
        <text
          key={`${x} ${y}`}
          x={x}
          y={y}
          font-size={TAP_LETTER}
          transform={upright ? `rotate(-90 ${x} ${y})` : undefined}
          fill={inks.ink}
        >
          {text}
        </text>
      ))}
    </>
  );
}

type Line = readonly [Point, Point];

/** The legs of a run as far as they are in view; a riser is a line without length. */
function linesOf({ path }: PlanRun, view: View): Line[] {
  return path.slice(1).flatMap((point, index) => {
    const before = path[index]!;
    const line = clipLine([view.toX(before.x), view.toY(before.y)], [view.toX(point.x), view.toY(point.y)], view.frame);
    return line === null ? [] : [line];
  });
}

function nameOf(run: PlanRun, lines: readonly Line[]): NamePlace {
  return { text: run.id, start: lines[0]![0], end: lines.at(-1)![1] };
}

/** The room that a leg takes. */
function bandOf([[x1, y1], [x2, y2]]: Line, band: number): Box {
  return {
    x: Math.min(x1, x2) - band / 2,
    y: Math.min(y1, y2) - band / 2,
    width: Math.abs(x2 - x1) + band,
    height: Math.abs(y2 - y1) + band,
  };
}

/** The room that all of them take together, and some more for the ends of the structure's lines. */
function roundAbout(bands: readonly Box[], frame: Box): Box {
  const more = 34;
  const left = Math.max(frame.x, Math.min(...bands.map((band) => band.x)) - more);
  const top = Math.max(frame.y, Math.min(...bands.map((band) => band.y)) - more);
  const right = Math.min(frame.x + frame.width, Math.max(...bands.map((band) => band.x + band.width)) + more);
  const bottom = Math.min(frame.y + frame.height, Math.max(...bands.map((band) => band.y + band.height)) + more);
  return { x: left, y: top, width: right - left, height: bottom - top };
}
