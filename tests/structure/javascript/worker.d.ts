// What the build writes at the head of worker.js.

declare const version: string;
declare const files: Record<string, string>;
