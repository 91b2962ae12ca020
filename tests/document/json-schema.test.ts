import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { jobDocumentJsonSchema, writeJsonSchema } from '../../src/document/json-schema.ts';
import { changed } from './change.ts';
import { fullDocument } from './full-document.ts';

test('the published file is the one that the schema gives today', () => {
  const file = new URL('../../src/document/job-document.schema.json', import.meta.url);
  expect(readFileSync(file, 'utf8')).toBe(writeJsonSchema());
});

// Second opinion: Ajv, a JSON Schema validator written independently, reads the published schema.
describe('an independent validator', () => {
  const validate = new Ajv2020({ strict: false, allErrors: true }).compile(jobDocumentJsonSchema());

  test('accepts the demo job and a document with every key', () => {
    expect(validate(demoJob())).toBe(true);
    expect(validate(fullDocument())).toBe(true);
  });

  test.each([
    ['project.volts', 208],
    ['project.units', 'feet'],
    ['levels[0].name', undefined],
    ['buswayTypes[0].ratedCurrentA', 0],
    ['buswayTypes[0].prices.tap', 12.5],
    ['runs[0].legs', []],
    ['runs[0].legs[0].length', 5],
    ['runs[0].id', ' F1'],
    ['runs[0].structure.kind', 'beams'],
    ['runs[0].taps[0].powerFactor', 98],
    ['runs[0].taps[0].near', { xMm: 0, yMm: 0 }],
    ['runs[0].taps[0].atMm', undefined],
    ['runs[0].taps[0].loadA', 20],
  ])('refuses %s = %j', (path, value) => {
    expect(validate(changed(fullDocument(), path, value))).toBe(false);
  });
});
