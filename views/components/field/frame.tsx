import type { ComponentChildren, JSX } from 'preact';
import { Sign } from '../sign.tsx';

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

export interface Option {
  readonly value: string;
  readonly word: string;
}

/** Label, hint, the control itself, and what is wrong beside it. */
export function FieldFrame(
  props: FieldProps & { readonly wide?: 'yes'; readonly children: ComponentChildren },
): JSX.Element {
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

export function HintAndFault(props: Pick<FieldProps, 'id' | 'name' | 'hint' | 'fault'>): JSX.Element {
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

/** What joins a control to its label, hint and fault. */
export function controlOf(props: Omit<FieldProps, 'value'>) {
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
