import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import type { OrderPart } from '../../../src/domain/ordering/order-things.ts';
import type { MarkedPlace } from '../../../src/domain/ordering/place-marks.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { shownQuantity } from '../../../src/domain/units/quantities.ts';

export type MarksOf = (part: Pick<OrderPart, 'run' | 'places' | 'item'>) => readonly MarkedPlace[];

export interface CountedFromProps {
  readonly words: string;
  readonly quantity: number;
  readonly parts: readonly OrderPart[];
  readonly units: UnitSystem;
  readonly marksOf: MarksOf;
  /** Where every place stands in pages; what is too long to stand here goes there. */
  readonly href: string;
}

const PLACES_SHOWN = 24;

/** A quantity that opens to the places it was counted from: run, mark, distance. */
export function CountedFrom({ words, quantity, parts, units, marksOf, href }: CountedFromProps): JSX.Element {
  const own = parts.filter((part) => part.run !== null && part.places.length > 0);
  if (own.length === 0) return <>{sayQuantity(quantity)}</>;
  const shown = within(own, PLACES_SHOWN);
  const total = own.reduce((sum, { places }) => sum + places.length, 0);
  const isCut = shown.length < own.length;
  return (
    <details class="working">
      <summary>
        {sayQuantity(quantity)}
        <span class="unseen"> {words}: the places it was counted from</span>
      </summary>
      <div>
        <ul class="plain">
          {shown.map((part) => (
            <li key={part.run}>
              <strong>{part.run}</strong> {sayPart(part, units)}
              <span class="soft"> at {sayPlaces(marksOf(part), units)}</span>
            </li>
          ))}
        </ul>
        <a href={href}>
          {isCut ? `All ${total.toLocaleString('en-US')} places` : 'As a list'}
          <span class="unseen"> of {words}</span>
        </a>
      </div>
    </details>
  );
}

/** Runs from the first on while their places are few enough to read; one at least. */
function within(parts: readonly OrderPart[], most: number): readonly OrderPart[] {
  let count = 0;
  return parts.filter(({ places }, index) => {
    count += places.length;
    return index === 0 || count <= most;
  });
}

function sayPlaces(places: readonly MarkedPlace[], units: UnitSystem): string {
  const said = places.slice(0, PLACES_SHOWN).map(({ mark, at }) => `${formatLength(at, units)} ${mark}`.trim());
  return places.length > PLACES_SHOWN ? `${said.join(', ')} …` : said.join(', ');
}

function sayPart(part: OrderPart, units: UnitSystem): string {
  const { quantity, unit } = shownQuantity(part, units);
  return Number.isInteger(quantity) && unit === 'each' ? String(quantity) : `${sayQuantity(quantity)} ${unit}`;
}

/** Whole counts with their thousands, feet and metres with two decimals. */
export function sayQuantity(quantity: number): string {
  return quantity.toLocaleString('en-US', {
    minimumFractionDigits: Number.isInteger(quantity) ? 0 : 2,
    maximumFractionDigits: 2,
  });
}
