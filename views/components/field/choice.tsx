import type { JSX } from 'preact';
import { controlOf, type FieldProps, HintAndFault, type Option } from './frame.tsx';

/** A single yes, on its own row so that a glove can hit it. */
export function TickField(props: Omit<FieldProps, 'value'> & { readonly ticked: 'yes' | 'no' }): JSX.Element {
  const control = controlOf(props);
  return (
    <div class="fillin">
      <label class="tick entry" for={control.id}>
        <input {...control} type="checkbox" value="yes" checked={props.ticked === 'yes'} />
        <span>{props.label}</span>
      </label>
      <HintAndFault {...props} />
    </div>
  );
}

/** One of a few, all in sight. */
export function ChoiceField(props: FieldProps & { readonly options: readonly Option[] }): JSX.Element {
  const { id, ...described } = controlOf(props);
  return (
    <fieldset class="fillin" id={id} aria-describedby={described['aria-describedby']}>
      <legend>{props.label}</legend>
      <div class="choices entry">
        {props.options.map((option) => (
          <label key={option.value} class="tick">
            <input
              type="radio"
              name={props.name}
              value={option.value}
              checked={option.value === props.value}
              required={props.need === 'required'}
            />
            <span>{option.word}</span>
          </label>
        ))}
      </div>
      <HintAndFault {...props} />
    </fieldset>
  );
}
