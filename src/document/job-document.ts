// The front door of the job document: its schema, the schemas of its parts, their types, and the parser.

export type { Fault } from './fault.ts';
export { type ParsedJobDocument, parseJobDocument } from './parse-job-document.ts';
export { type BidDocument, bidSchema, type ExtraDocument, extraSchema } from './schema/bid.ts';
export { type BuswayTypeDocument, buswayTypeSchema } from './schema/busway-type.ts';
export { DOCUMENT_FORMAT, type JobDocument, jobDocumentSchema } from './schema/document.ts';
export { type LabourBookDocument, labourBookSchema } from './schema/labour-book.ts';
export { type LevelDocument, levelSchema } from './schema/level.ts';
export { type OrderingDocument, orderingSchema } from './schema/ordering.ts';
export { type ProjectDocument, projectSchema } from './schema/project.ts';
export { type LegDocument, type RunDocument, runSchema } from './schema/run.ts';
export { type TapDocument, tapSchema } from './schema/tap.ts';
