import type { Fault } from '../../../document/fault.ts';

/** A fault beside its field, where the name that the document has for it says nothing to a person. */
export function sayFault({ message, remedy }: Fault): string {
  const [, what] = /^Give \w+: (.+?)(?:, mm)?\.$/.exec(remedy) ?? [];
  const isMissing = /^[\w.]+ is missing\.$/.test(message);
  if (!isMissing || what === undefined) return `${message} ${remedy}`.trim();
  return `Nothing is entered here. Give the ${what.charAt(0).toLowerCase()}${what.slice(1).replace(/^the /i, '')}.`;
}
