import type { JSX } from 'preact';
import type { Verdict } from '../../src/domain/quality/insulation/verdict.ts';
import type { InsulationReport } from '../../src/domain/quality/insulation-test.ts';
import type { InsulationTestBody } from '../../src/domain/quality/record.ts';
import type { Length } from '../../src/domain/units/length.ts';
import { DefinitionList } from '../components/definition-list.tsx';
import { Notice } from '../components/notice.tsx';
import { Time } from '../components/time.tsx';
import type { Speech } from '../words/quality.ts';
import { InsulationReportParts } from './field/insulation/report.tsx';

export interface RecordPageProps {
  readonly say: Speech;
  readonly summary: string;
  readonly outcome: string | null;
  readonly on: { readonly mark: string; readonly href: string | null };
  readonly at: Date;
  readonly recordedAt: Date;
  readonly by: string;
  readonly replaces: { readonly href: string; readonly cause: string } | null;
  readonly replacedBy: { readonly href: string } | null;
  readonly test: {
    readonly body: InsulationTestBody;
    /** As it was judged when it was recorded. */
    readonly verdict: Verdict;
    /** As its figures come out by the record as it stands; null where it can no longer be judged. */
    readonly report: InsulationReport | null;
    readonly length: Length;
    readonly staleBy: readonly string[];
    readonly againHref: string;
  } | null;
}

/** One record as it stands in the book; a test with its working, pair by pair. */
export function RecordPage(props: RecordPageProps): JSX.Element {
  const { say, test, on, at, recordedAt, by, replaces, replacedBy, summary, outcome } = props;
  return (
    <>
      {replacedBy !== null && <Notice kind="note" text="Another record took its place. Both stay in the book." />}
      {test !== null && <InsulationReportParts {...test} say={say} />}
      <DefinitionList
        entries={[
          { term: 'On', value: on.href === null ? on.mark : <a href={on.href}>{on.mark}</a> },
          { term: 'What', value: summary },
          ...(outcome === null || test !== null ? [] : [{ term: 'Outcome', value: outcome }]),
          { term: 'Done', value: <Time at={at} zone={say.zone} /> },
          { term: 'By', value: by },
          { term: 'In the book since', value: <Time at={recordedAt} zone={say.zone} /> },
          ...(replaces === null
            ? []
            : [
                {
                  term: 'Replaces',
                  value: (
                    <>
                      <a href={replaces.href}>an earlier record</a>: “{replaces.cause}”
                    </>
                  ),
                },
              ]),
          ...(replacedBy === null
            ? []
            : [{ term: 'Replaced by', value: <a href={replacedBy.href}>a later record</a> }]),
        ]}
      />
    </>
  );
}
