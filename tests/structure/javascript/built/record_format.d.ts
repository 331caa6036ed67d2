import type { Schema } from "./record_check.js";

export const format: Schema & {
  $defs: { entry: Schema };
  properties: { format: Schema; version: { const: number }; entries: { maxItems: number } };
};
