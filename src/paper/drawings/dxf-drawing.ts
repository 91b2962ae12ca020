import { DxfWriter, point3d, Units } from '@tarikjabiri/dxf';
import type { UnitSystem } from '../../domain/model.ts';
import { INCH, type Length, UNITS_PER_MM } from '../../domain/units/length.ts';

/** Layers, named as people name what is on them; numbers are the index colours of DXF (7 is black or white). */
const LAYERS = {
  Runs: 7,
  Joints: 7,
  Hangers: 3,
  'Tap-offs': 5,
  'Tap-off marks': 5,
  Walls: 8,
  'Fire walls': 1,
  Feeds: 6,
  Structure: 9,
  Names: 7,
  Notes: 8,
} as const;
export type DxfLayer = keyof typeof LAYERS;

export interface DxfPoint {
  readonly x: Length;
  readonly y: Length;
  readonly z?: Length;
}

/** A drawing in DXF being made: lengths go in, and stand in inches or millimetres of the building. */
export interface DxfDrawing {
  readonly line: (layer: DxfLayer, from: DxfPoint, to: DxfPoint) => void;
  readonly circle: (layer: DxfLayer, middle: DxfPoint, radius: Length) => void;
  /** Turned anticlockwise, in degrees. */
  readonly text: (layer: DxfLayer, at: DxfPoint, height: Length, text: string, turned?: number) => void;
  readonly file: () => string;
}

/** Opens a drawing in true size: `$INSUNITS` says inches for a job in feet, millimetres for a metric one. */
export function dxfDrawing(units: UnitSystem): DxfDrawing {
  const dxf = new DxfWriter();
  const unit = units === 'ft-in' ? INCH : UNITS_PER_MM;
  dxf.setUnits(units === 'ft-in' ? Units.Inches : Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: units === 'ft-in' ? 0 : 1 });
  for (const [name, colour] of Object.entries(LAYERS)) dxf.addLayer(name, colour);
  const place = ({ x, y, z = 0 }: DxfPoint) => point3d(x / unit, y / unit, z / unit);
  const on = (layer: DxfLayer) => ({ layerName: layer });
  return {
    line: (layer, from, to) => void dxf.addLine(place(from), place(to), on(layer)),
    circle: (layer, middle, radius) => void dxf.addCircle(place(middle), radius / unit, on(layer)),
    text: (layer, at, height, text, turned = 0) =>
      void dxf.addText(place(at), height / unit, oneLine(text), { ...on(layer), rotation: turned }),
    file: () => dxf.stringify(),
  };
}

/** A line end inside a text would be read as the next group of the file. */
function oneLine(text: string): string {
  return text.replaceAll(/[\s\p{Cc}]+/gu, ' ').trim();
}

/** Lines under the drawing: what it is, how far it is released, and whose word decides. */
export function writeNotes(drawing: DxfDrawing, at: DxfPoint, height: Length, notes: readonly string[]): void {
  for (const [index, note] of notes.entries())
    drawing.text('Notes', { x: at.x, y: at.y - index * 2 * height }, height, note);
}
