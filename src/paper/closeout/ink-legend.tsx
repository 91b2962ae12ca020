import { render } from 'preact-render-to-string';
import { InkedBox, inksFor } from '../../../views/drawings/ink.tsx';
import { type Ink, lookOf, STATES, type WorkState } from '../../../views/drawings/states.ts';

const LINES: readonly { readonly of: string; readonly states: readonly WorkState[] }[] = [
  { of: 'Pieces', states: STATES.piece },
  { of: 'Joints', states: STATES.joint },
  { of: 'Hangers', states: STATES.support },
  { of: 'Tap-offs', states: STATES.tap },
];

/** The inks of the strip with what each says of a piece, a joint, a hanger and a tap-off. */
export function inkLegend(width: number): string {
  const inks = inksFor('paper');
  const shown = [...new Set(LINES.flatMap(({ states }) => states.map((state) => lookOf(state).ink)))];
  const step = width / shown.length;
  return render(
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} 44`}
      width={width}
      height={44}
      font-family="Helvetica"
    >
      <title>What the inks say</title>
      {shown.map((ink, index) => (
        <g key={ink}>
          <InkedBox box={{ x: index * step, y: 2, width: 26, height: 10 }} ink={ink} inks={inks} />
          {LINES.map(({ of }, line) => (
            <text key={of} x={index * step} y={20 + line * 7.4} font-size={6} fill="#000000">
              {wordsFor(ink, line)}
            </text>
          ))}
        </g>
      ))}
    </svg>,
  );
}

function wordsFor(ink: Ink, line: number): string {
  const { of, states } = LINES[line] ?? { of: '', states: [] };
  const words = states.filter((state) => lookOf(state).ink === ink).map((state) => lookOf(state).word);
  return words.length === 0 ? '' : `${of}: ${[...new Set(words)].join(', ')}`;
}
