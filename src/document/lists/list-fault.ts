/** One cell of a list that a person must put right, as they see it in their spreadsheet: the header is row 1. */
export interface ListFault {
  /** null for what concerns the list as a whole. */
  readonly row: number | null;
  readonly column: string | null;
  readonly value: string;
  readonly problem: string;
  readonly remedy: string;
}

/** Nothing is made while anything is wrong; `questions` are taken as typed, and shown before they are. */
export type ReadList<Made, Preview> =
  | {
      readonly ok: true;
      readonly made: readonly Made[];
      readonly preview: Preview;
      readonly questions: readonly ListFault[];
    }
  | { readonly ok: false; readonly faults: readonly ListFault[] };
