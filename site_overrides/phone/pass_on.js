// A plan goes to another phone as a link, as a code for its camera, or as a file. One that comes is shown before it is taken.

import { nameOfPlan, setNameOfPlan } from "./kept_plans.js";
import { loaded } from "./paint.js";
import { isSame, readPlan, readPlanFile, writePlan, writePlanFile } from "./plan_codes.js";
import { follow, sayer, tell, titleOf } from "./plan_words.js";
import { qrCode } from "./qr_code.js";
import { saveAs } from "./sending.js";
import { offerUndo, replacePlan } from "./undoing.js";

/**
 * @typedef {import("./plan_codes.js").Passed} Passed
 * @typedef {import("./plan_codes.js").Refused} Refused
 * @typedef {{store: import("./store.js").Store, plan: import("./plan_state.js").Plan}} Page
 */

const MARK = "#plan=";
const QUIET = 4;

/** @param {string} name @returns {any} */
const part = (name) => document.querySelector(`[data-${name}]`);

/** @param {Page} page @param {HTMLElement} section */
export async function mountPassOn(page, section) {
  const formulas = await loaded(page.plan);
  const arrive = (/** @type {Passed | Refused} */ found) => receive(page, formulas, found);
  const lookAtAddress = () => {
    if (section.isConnected && location.hash.startsWith(MARK)) arrive(readPlan(location.hash.slice(MARK.length), formulas));
  };
  follow(page.plan, section, () => paintOwn(page, formulas, section));
  bindReceiving(formulas, arrive);
  lookAtAddress();
  window.addEventListener("hashchange", lookAtAddress);
}

/** The link, the code and the file of today's plan. @param {Page} page @param {import("./plan_state.js").Formulas} formulas @param {HTMLElement} section */
function paintOwn({ store, plan }, formulas, section) {
  const [name, changes] = [nameOfPlan(store), plan.changes()];
  const link = location.href.replace(/[?#].*$/, "") + MARK + writePlan(name, changes, formulas);
  const code = qrCode(link);
  const words = code ? tell("pass_code", { count: Object.keys(changes).length }) : tell("pass_too_much");
  part("code").replaceChildren(...(code ? [drawCode(code)] : []));
  part("code-words").textContent = words;
  part("link").value = link;
  part("copy").onclick = async () => {
    part("link").select();
    const copied = await navigator.clipboard?.writeText(link).then(() => true, () => false);
    part("code-words").textContent = tell(copied ? "pass_copied" : "pass_copy_by_hand");
  };
  part("share").hidden = !navigator.share;
  part("share").onclick = () => navigator.share({ url: link }).catch(() => undefined);
  part("file").onclick = (/** @type {MouseEvent} */ event) => saveAs(event, "plan.json", "application/json", writePlanFile(name, changes, formulas));
  section.dataset.painted = "";
}

/** @param {number[][]} rows */
export function drawCode(rows) {
  const size = rows.length + 2 * QUIET;
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const path = document.createElementNS(svg.namespaceURI, "path");
  const runs = rows.flatMap((row, y) => [...row.join("").matchAll(/1+/g)].map(({ 0: run, index }) => `M${index + QUIET} ${y + QUIET}h${run.length}v1h-${run.length}z`));
  svg.setAttribute("viewBox", `0 0 ${size} ${size}`);
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", tell("pass_code_title"));
  svg.setAttribute("shape-rendering", "crispEdges");
  path.setAttribute("d", runs.join(""));
  svg.append(path);
  return svg;
}

/** @param {import("./plan_state.js").Formulas} formulas @param {(found: Passed | Refused) => void} arrive */
function bindReceiving(formulas, arrive) {
  part("receive").addEventListener("submit", (/** @type {Event} */ event) => {
    event.preventDefault();
    const pasted = /** @type {HTMLInputElement} */ (document.querySelector("#plan-paste")).value.trim();
    arrive(readPlan(pasted.slice(pasted.indexOf(MARK) < 0 ? 0 : pasted.indexOf(MARK) + MARK.length), formulas));
  });
  part("open").addEventListener("change", async () => {
    const file = part("open").files[0];
    if (file) arrive(readPlanFile(await file.slice(0, 200000).text().catch(() => ""), formulas));
    part("open").value = "";
  });
}

/** @param {Page} page @param {import("./plan_state.js").Formulas} formulas @param {Passed | Refused} found */
function receive(page, formulas, found) {
  const refused = part("receive-refused");
  refused.hidden = !("refused" in found);
  part("arrived").hidden = "refused" in found;
  if ("refused" in found) {
    refused.textContent = tell(found.refused, { title: found.parts ? titleOf(found.parts.id) : "" });
    return refused.focus();
  }
  const differing = paintDifferences(page, formulas, found);
  const title = { name: found.name || tell("pass_nameless") };
  part("arrived-words").textContent = [
    differing ? tell("pass_differs", { ...title, count: differing }) : tell("pass_same", title),
    found.same ? "" : tell("pass_other_site"),
  ].join(" ");
  part("arrived-take").hidden = !differing;
  part("arrived-take").onclick = () => take(page, found);
  part("arrived-keep").onclick = leave;
  part("arrived").scrollIntoView();
}

/** @param {Page} page @param {import("./plan_state.js").Formulas} formulas @param {Passed} found */
function paintDifferences({ plan }, formulas, { changes }) {
  const [here, there] = [formulas.settle(plan.changes()), formulas.settle(changes)];
  const said = sayer(plan, formulas);
  const ids = [...Object.keys(formulas.choices), ...Object.keys(formulas.inputs)].filter((id) => !isSame(here[id], there[id]));
  part("arrived-table").tBodies[0].replaceChildren(...ids.map((id) => {
    const row = document.createElement("tr");
    const head = document.createElement("th");
    head.scope = "row";
    head.textContent = titleOf(id);
    const cells = [here, there].map((side) => Object.assign(document.createElement("td"), { textContent: said(id, side[id]) }));
    row.append(head, ...cells);
    return row;
  }));
  part("arrived-table").hidden = ids.length === 0;
  return ids.length;
}

/** @param {Page} page @param {Passed} found */
function take({ store, plan }, { name, changes }) {
  const [back, before] = [replacePlan(plan, changes), nameOfPlan(store)];
  setNameOfPlan(store, name);
  offerUndo(part("taken"), tell("pass_taken"), () => {
    back();
    setNameOfPlan(store, before);
  });
  leave();
}

function leave() {
  part("arrived").hidden = true;
  if (location.hash.startsWith(MARK)) history.replaceState(history.state, "", location.pathname + location.search);
}
