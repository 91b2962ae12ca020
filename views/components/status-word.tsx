import type { JSX } from 'preact';
import { RUN_STATUSES, type RunStatus } from '../../src/domain/quality/run-status.ts';

export type { RunStatus };

const WORDS: Readonly<Record<RunStatus, string>> = {
  planned: 'planned',
  'in-installation': 'in installation',
  'mechanically-complete': 'mechanically complete',
  tested: 'tested',
};

const CELL = 9;

/** Where a run stands: as many cells inked as steps are behind it, and the word. */
export function StatusWord({ status }: { status: RunStatus }): JSX.Element {
  const behind = RUN_STATUSES.indexOf(status);
  const cells = RUN_STATUSES.slice(1);
  return (
    <span class="status">
      <svg width={cells.length * CELL + 1} height="12" aria-hidden="true">
        {cells.map((cell, index) => (
          <rect
            key={cell}
            x={index * CELL + 0.5}
            y="0.5"
            width={CELL}
            height="11"
            fill={index < behind ? 'currentColor' : 'none'}
            stroke="currentColor"
          />
        ))}
      </svg>
      {WORDS[status]}
    </span>
  );
}
