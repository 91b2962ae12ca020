import { render } from 'preact-render-to-string';
import { Strip, type StripProps, stripSheets } from '../../../views/drawings/strip.tsx';
import type { UnitSystem } from '../../domain/model.ts';
import type { RunDossier } from './dossier.ts';

/** Drawing units of a strip's width: on a landscape sheet its letters come out at 8 to 9 points. */
const WIDTH = 900;

/** The run's strip as built, as one SVG file. */
export function stripFile(dossier: RunDossier, units: UnitSystem): string {
  return `${render(Strip(propsOf(dossier, units)))}\n`;
}

/** The same in parts that fit a sheet whose height is `room` of its width. */
export function stripParts(dossier: RunDossier, units: UnitSystem, room: number): string[] {
  return stripSheets(propsOf(dossier, units), room * WIDTH).map((part) => render(part));
}

function propsOf(dossier: RunDossier, units: UnitSystem): StripProps {
  const { run, layout, pieces, joints, supports, taps } = dossier;
  const record = {
    pieces: pieces.map(({ mark, state }) => ({ mark, state })),
    joints: joints.map(({ mark, state }) => ({ mark, state })),
    supports: supports.map(({ mark, state }) => ({ mark, state })),
    taps: Object.fromEntries(taps.map(({ tap, state }) => [tap.id, { mark: tap.id, state }])),
  };
  return { run, layout, record, units, ink: 'paper', width: WIDTH };
}
