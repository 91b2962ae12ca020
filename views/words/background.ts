import type { BackgroundView } from '../../src/document/background/schema.ts';
import type { Definition } from '../components/definition-list.tsx';

/** Where the picture lies, in words: its scale, its sheet's scale, which way it is turned and where north is on it. */
export function placedWords(calibration: BackgroundView['calibration']): Definition[] {
  if (calibration === null) return [{ term: 'Scale', value: 'not known until two points are set' }];
  const { mmPerPixel, sheetScale, turnedDeg } = calibration;
  return [
    { term: 'Scale', value: `1 pixel is ${figure(mmPerPixel)} mm${sheetWords(sheetScale)}` },
    { term: 'Turned', value: turnedWords(turnedDeg) },
  ];
}

const ENTRY_WORDS: Readonly<Record<string, string>> = {
  file: 'Picture or PDF',
  page: 'Page of a PDF',
  'points[0].pixelX': 'A, pixels from the left',
  'points[0].pixelY': 'A, pixels from the top',
  'points[0].xMm': 'A, east of the origin',
  'points[0].yMm': 'A, north of the origin',
  'points[1].pixelX': 'B, pixels from the left',
  'points[1].pixelY': 'B, pixels from the top',
  'points[1].xMm': 'B, east of the origin',
  'points[1].yMm': 'B, north of the origin',
  distanceMm: 'Distance from A to B',
  headingDeg: 'The way from A to B',
};

/** What an entry of the forms is called. */
export function backgroundEntryWord(field: string): string {
  return ENTRY_WORDS[field] ?? field;
}

function sheetWords(sheetScale: number | null): string {
  return sheetScale === null ? '' : `; the sheet is about 1:${figure(sheetScale)}`;
}

/** By which angle it is turned to lie with north up, and so where its own north points. */
function turnedWords(turnedDeg: number): string {
  const turned = Math.round(turnedDeg * 10) / 10;
  if (turned === 0) return 'not: its top is north';
  if (Math.abs(turned) === 180) return 'by half a turn: its foot is north';
  const [way, north] = turned > 0 ? ['anticlockwise', 'right'] : ['clockwise', 'left'];
  if (Math.abs(turned) === 90) return `by 90° ${way}: its ${north} side is north`;
  return `by ${Math.abs(turned)}° ${way}: on it north is ${Math.abs(turned)}° to the ${north} of its top`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(value >= 100 ? 4 : 3)));
}
