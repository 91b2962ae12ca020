import type { RunStatus } from '../../../../src/domain/quality/run-status.ts';
import type { Length } from '../../../../src/domain/units/length.ts';
import { StatusWord } from '../../../components/status-word.tsx';
import { RunBar, type RunBarProps } from '../run-bar.tsx';

interface Count {
  readonly done: number;
  readonly of: number;
}

export interface FloorTally {
  readonly supports: Count;
  readonly pieces: Count;
  readonly joints: Count;
  readonly taps: Count;
}

export interface FloorRunLine extends RunBarProps {
  readonly id: string;
  readonly key: string;
  readonly href: string;
  readonly length: Length;
  readonly isReleased: boolean;
  readonly status: RunStatus;
  readonly tally: FloorTally;
  readonly next: { readonly words: string; readonly href: string } | null;
  readonly alsoReady: number;
}

export function RunRow({ run }: { run: FloorRunLine }) {
  const { key, href, isReleased, status, tally, next, alsoReady } = run;
  return (
    <li>
      <a class="floor-run" href={href}>
        <strong>{key}</strong>
        {isReleased ? <StatusWord status={status} /> : <span>not released</span>}
      </a>
      {isReleased && <RunBar {...run} />}
      {isReleased && <p class="hint">{sayTally(tally)}</p>}
      {next !== null && (
        <a class="floor-next" href={next.href}>
          <span>
            <strong>next:</strong> {next.words}
            {alsoReady > 0 && <span class="hint"> (and {alsoReady} more can begin)</span>}
          </span>
          <span aria-hidden="true">▸</span>
        </a>
      )}
    </li>
  );
}

function sayTally({ supports, pieces, joints, taps }: FloorTally): string {
  const part = (word: string, { done, of }: Count) => `${word} ${done} of ${of}`;
  return [part('hangers', supports), part('pieces', pieces), part('joints', joints), part('tap-offs', taps)].join(
    ' · ',
  );
}
