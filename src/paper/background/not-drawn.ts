export interface NotDrawn {
  readonly ok: false;
  /** The entry to mend. */
  readonly path: 'file' | 'page';
  readonly message: string;
  readonly remedy: string;
}

export const GIVE = 'Give a PNG, a JPEG or a PDF.';
export const SAVE_ANEW = 'Open it where you can read it, save it anew and send that.';

export function not(message: string, remedy: string, path: NotDrawn['path'] = 'file'): NotDrawn {
  return { ok: false, path, message, remedy };
}
