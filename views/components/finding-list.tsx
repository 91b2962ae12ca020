import type { JSX } from 'preact';
import type { Finding, Severity } from '../../src/domain/finding.ts';
import type { UnitSystem } from '../../src/domain/model.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { Sign } from './sign.tsx';

export interface FindingListProps {
  readonly findings: readonly Finding[];
  readonly units: UnitSystem;
  /** Where a run is shown. */
  readonly runHref?: (run: string) => string;
}

const WORDS: Readonly<Record<Severity, string>> = { stop: 'Stop', warning: 'Warning', note: 'Note' };

const PLACES: Readonly<Record<Severity, number>> = { stop: 0, warning: 1, note: 2 };

/** Findings, stops first, else in their given order: sign and word, what is wrong and what to do, where, and by which sheet or clause. */
export function FindingList({ findings, units, runHref }: FindingListProps): JSX.Element {
  const inOrder = [...findings].sort((a, b) => PLACES[a.severity] - PLACES[b.severity]);
  return (
    <ul class="findings">
      {inOrder.map((finding) => (
        <li key={`${finding.rule} ${finding.run} ${finding.at} ${finding.message}`} class={finding.severity}>
          <span class="severity">
            <Sign of={finding.severity} /> {WORDS[finding.severity]}
          </span>
          <div>
            <p>{finding.message}</p>
            <span class="place">
              <Place finding={finding} units={units} runHref={runHref} />
            </span>{' '}
            <span class="source soft">{finding.source}</span>
          </div>
        </li>
      ))}
    </ul>
  );
}

function Place({ finding, units, runHref }: { finding: Finding } & Omit<FindingListProps, 'findings'>) {
  if (finding.run === null) return <>Whole job.</>;
  const name = `Run ${finding.run}`;
  return (
    <>
      {runHref ? <a href={runHref(finding.run)}>{name}</a> : name}
      {finding.at !== null && ` at ${formatLength(finding.at, units)}`}.
    </>
  );
}
