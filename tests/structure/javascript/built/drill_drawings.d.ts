export const drawings: Record<string, string>;
