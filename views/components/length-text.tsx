import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import type { Length } from '../../src/domain/units/length.ts';

export interface LengthTextProps {
  /** null: nobody has said, which is not the same as nought. */
  readonly length: Length | null;
  readonly units: UnitSystem;
}

/** A length in the units of the job. */
export function LengthText({ length, units }: LengthTextProps): JSX.Element {
  if (length === null) return <span class="soft">unknown</span>;
  return <span>{formatLength(length, units)}</span>;
}
