import { expect, test } from 'vitest';
import { bookChangeWords } from '../../views/pages/labour-book/upgrade.tsx';
import { inventedWords } from '../../views/words/invented.ts';
import { whatIfEntryWord } from '../../views/words/what-if.ts';

test('an invented book says that its hours are nobody’s, and a company’s own says nothing', () => {
  expect(inventedWords('demo-1 (invented)')).toBe(
    'Labour book demo-1 (invented) is invented: its hours, factors and crew are nobody’s. Bid on hours of your own.',
  );
  expect(inventedWords('2026-2')).toBe('');
  expect(inventedWords('reinvented 3')).toBe('');
});

test.each([
  [{ part: 'activity', name: 'joint', length: '', column: 'likely' }, 'make up joints: likely hours'],
  [{ part: 'by length', name: 'section', length: '1524 mm', column: 'low' }, 'hang sections up to 1524 mm: low hours'],
  [
    { part: 'over height', name: 'mounting height %', length: '4572 mm', column: 'value' },
    'mounting height % over 4572 mm',
  ],
  [{ part: 'crew', name: 'Journeyman', length: '', column: 'rate' }, 'crew, Journeyman: rate'],
  [{ part: 'learning', name: 'rate', length: '', column: 'value' }, 'learning, rate'],
  [{ part: 'book', name: 'version', length: '', column: 'value' }, 'version'],
] as const)('a changed value is named as people would: %o is "%s"', (change, words) => {
  expect(bookChangeWords({ ...change, before: '1', after: '2' })).toBe(words);
});

test('an entry of the what-if is named by its group and row', () => {
  expect(whatIfEntryWord('routes[1].legsMm')).toBe('Route, row 2: leg lengths');
  expect(whatIfEntryWord('nonProductivePercent')).toBe('Non-productive, %');
});
