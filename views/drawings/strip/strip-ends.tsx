import type { JSX } from 'preact';
import { FIRM, type Inks } from '../ink.tsx';
import { tenth } from '../scale.ts';
import { BODY, CLAMP, LETTER } from './metrics.ts';
import type { LinePlan } from './plan-line.ts';

const ARROW = 24;

/** What stands at the ends of a line: feed, end caps, breaks, and the arrow that says which way taps face. */
export function StripEnds({ line, inks }: { line: LinePlan; inks: Inks }): JSX.Element {
  return (
    <>
      {line.feed && <Feed line={line} kind={line.feed.kind} x={line.feed.x} inks={inks} />}
      {line.capXs.map((x) => (
        <rect
          key={x}
          x={tenth(x - (x < line.endX ? 5 : 0))}
          y={tenth(line.bodyY - 3)}
          width={5}
          height={BODY + 6}
          fill={inks.ink}
        />
      ))}
      {line.brokenLeft && <Break x={line.startX} y={line.bodyY} inks={inks} />}
      {line.brokenRight && <Break x={line.endX} y={line.bodyY} inks={inks} />}
      {line.facing !== null && <FacingArrow line={line} word={line.facing} inks={inks} />}
    </>
  );
}

/** A box with an arrow into the run; over the run where it is fed in its length. */
function Feed({ line, kind, x, inks }: { line: LinePlan; kind: 'end' | 'centre' | 'tee'; x: number; inks: Inks }) {
  const middle = line.bodyY + BODY / 2;
  if (kind === 'centre') {
    const top = line.bodyY - 22;
    return (
      <>
        <rect
          x={tenth(x - 11)}
          y={tenth(top)}
          width={22}
          height={16}
          fill={inks.ground}
          stroke={inks.ink}
          stroke-width={FIRM}
        />
        <path
          d={`M${tenth(x - 5)} ${tenth(top + 5)}H${tenth(x + 5)}L${tenth(x)} ${tenth(top + 13)}Z`}
          fill={inks.ink}
        />
      </>
    );
  }
  const dash = kind === 'tee' ? '5 3' : undefined;
  return (
    <>
      <rect
        x={tenth(x - 13)}
        y={tenth(line.bodyY - CLAMP.reach)}
        width={26}
        height={BODY + 2 * CLAMP.reach}
        fill={inks.ground}
        stroke={inks.ink}
        stroke-width={FIRM}
        stroke-dasharray={dash}
      />
      <path
        d={`M${tenth(x - 6)} ${tenth(middle - 6)}V${tenth(middle + 6)}L${tenth(x + 8)} ${tenth(middle)}Z`}
        fill={inks.ink}
      />
      <path
        d={`M${tenth(x + 13)} ${tenth(middle)}H${tenth(line.startX)}`}
        stroke={inks.ink}
        stroke-width={FIRM}
        fill="none"
      />
    </>
  );
}

/** The jagged edge of a piece that goes on on the next line. */
function Break({ x, y, inks }: { x: number; y: number; inks: Inks }) {
  const top = y - 5;
  const jag = [0, 7, 14, 21, 28].map(
    (step, i) => `${i === 0 ? 'M' : 'L'}${tenth(x + (i % 2 === 0 ? -3 : 3))} ${tenth(top + step)}`,
  );
  return (
    <>
      <path d={jag.join('')} stroke={inks.ground} stroke-width={5} fill="none" />
      <path d={jag.join('')} stroke={inks.ink} stroke-width={1.2} fill="none" />
    </>
  );
}

/** Large, because hanging a piece the wrong way round is the dearest mistake on this drawing. */
function FacingArrow({ line, word, inks }: { line: LinePlan; word: string; inks: Inks }) {
  const x = 26;
  const away = line.tapsAbove ? -1 : 1;
  const from = line.tapsAbove ? line.bodyY - 2 : line.bodyY + BODY + 6;
  const tip = from + away * ARROW;
  const texts = line.tapsAbove ? [tip - 5 - LETTER, tip - 4] : [tip + 2 + LETTER, tip + 3 + 2 * LETTER];
  return (
    <>
      <path d={`M${x} ${tenth(from)}V${tenth(tip - away * 8)}`} stroke={inks.ink} stroke-width={4} fill="none" />
      <path d={`M${x - 9} ${tenth(tip - away * 11)}H${x + 9}L${x} ${tenth(tip)}Z`} fill={inks.ink} />
      <text x={3} y={tenth(texts[0]!)} font-size={LETTER} fill={inks.ink}>
        taps face
      </text>
      <text x={3} y={tenth(texts[1]!)} font-size={LETTER} font-weight="bold" fill={inks.ink}>
        {word}
      </text>
    </>
  );
}
