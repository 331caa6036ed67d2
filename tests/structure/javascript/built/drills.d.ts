import type { Drill } from "./posing.js";
import type { Measure } from "./showing.js";

export const drills: Record<string, Drill>;
export const drillMeasures: Record<string, Measure>;
