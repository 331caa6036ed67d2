import type { Day, Step } from "./running.js";
import type { Table } from "./runtime.js";
import type { Choice, Input, Settings } from "./settling.js";
import type { Measure, Unit } from "./showing.js";

export const inputs: Record<string, Input & { measure: string; group: string }>;
export const choices: Record<string, Choice>;
export const constants: Record<string, number>;
export const measures: Record<string, Measure>;
export const units: Record<string, Unit>;
export const measureOf: Record<string, string>;
export const digitsOf: Record<string, number>;
/** How far to either side a value may lie, and whether that is a share of it. */
export const doubts: Record<string, [number, boolean]>;
export const plan: Settings;
export const uses: Record<string, string[]>;
export const tables: Record<string, Table>;
export const functions: Record<string, (...values: number[]) => number>;
export const steps: Record<string, Step>;
export function settle(changes?: Settings, base?: Settings): Settings;
export function compute(settings: Settings, before?: Day): Day;
export function computeInPieces(settings: Settings): Promise<Day>;
