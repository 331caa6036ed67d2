import type { Skill } from "./skills_signed.js";

export const words: Record<string, string>;
export const instructions: Record<string, { title: string; points: Record<string, string>; steps: boolean }>;
export const skills: Record<string, Skill>;
/** Ways in; each leg has the questions that are asked on it. */
export const paths: Record<string, { title: string; legs: Record<string, string[]>; place: string }>;
export const people: string[];
