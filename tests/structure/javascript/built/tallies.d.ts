import type { Settings } from "./settling.js";
import type { Measure } from "./showing.js";

export const tallies: Record<string, { title: string; measure: string; plan: string | null; uses: string[]; formula: (v: Settings) => number }>;
export const tallyMeasures: Record<string, Measure>;
