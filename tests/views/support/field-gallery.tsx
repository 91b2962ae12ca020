import type { JSX } from 'preact';
import { Button, ButtonLink } from '../../../views/components/button.tsx';
import { Caution } from '../../../views/components/caution.tsx';
import { ChoiceField, TextField, TickField } from '../../../views/components/field.tsx';
import { Form } from '../../../views/components/form.tsx';
import { Part } from '../../../views/components/part.tsx';
import { RunStrip } from '../../../views/components/run-strip.tsx';
import { StepList } from '../../../views/components/step-list.tsx';
import { standardRun } from './runs.ts';

export function FieldGallery(): JSX.Element {
  return (
    <>
      <RunStrip {...standardRun()} units="ft-in" width={600} />
      <Part title="Make-up of joint J03">
        <StepList
          label="Steps of joint J03"
          steps={[
            { what: 'Pieces, lots and conductor sides match', state: 'done', remark: 'S. Okoro, 12 May, 14:02 CDT' },
            { what: 'Lower clamp parked clear', state: 'done', remark: 'S. Okoro, 12 May, 14:03 CDT' },
            {
              what: 'Contact set seated, seen pole by pole at both ends',
              state: 'next',
              remark: 'Hold point. The lower clamp hides it: this is the last chance to see it.',
              form: (
                <Form action="#" csrf="x" submissionId="s2" keep={{ label: 'Joint J03, contact set seated' }}>
                  <TickField name="l1" label="L1 seated at both ends" ticked="no" />
                  <TickField name="l2" label="L2 seated at both ends" ticked="no" />
                  <TickField name="n" label="Neutral seated at both ends" ticked="no" />
                  <TextField
                    name="torque"
                    kind="number"
                    unit="N·m"
                    label="Torque"
                    fault="A torque needs its tool. Pick the tool below."
                  />
                  <ChoiceField
                    name="tool"
                    label="Tool"
                    value="T-07"
                    options={[
                      { value: 'T-07', word: 'T-07, due 1 June' },
                      { value: 'T-09', word: 'T-09, due 4 July' },
                    ]}
                  />
                  <Button kind="lead">All seated</Button>
                  <Button kind="stops">Stop: a pole stands proud</Button>
                </Form>
              ),
            },
            { what: 'Tool out and counted', state: 'later' },
            { what: 'Lower clamp centred, tightened', state: 'later', remark: 'After step 3' },
          ]}
        />
        <Caution />
        <ButtonLink href="#next">Next joint</ButtonLink>
      </Part>
    </>
  );
}
