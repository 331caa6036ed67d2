export const words: Record<string, string>;
export const people: string[];
export const farm: string;
export const lists: Record<string, string>;
export const version: string;
