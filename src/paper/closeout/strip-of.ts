import { render } from 'preact-render-to-string';
import { Strip, type StripProps, stripSheets } from '../../../views/drawings/strip.tsx';
import type { UnitSystem } from '../../domain/model.ts';
import type { RunDossier } from './dossier.ts';

/** What a strip shows of a run. */
export type DrawnRun = Pick<RunDossier, 'run' | 'layout' | 'pieces' | 'joints' | 'supports' | 'taps'>;

/** Drawing units of a strip's width: on a landscape sheet its letters come out at 8 points. */
const WIDTH = 1000;

/** The run's strip as built, as one SVG file. */
export function stripFile(dossier: DrawnRun, units: UnitSystem): string {
  return `${render(Strip(propsOf(dossier, units)))}\n`;
}

/** The same line by line, so that each goes where a sheet has room for it. */
export function stripLines(dossier: DrawnRun, units: UnitSystem): string[] {
  return stripSheets(propsOf(dossier, units), 0).map((line) => render(line));
}

function propsOf(dossier: DrawnRun, units: UnitSystem): StripProps {
  const { run, layout, pieces, joints, supports, taps } = dossier;
  const record = {
    pieces: pieces.map(({ mark, state }) => ({ mark, state })),
    joints: joints.map(({ mark, state }) => ({ mark, state })),
    supports: supports.map(({ mark, state }) => ({ mark, state })),
    taps: Object.fromEntries(taps.map(({ tap, state }) => [tap.id, { mark: tap.id, state }])),
  };
  return { run, layout, record, units, ink: 'paper', width: WIDTH };
}
