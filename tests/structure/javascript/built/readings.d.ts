import type { Reading } from "./reading_items.js";
import type { Measure } from "./showing.js";

export const readings: Record<string, Reading>;
export const readingMeasures: Record<string, Measure>;
