import type { System } from "./showing.js";

export const words: Record<string, string>;
export const names: Record<string, string>;
/** What each option of each choice is called. */
export const options: Record<string, Record<string, string>>;
export const chosen: Record<string, string>;
export const first: System;
export const symbols: Record<string, string>;
