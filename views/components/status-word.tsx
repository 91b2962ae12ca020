import type { JSX } from 'preact';

/** Computed from the records of a run, never typed; in this order. */
export const RUN_STATUSES = [
  'planned',
  'in-installation',
  'mechanically-complete',
  'tested',
  'gate-clear',
  'energised',
  'turned-over',
] as const;
export type RunStatus = (typeof RUN_STATUSES)[number];

const WORDS: Readonly<Record<RunStatus, string>> = {
  planned: 'planned',
  'in-installation': 'in installation',
  'mechanically-complete': 'mechanically complete',
  tested: 'tested',
  'gate-clear': 'gate clear, awaiting signatures',
  energised: 'energised',
  'turned-over': 'turned over',
};

const CELL = 6;

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
