import type { UnitSystem } from '../../src/domain/model.ts';
import type { Fact, FactDifference, FactValue } from '../../src/domain/revision/difference.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { formatWeight } from '../../src/domain/units/quantities.ts';
import { compassWord } from '../drawings/compass.ts';
import { crossingWords } from '../drawings/strip/words.ts';

const NAMES: Readonly<Record<Fact, string>> = {
  place: 'Start',
  heading: 'First heading',
  facing: 'Tap-offs of the first leg face',
  level: 'Level',
  area: 'Room or area',
  side: 'Feed side',
  supply: 'Supply',
  device: 'Upstream device',
  'rod-length': 'Rod for each hanger',
  rod: 'Rod',
  attachment: 'Held by',
  capacity: 'One hanger may carry',
  crossings: 'Passes',
};

/** "Rod for each hanger: 7'-0", before 6'-9"". */
export function factWords({ fact, before, after }: FactDifference, units: UnitSystem): string {
  return `${NAMES[fact]}: ${say(after, units)}, before ${say(before, units)}`;
}

function say(value: FactValue, units: UnitSystem): string {
  const length = (of: number) => formatLength(of, units);
  switch (value.kind) {
    case 'word':
      return value.word?.replace('-', ' ') ?? 'not stated';
    case 'length':
      return value.length === null ? 'not stated' : length(value.length);
    case 'weight':
      return value.kg === null ? 'not stated' : formatWeight(value.kg, units);
    case 'amperes':
      return value.amperes === null ? 'not stated' : `${value.amperes} A`;
    case 'place':
      return `${length(value.x)} east, ${length(value.y)} north, ${length(value.z)} up`;
    case 'heading':
      return value.degrees === null ? 'not known' : compassWord(value.degrees);
    case 'crossings':
      return (
        value.crossings
          .map((one) => `${crossingWords(one)} of ${length(one.thickness)} at ${length(one.at)}`)
          .join('; ') || 'nothing'
      );
  }
}
