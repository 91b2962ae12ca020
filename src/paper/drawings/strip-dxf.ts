import { thingsOf } from '../../../views/drawings/strip/things.ts';
import type { StripProps } from '../../../views/drawings/strip.tsx';
import { formatLength } from '../../domain/units/format-length.ts';
import { type Length, UNITS_PER_MM } from '../../domain/units/length.ts';
import { dxfDrawing, writeNotes } from './dxf-drawing.ts';

const MM: Length = UNITS_PER_MM;
const LETTER = 75 * MM;
const HALF = 60 * MM;
const ROD = 500 * MM;

/** A run's strip in true size along x, the feed at 0: pieces, joints, hangers, tap-offs and what it passes through. */
export function stripDxf(
  strip: Pick<StripProps, 'run' | 'layout' | 'record' | 'units'>,
  notes: readonly string[] = [],
): string {
  const { run, units } = strip;
  const drawing = dxfDrawing(units);
  const side = run.conductorSide === 'left' ? 1 : -1;
  for (const thing of thingsOf(strip)) {
    const { kind, from, to, mark } = thing;
    switch (kind) {
      case 'piece':
        for (const y of [-HALF, HALF]) drawing.line('Runs', { x: from, y }, { x: to, y });
        drawing.text(
          'Names',
          { x: (from + to) / 2, y: -4 * HALF },
          LETTER,
          `${mark} ${formatLength(to - from, units)}`,
        );
        break;
      case 'joint':
        drawing.line('Joints', { x: from, y: -2 * HALF }, { x: from, y: 2 * HALF });
        drawing.text('Names', { x: from, y: -7 * HALF }, LETTER, `${mark} ${formatLength(from, units)}`);
        break;
      case 'support':
        drawing.line('Hangers', { x: from, y: HALF }, { x: from, y: ROD });
        drawing.text('Hangers', { x: from, y: ROD + HALF }, LETTER, `${mark} ${formatLength(from, units)}`, 60);
        break;
      case 'tap':
        drawing.line('Tap-offs', { x: from, y: side * HALF }, { x: from, y: side * 3 * HALF });
        drawing.text('Tap-off marks', { x: from, y: side * 4 * HALF }, LETTER, mark, 90);
        break;
    }
  }
  for (const { at, thickness, kind } of run.crossings) {
    const layer = kind === 'fire-wall' ? 'Fire walls' : 'Walls';
    for (const x of [at - thickness / 2, at + thickness / 2]) drawing.line(layer, { x, y: -ROD }, { x, y: ROD });
  }
  writeNotes(drawing, { x: 0, y: -2 * ROD }, LETTER, notes);
  return drawing.file();
}
