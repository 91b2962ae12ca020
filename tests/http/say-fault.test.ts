import { expect, it } from 'vitest';
import { sayFault } from '../../src/http/pages/say-fault.ts';

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
  expect(said('sheet.date', 'date is missing.', 'Give date: its date, a day as 2026-05-12.')).toBe(
    'Nothing is entered here. Wanted: its date, a day as 2026-05-12.',
  );
  expect(
    said('timeZone', 'timeZone is "x".', 'Give timeZone: IANA time zone of the site, such as America/Chicago.'),
  ).toBe('This is "x". Give the IANA time zone of the site, such as America/Chicago.');
  expect(said('conditions[0].name', 'name is missing.', 'Give name: What it is, such as night shift.')).toBe(
    'Nothing is entered here. Give what it is, such as night shift.',
  );
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
