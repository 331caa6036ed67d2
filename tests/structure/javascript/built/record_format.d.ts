import type { Schema } from "./record_check.js";

export const format: Schema & {
  $defs: { entry: Schema };
  properties: { format: Schema; version: { enum: number[] }; entries: { maxItems: number } };
};
