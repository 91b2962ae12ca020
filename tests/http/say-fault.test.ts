import { expect, it } from 'vitest';
import { sayFault } from '../../src/http/pages/run-edit/say-fault.ts';

const said = (path: string, message: string, remedy: string) => sayFault({ path, message, remedy }, 'ft-in');

it('a fault of the document is told beside its field without the name of its key', () => {
  expect(
    said('crossings[0].atMm', 'atMm is missing.', "Give atMm: distance of the wall's or floor's centre, mm."),
  ).toBe("Nothing is entered here. Give the distance of the wall's or floor's centre.");
  expect(said('noJoint[0].toMm', 'toMm is missing.', 'Give toMm: Where the zone ends, mm.')).toBe(
    'Nothing is entered here. Give where the zone ends.',
  );
  expect(said('headingDeg', 'headingDeg is 400; it must be at most 360.', 'Give headingDeg: heading: 0 is east.')).toBe(
    'This is 400; it must be at most 360. Give the heading: 0 is east.',
  );
  expect(
    said('feed.fromRun', 'A feed of kind tee has no fromRun.', 'Give fromRun: the run that the tee stands in.'),
  ).toBe('A tee from another run needs this. Give the run that the tee stands in.');
  expect(said('legs', 'legs is an empty list.', 'Give at least 1.')).toBe(
    'No leg has a length yet. Give the first leg one.',
  );
});

it('lengths of a fault stand in the units of the job: 304.8 mm are a foot', () => {
  expect(
    said(
      'feed.atMm',
      'The centre feed is at 30,175.2 mm, but run "A" ends at 21,336 mm.',
      'Measure along the centre line from the feed, in millimetres; or lengthen the run.',
    ),
  ).toBe(
    `The centre feed is at 99'-0", but run "A" ends at 70'-0". Measure along the centre line from the feed; or lengthen the run.`,
  );
  expect(sayFault({ path: 'x', message: '3810 mm is too short.', remedy: '' }, 'metric')).toBe('3.810 m is too short.');
});
