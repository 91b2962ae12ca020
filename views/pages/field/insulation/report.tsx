import type { JSX } from 'preact';
import type { Verdict } from '../../../../src/domain/quality/insulation/verdict.ts';
import type { InsulationReport } from '../../../../src/domain/quality/insulation-test.ts';
import type { InsulationTestBody } from '../../../../src/domain/quality/record.ts';
import type { Length } from '../../../../src/domain/units/length.ts';
import { ButtonLink } from '../../../components/button.tsx';
import { Caution } from '../../../components/caution.tsx';
import { DefinitionList } from '../../../components/definition-list.tsx';
import { Notice } from '../../../components/notice.tsx';
import { Part } from '../../../components/part.tsx';
import { Sign } from '../../../components/sign.tsx';
import { degrees } from '../../../words/quality/figures.ts';
import { remarkWords, type Speech } from '../../../words/quality.ts';
import { verdictWord } from '../../../words/run-status.ts';
import { whole } from '../told-text.ts';
import { Pairs } from './report-pairs.tsx';
import { neededWords } from './rule-words.tsx';

export interface InsulationReportProps {
  readonly body: InsulationTestBody;
  readonly verdict: Verdict;
  readonly report: InsulationReport | null;
  readonly length: Length;
  readonly staleBy: readonly string[];
  readonly againHref: string;
  readonly say: Speech;
}

/** The verdict large, why, then every pair with its working. A pass is no permission to energise anything. */
export function InsulationReportParts(props: InsulationReportProps): JSX.Element {
  const { verdict, report, staleBy, againHref, length, say } = props;
  return (
    <>
      <p class={verdict === 'pass' ? 'large' : 'large stop verdict'}>
        <Sign of={verdict === 'pass' ? 'done' : 'stop'} /> <strong>{verdictWord(verdict)}</strong>
      </p>
      {staleBy.length > 0 && (
        <Notice
          kind="stop"
          text={`Stale: work was done after this test on ${staleBy.join(', ')}. It counts no longer; test again.`}
        />
      )}
      {report !== null && report.verdict !== verdict && (
        <Notice
          kind="note"
          text={`Judged as the run stands today it comes to: ${verdictWord(report.verdict)}. The run or its rule has changed since.`}
        />
      )}
      {report?.remarks.map((remark) => (
        <Notice key={remark.code} kind="note" text={whole(remarkWords(remark, say))} />
      ))}
      {report !== null && (
        <>
          <p>{neededWords(report.criterion, length, say)}</p>
          <Pairs report={report} />
          <p class="soft">
            {report.criterion.text} {report.criterion.sources.join('; ')}.
          </p>
        </>
      )}
      <Conditions {...props} />
      <Caution>
        <p>A test that passes is a record. It permits nobody to energise anything.</p>
      </Caution>
      {(verdict !== 'pass' || staleBy.length > 0) && (
        <p>
          <ButtonLink href={againHref} kind="lead">
            Test again
          </ButtonLink>
        </p>
      )}
    </>
  );
}

function Conditions({ body, report }: InsulationReportProps) {
  const { instrument, surfaceTempC, ambientTempC, humidityPercent, isolations, durationS, witness, note } = body;
  const temp = (value: number | null) => (value === null ? 'not measured' : degrees(value));
  return (
    <Part title="The test">
      <DefinitionList
        entries={[
          {
            term: 'Test set',
            value: `${instrument.id}, in calibration until ${instrument.calibrationDue ?? 'not known'}`,
          },
          {
            term: 'Test voltage',
            value: `${body.testVoltageV} V DC${durationS === null ? '' : `, each pair ${durationS} s`}`,
          },
          { term: 'Surface', value: temp(surfaceTempC) },
          { term: 'Air', value: temp(ambientTempC) },
          { term: 'Humidity', value: humidityPercent === null ? 'not measured' : `${humidityPercent} %` },
          {
            term: 'Dew point',
            value: report === null || report.dewPointC === null ? 'not known' : degrees(report.dewPointC),
          },
          {
            term: 'Isolated',
            value:
              isolations.length === 0 ? (
                'nothing written down'
              ) : (
                <ul class="plain">
                  {isolations.map((isolation) => (
                    <li key={isolation}>{isolation}</li>
                  ))}
                </ul>
              ),
          },
          { term: 'Witness', value: witness ?? 'none' },
          ...(note === null ? [] : [{ term: 'Note', value: note }]),
        ]}
      />
    </Part>
  );
}
