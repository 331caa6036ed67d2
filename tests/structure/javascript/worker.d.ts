// What the build writes at the head of worker.js.

declare const version: string;
declare const files: Record<string, string>;
/** What packs well of the files, in one, with its size in bytes, those of the files that lie apart, and what every page loads. */
declare const pack: { path: string, digest: string, size: number, apart: Record<string, number>, loaded: string[] };
/** The file that search reads: made by the worker of the pages it keeps. */
declare const titles: string;
