// The part of yauzl that a check of a package needs; the package ships no types.
declare module 'yauzl' {
  import type { EventEmitter } from 'node:events';
  import type { Readable } from 'node:stream';

  export interface Entry {
    readonly fileName: string;
  }
  export interface ZipFile extends EventEmitter {
    readEntry(): void;
    openReadStream(entry: Entry, callback: (error: Error | null, stream: Readable) => void): void;
    close(): void;
  }
  export interface Options {
    readonly lazyEntries: boolean;
    readonly autoClose: boolean;
  }
  export function open(path: string, options: Options, callback: (error: Error | null, zip: ZipFile) => void): void;
}
