import type { JSX } from 'preact';
import { controlOf, FieldFrame, type FieldProps, type Option } from './field/frame.tsx';

export { ChoiceField, TickField } from './field/choice.tsx';
export type { FieldProps, Option } from './field/frame.tsx';

export interface TextFieldProps extends FieldProps {
  readonly kind?: 'text' | 'email' | 'password' | 'date' | 'datetime-local' | 'number' | 'length' | 'quantity';
  /** What the figure is in, behind the box: "A", "N·m". */
  readonly unit?: string;
  readonly autocomplete?: 'username' | 'current-password' | 'new-password' | 'name' | 'email';
}

/** One line of text, a figure, a length (as people write it) or a date. */
export function TextField(props: TextFieldProps): JSX.Element {
  const { kind = 'text', unit } = props;
  const isFigure = kind === 'number' || kind === 'quantity' || kind === 'length';
  return (
    <FieldFrame {...props}>
      <div class="entry">
        <input
          {...controlOf(props)}
          class={isFigure ? 'box short num' : 'box'}
          type={isFigure ? 'text' : kind}
          inputMode={kind === 'number' || kind === 'quantity' ? 'decimal' : undefined}
          value={kind === 'password' ? undefined : (props.value ?? '')}
          autoComplete={props.autocomplete ?? 'off'}
        />
        {unit !== undefined && <span class="soft">{unit}</span>}
      </div>
    </FieldFrame>
  );
}

export function SelectField(props: FieldProps & { readonly options: readonly Option[] }): JSX.Element {
  return (
    <FieldFrame {...props}>
      <select {...controlOf(props)} class="entry box">
        {props.options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === props.value}>
            {option.word}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

/** Several lines; `sheet` for cells pasted from a spreadsheet. */
export function TextArea(
  props: FieldProps & { readonly rows?: number; readonly kind?: 'prose' | 'sheet' },
): JSX.Element {
  return (
    <FieldFrame {...props} wide={props.kind === 'sheet' ? 'yes' : undefined}>
      <textarea
        {...controlOf(props)}
        class={props.kind === 'sheet' ? 'entry box sheet' : 'entry box'}
        rows={props.rows ?? 5}
        spellcheck={props.kind !== 'sheet'}
      >
        {props.value ?? ''}
      </textarea>
    </FieldFrame>
  );
}

export function FileField(props: FieldProps & { readonly accept?: string }): JSX.Element {
  return (
    <FieldFrame {...props}>
      <input {...controlOf(props)} class="entry box" type="file" accept={props.accept} />
    </FieldFrame>
  );
}
