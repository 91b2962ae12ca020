/** What a person sent with one form of a page, and what of it was not taken. */
export interface FieldTrouble {
  /** Which form of the page it was. */
  readonly form: string;
  readonly faultOf: (name: string) => string | undefined;
  /** Every value of a field, since ticks of one name may be several. */
  readonly entered: (name: string) => readonly string[];
}

/** The props of a form's fields: their ids, what was typed, what is wrong with it. */
export interface Entries {
  readonly text: (name: string, otherwise?: string) => EntryProps & { readonly value: string };
  readonly tick: (name: string, otherwise?: 'yes' | 'no') => EntryProps & { readonly ticked: 'yes' | 'no' };
  /** Everything that was sent under one name. */
  readonly values: (name: string) => readonly string[];
  /** Whether this value was ticked among several of one name. */
  readonly has: (name: string, value: string) => boolean;
  readonly fault: (name: string) => string | undefined;
  readonly submissionId: string;
}

interface EntryProps {
  readonly name: string;
  readonly id: string;
  readonly fault?: string;
}

/** What stands in a form before anybody types: every value of each field. */
export type Before = Readonly<Record<string, readonly string[]>>;

/** What a form of the page is filled with: what was typed where it was refused, else what stood there before, else what is likely. */
export function entriesOf(trouble: FieldTrouble | null, form: string, freshId: string, before: Before = {}): Entries {
  const own = trouble?.form === form ? trouble : null;
  const sent = (name: string) => own?.entered(name) ?? [];
  const entry = (name: string): EntryProps => {
    const fault = own?.faultOf(name);
    return { name, id: `${form}-${name}`, ...(fault === undefined ? {} : { fault }) };
  };
  return {
    text: (name, otherwise = '') => ({
      ...entry(name),
      value: own === null ? (before[name]?.[0] ?? otherwise) : (sent(name)[0] ?? ''),
    }),
    tick: (name, otherwise = 'no') => ({
      ...entry(name),
      ticked: own === null ? otherwise : sent(name).includes('yes') ? 'yes' : 'no',
    }),
    values: sent,
    has: (name, value) => (own === null ? (before[name] ?? []) : sent(name)).includes(value),
    fault: (name) => own?.faultOf(name),
    submissionId: sent('submissionId')[0] ?? `${freshId}-${form}`,
  };
}
