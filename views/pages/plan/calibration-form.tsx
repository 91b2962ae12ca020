import type { JSX } from 'preact';
import { Button } from '../../components/button.tsx';
import { faultProps } from '../../components/fault-of.ts';
import { ChoiceField, SelectField, TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { backgroundEntryWord } from '../../words/background.ts';
import type { BackgroundPageProps } from './background.tsx';

const AS_ON_PICTURE = 'picture';

/** Two points: where they stand on the picture, and where they are in the building. */
export function CalibrationForm(props: BackgroundPageProps): JSX.Element {
  const { base, csrf, background, calibration, example, faultOf } = props;
  const entry = (name: string) => ({
    name,
    label: backgroundEntryWord(name),
    value: calibration[name] ?? '',
    ...faultProps((asked) => faultOf('calibration', asked), name),
  });
  return (
    <Form action={`${base}/calibration`} csrf={csrf} {...(background === null ? {} : { version: background.version })}>
      <h3>Point A</h3>
      <div class="fields">
        <TextField {...entry('points[0].pixelX')} kind="number" />
        <TextField {...entry('points[0].pixelY')} kind="number" />
        <TextField {...entry('points[0].xMm')} kind="length" hint={`Like ${example}.`} />
        <TextField {...entry('points[0].yMm')} kind="length" />
      </div>
      <h3>Point B</h3>
      <div class="fields">
        <TextField {...entry('points[1].pixelX')} kind="number" />
        <TextField {...entry('points[1].pixelY')} kind="number" />
      </div>
      <ChoiceField
        name="known"
        label="B is known by"
        value={calibration.known ?? 'distance'}
        options={[
          { value: 'distance', word: 'its distance from A' },
          { value: 'place', word: 'its place in plan' },
        ]}
      />
      <div class="fields" data-known="distance">
        <TextField {...entry('distanceMm')} kind="length" hint="The true distance in the building." />
        <SelectField
          {...entry('headingDeg')}
          options={[
            { value: AS_ON_PICTURE, word: 'as on the picture: its top is north' },
            { value: '0', word: 'east' },
            { value: '90', word: 'north' },
            { value: '180', word: 'west' },
            { value: '270', word: 'south' },
          ]}
        />
      </div>
      <div class="fields" data-known="place">
        <TextField {...entry('points[1].xMm')} kind="length" />
        <TextField {...entry('points[1].yMm')} kind="length" />
      </div>
      <Button kind="lead">{background?.calibration ? 'Set it in place anew' : 'Set it in place'}</Button>
    </Form>
  );
}
