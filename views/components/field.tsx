import type { ComponentChildren, JSX } from 'preact';
import { Sign } from './sign.tsx';

/** What every field of a form has. `value` is what the person typed, also when it was refused. */
export interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly value?: string;
  readonly hint?: ComponentChildren;
  /** What is wrong, with the number and what to do. */
  readonly fault?: string;
  /** Told apart where a name stands twice on a page. */
  readonly id?: string;
  readonly need?: 'required' | 'optional';
}

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

export interface Option {
  readonly value: string;
  readonly word: string;
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

function FieldFrame(props: FieldProps & { readonly wide?: 'yes'; readonly children: ComponentChildren }) {
  return (
    <div class={props.wide ? 'fillin wide' : 'fillin'}>
      <label for={idOf(props)}>
        {props.label}
        {props.need === 'optional' && <span class="hint"> (may stay empty)</span>}
      </label>
      {props.hint !== undefined && (
        <div class="hint" id={`${idOf(props)}-hint`}>
          {props.hint}
        </div>
      )}
      {props.children}
      {props.fault !== undefined && <FaultText id={`${idOf(props)}-fault`}>{props.fault}</FaultText>}
    </div>
  );
}

function HintAndFault(props: Pick<FieldProps, 'id' | 'name' | 'hint' | 'fault'>) {
  return (
    <>
      {props.hint !== undefined && (
        <div class="hint" id={`${idOf(props)}-hint`}>
          {props.hint}
        </div>
      )}
      {props.fault !== undefined && <FaultText id={`${idOf(props)}-fault`}>{props.fault}</FaultText>}
    </>
  );
}

function FaultText({ id, children }: { id: string; children: string }) {
  return (
    <div class="fault" id={id}>
      <Sign of="stop" /> {children}
    </div>
  );
}

function idOf(props: Pick<FieldProps, 'id' | 'name'>): string {
  return props.id ?? `f-${props.name.replace(/[^A-Za-z0-9_-]/g, '-')}`;
}

function controlOf(props: Omit<FieldProps, 'value'>) {
  const id = idOf(props);
  const described = [
    ...(props.hint === undefined ? [] : [`${id}-hint`]),
    ...(props.fault === undefined ? [] : [`${id}-fault`]),
  ];
  return {
    id,
    name: props.name,
    required: props.need === 'required',
    'aria-invalid': props.fault === undefined ? undefined : ('true' as const),
    'aria-describedby': described.length === 0 ? undefined : described.join(' '),
  };
}
