// Words for programs about teaching.

import { words } from "./teaching.js";
import { filled } from "./words_said.js";

/** @param {string} id @param {import("./words_said.js").Parts} [parts] */
export const tell = (id, parts = {}) => filled(words[id], parts);
