import type { JSX } from 'preact';
import type { Criterion, CriterionResult } from '../../../../src/domain/quality/insulation/criterion.ts';
import { figure } from '../../../../src/domain/quality/insulation/print.ts';
import { formatLength } from '../../../../src/domain/units/format-length.ts';
import type { Length } from '../../../../src/domain/units/length.ts';
import { Notice } from '../../../components/notice.tsx';
import { refusalWords, type Speech } from '../../../words/quality.ts';
import { whole } from '../told-text.ts';

/** What this run must show, in one line, then the rule in its own words and where it is printed. */
export function RuleWords({
  found,
  length,
  say,
}: {
  found: CriterionResult;
  length: Length;
  say: Speech;
}): JSX.Element {
  if (!found.ok) return <Notice kind="stop" text={whole(refusalWords(found.refusal, say))} />;
  const { criterion } = found;
  return (
    <div class="stack">
      <p class="large">
        <strong>{neededWords(criterion, length, say)}</strong>
      </p>
      <p>{criterion.text}</p>
      <ul class="plain soft">
        {criterion.sources.map((source) => (
          <li key={source}>{source}</li>
        ))}
      </ul>
    </div>
  );
}

/** `This run, 70'-0": each pair must read at least 1,429 MΩ at 20 °C.` */
export function neededWords({ neededMegohm, compares }: Criterion, length: Length, { units }: Speech): string {
  const at = compares === 'as-read' ? 'as measured' : 'at 20 °C';
  return `This run, ${formatLength(length, units)}: each pair must read at least ${figure(neededMegohm)} MΩ ${at}.`;
}
