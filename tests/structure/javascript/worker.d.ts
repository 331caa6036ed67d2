// What the build writes at the head of worker.js.

declare const version: string;
declare const files: Record<string, string>;
/** What packs well of the files, in one. */
declare const pack: { path: string, sha256: string };
