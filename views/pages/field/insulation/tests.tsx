import type { Verdict } from '../../../../src/domain/quality/insulation/verdict.ts';
import { Part } from '../../../components/part.tsx';
import { Time } from '../../../components/time.tsx';
import { verdictWord } from '../../../words/run-status.ts';
import type { InsulationPageProps } from '../insulation.tsx';

export interface TestLine {
  readonly id: string;
  readonly href: string;
  readonly at: string;
  readonly by: string;
  readonly verdict: Verdict;
  /** `counts`: it is the newest that stands. */
  readonly stands: 'counts' | 'older' | 'replaced';
  /** Work done since, by its marks. */
  readonly staleBy: readonly string[];
}

export function Tests({ tests, say }: InsulationPageProps) {
  return (
    <Part title="Tests of this run" id="tests">
      <ul class="history">
        {tests.map((test) => (
          <li key={test.id}>
            <a class="reach" href={test.href}>
              <span>
                {verdictWord(test.verdict)}, <Time at={new Date(test.at)} zone={say.zone} />
              </span>
            </a>
            <div>
              {test.by}; {STANDS[test.stands]}
            </div>
            {test.staleBy.length > 0 && (
              <div class="fault">Stale: work was done after it on {test.staleBy.join(', ')}. Test again.</div>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

const STANDS: Readonly<Record<TestLine['stands'], string>> = {
  counts: 'this one counts',
  older: 'an older one',
  replaced: 'replaced by another test, and kept',
};
