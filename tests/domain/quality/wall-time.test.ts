import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromWallTime, toWallTime } from '../../../src/domain/quality/wall-time.ts';

const CHICAGO = 'America/Chicago';

// Change-over days of 2026 in the United States (15 U.S.C. 260a): second Sunday of March, first Sunday of November, at 02:00.
describe('the clock on the wall of the site', () => {
  it('in summer Chicago is five hours behind UTC, in winter six', () => {
    expect(fromWallTime('2026-05-12T15:40', CHICAGO)).toBe('2026-05-12T20:40:00.000Z');
    expect(fromWallTime('2026-12-01T15:40', CHICAGO)).toBe('2026-12-01T21:40:00.000Z');
    expect(toWallTime('2026-05-12T20:40:00Z', CHICAGO)).toBe('2026-05-12T15:40');
  });

  it('an hour that is skipped in spring means the one after it', () => {
    expect(fromWallTime('2026-03-08T02:30', CHICAGO)).toBe('2026-03-08T08:30:00.000Z');
  });

  it('an hour that comes twice in autumn means the first', () => {
    expect(fromWallTime('2026-11-01T01:30', CHICAGO)).toBe('2026-11-01T06:30:00.000Z');
  });

  it('midnight is the hour nought of the new day', () => {
    expect(toWallTime('2026-05-12T05:00:00Z', CHICAGO)).toBe('2026-05-12T00:00');
  });

  it('text that is no time is none', () => {
    for (const text of ['', '2026-05-12', '2026-02-30T10:00', '2026-05-12T24:10', 'today']) {
      expect(fromWallTime(text, CHICAGO)).toBeNull();
    }
  });

  it('what is written is read back to the minute, in any zone', () => {
    const zone = fc.constantFrom(
      CHICAGO,
      'UTC',
      'Asia/Kolkata',
      'Pacific/Apia',
      'Europe/Berlin',
      'Australia/Lord_Howe',
    );
    const minute = fc.integer({ min: Date.UTC(2020, 0) / 60_000, max: Date.UTC(2035, 0) / 60_000 });
    fc.assert(
      fc.property(zone, minute, (timeZone, minutes) => {
        const at = new Date(minutes * 60_000).toISOString();
        const wall = toWallTime(at, timeZone);
        const read = fromWallTime(wall, timeZone);
        expect(toWallTime(read ?? '', timeZone)).toBe(wall);
      }),
      { numRuns: 300 },
    );
  });
});
