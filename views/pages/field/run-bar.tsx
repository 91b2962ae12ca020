import type { JSX } from 'preact';
import type { JointState, PieceState } from '../../../src/domain/quality/states.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { InkedBox, inksFor } from '../../drawings/ink.tsx';
import { linear } from '../../drawings/scale.ts';
import { lookOf } from '../../drawings/states.ts';

export interface RunBarProps {
  readonly length: Length;
  readonly pieces: readonly { readonly from: Length; readonly to: Length; readonly state: PieceState }[];
  readonly joints: readonly { readonly at: Length; readonly state: JointState }[];
}

const WIDTH = 360;
const JOINT = { width: 9, height: 22 };

/** A run at a glance, the feed on the left: its pieces and joints in the inks of their states. The words beside it say the same. */
export function RunBar({ length, pieces, joints }: RunBarProps): JSX.Element {
  const toX = linear([0, Math.max(length, 1)], [JOINT.width / 2, WIDTH - JOINT.width / 2]);
  const inks = inksFor('screen');
  return (
    <svg class="run-bar" viewBox={`0 0 ${WIDTH} 24`} aria-hidden="true">
      {pieces.map(({ from, to, state }) => (
        <InkedBox
          key={from}
          box={{ x: toX(from) + 1, y: 6, width: Math.max(toX(to) - toX(from) - 2, 2), height: 12 }}
          ink={lookOf(state).ink}
          inks={inks}
        />
      ))}
      {joints.map(({ at, state }, index) => (
        <InkedBox
          key={`${at} ${index}`}
          box={{ x: toX(at) - JOINT.width / 2, y: 1, ...JOINT }}
          ink={lookOf(state).ink}
          inks={inks}
        />
      ))}
    </svg>
  );
}
