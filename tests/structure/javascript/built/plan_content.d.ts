import type { drawBars } from "./bars.js";
import type { Crew } from "./crew_page.js";
import type { Curve } from "./curves.js";
import type { Question } from "./questions_page.js";
import type { Settings } from "./settling.js";
import type { Timeline } from "./timeline.js";

type Bars = Parameters<typeof drawBars>[0];
type View =
  | { timeline: Timeline; bars?: undefined; curve?: undefined }
  | { timeline?: undefined; bars: Bars; curve?: undefined }
  | { timeline?: undefined; bars?: undefined; curve: Curve };

export const words: Record<string, string>;
export const titles: Record<string, string>;
export const refusals: Record<string, string>;
export const farmPlans: { title: string; changes: Settings }[];
export const planSays: string;
export const people: string[];
export const watches: Record<string, { title: string; stop: boolean }>;
export const views: Record<string, View>;
export const crews: Record<string, Crew>;
export const questions: Record<string, Question>;
