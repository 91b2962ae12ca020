import { writeFileSync } from 'node:fs';
import { writeJsonSchema } from '../src/document/json-schema.ts';

// Writes the job document's JSON Schema beside its zod schema, which is its definition.
const file = new URL('../src/document/job-document.schema.json', import.meta.url);
writeFileSync(file, writeJsonSchema());
process.stdout.write(`Wrote ${file.pathname}\n`);
