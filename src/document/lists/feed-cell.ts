import type { UnitSystem } from '../../domain/model.ts';
import { DISTANCE } from '../../domain/units/parse-length.ts';
import type { RunDocument } from '../schema/run.ts';
import { type Cell, readLengthCell } from './cell.ts';
import { writeMm } from './write-mm.ts';

type Feed = RunDocument['feed'];

const FORMS = `end, centre, centre @ 30'-0", or tee F1-R01-A @ 41'-0" left`;

/** `end`, `centre`, `centre @ 30'-0"`, or `tee F1-R01-A @ 41'-0" left`: what the list says of a feed. */
export function readFeed(units: UnitSystem): (text: string) => Cell<Feed> {
  return (text) => {
    const [, kind = '', rest = ''] = /^(end|centre|center|tee)\b\s*(.*)$/i.exec(text) ?? [];
    switch (kind.toLowerCase()) {
      case 'end':
        return rest === '' ? { value: { kind: 'end' } } : refuse(text);
      case 'centre':
      case 'center':
        return readCentre(rest, units, text);
      case 'tee':
        return readTee(rest, units, text);
      default:
        return refuse(text);
    }
  };
}

function readCentre(rest: string, units: UnitSystem, text: string): Cell<Feed> {
  if (rest === '') return { value: { kind: 'centre' } };
  const place = /^@\s*(.+)$/.exec(rest)?.[1];
  if (place === undefined) return refuse(text);
  const at = readLengthCell(units, null, DISTANCE)(place);
  return 'problem' in at ? at : { ...at, value: { kind: 'centre', atMm: at.value } };
}

function readTee(rest: string, units: UnitSystem, text: string): Cell<Feed> {
  const [, fromRun, place, side] = /^(.+?)\s*@\s*(.+?)\s+(left|right)$/i.exec(rest) ?? [];
  if (fromRun === undefined || place === undefined || side === undefined) return refuse(text);
  const at = readLengthCell(units, null, DISTANCE)(place);
  if ('problem' in at) return at;
  const branchSide = side.toLowerCase() === 'left' ? 'left' : 'right';
  return { ...at, value: { kind: 'tee', fromRun, atMm: at.value, branchSide } };
}

function refuse(text: string): { problem: string; remedy: string } {
  return { problem: `"${text.slice(0, 60)}" does not say how the run is fed.`, remedy: `Write it like ${FORMS}.` };
}

export function writeFeed(feed: Feed, units: UnitSystem): string {
  const at = feed.atMm === undefined ? '' : ` @ ${writeMm(feed.atMm, units)}`;
  switch (feed.kind) {
    case 'end':
      return 'end';
    case 'centre':
      return `centre${at}`;
    case 'tee':
      return `tee ${feed.fromRun ?? ''}${at} ${feed.branchSide ?? ''}`.trim();
  }
}
