import type { Told } from '../../words/quality.ts';

/** All of it as one text: what is wrong, the number, what to do. */
export function whole({ what, number, remedy }: Told): string {
  return [what, number === null ? null : `${upper(number)}.`, remedy].filter((part) => part !== null).join(' ');
}

/** Beside the field that it concerns: the number and what to do, since the head says what is wrong. */
export function beside({ what, number, remedy }: Told): string {
  return number === null ? `${what} ${remedy}` : `${upper(number)}. ${remedy}`;
}

function upper(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
