import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import { scalesOf } from '../drawings/sheet/scales.ts';
import { SelectField } from './field.tsx';

export interface PrintDrawingProps {
  /** Without the ending: ".pdf" and ".svg" are its files. */
  readonly href: string;
  readonly units: UnitSystem;
  /** What is printed, in the form's name. */
  readonly of: string;
  /** Told apart where a page has several. */
  readonly id: string;
  readonly query?: Readonly<Record<string, string>>;
}

/** Where a drawing is got on paper: both papers as PDF and SVG at the scale that fits, and a form for another scale. */
export function PrintDrawing({ href, units, of, id, query = {} }: PrintDrawingProps): JSX.Element {
  const file = (kind: string, paper: string) => `${href}.${kind}?${new URLSearchParams({ ...query, paper })}`;
  const usual = units === 'ft-in' ? 'letter' : 'a4';
  return (
    <div class="stack">
      <p class="row">
        <span>Print to scale:</span>
        <a href={file('pdf', 'letter')}>letter, PDF</a>
        <a href={file('pdf', 'a4')}>A4, PDF</a>
        <a href={file('svg', usual)}>{usual === 'a4' ? 'A4' : 'letter'}, SVG</a>
      </p>
      <p class="row">
        <span>In true size, for other drawings:</span>
        <a href={`${href}.dxf?${new URLSearchParams(query)}`}>DXF</a>
      </p>
      <details>
        <summary>Another scale</summary>
        <form class="filter" method="get" action={`${href}.pdf`} aria-label={`Print ${of}`}>
          {Object.entries(query).map(([name, value]) => (
            <input key={name} type="hidden" name={name} value={value} />
          ))}
          <SelectField
            name="paper"
            id={`paper-${id}`}
            label="Paper"
            value={usual}
            options={[
              { value: 'letter', word: 'letter, 11 × 8.5 in' },
              { value: 'a4', word: 'A4, 297 × 210 mm' },
            ]}
          />
          <SelectField
            name="scale"
            id={`scale-${id}`}
            label="Scale"
            value=""
            options={[
              { value: '', word: 'the one that fits' },
              ...scalesOf(units).map(({ ratio, word }) => ({ value: String(ratio), word })),
            ]}
          />
          <button class="button" type="submit">
            PDF
          </button>
          <button class="button" type="submit" formAction={`${href}.svg`}>
            SVG
          </button>
        </form>
      </details>
    </div>
  );
}
