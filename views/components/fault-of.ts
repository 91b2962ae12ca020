/** What is wrong with a field, or nothing. */
export type FaultOf = (name: string) => string | undefined;

/** For a field's props: its fault, when there is one. */
export function faultProps(faultOf: FaultOf, name: string): { fault?: string } {
  const fault = faultOf(name);
  return fault === undefined ? {} : { fault };
}

export const noFault: FaultOf = () => undefined;

/** The text that a person typed, by the name of its field. */
export type Entered = Readonly<Record<string, string>>;
