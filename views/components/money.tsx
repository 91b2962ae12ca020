import type { JSX } from 'preact';
import { formatMoney, type Minor } from '../../src/domain/units/money.ts';

export interface MoneyProps {
  /** null: no price was given, which is not a price of nought. */
  readonly minor: Minor | null;
  readonly currency: string;
}

/** Money, for office pages alone: a page that anybody else may read never renders it. */
export function Money({ minor, currency }: MoneyProps): JSX.Element {
  if (minor === null) return <span class="soft">no price</span>;
  return <span>{formatMoney(minor, currency)}</span>;
}
