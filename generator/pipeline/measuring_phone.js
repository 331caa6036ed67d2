// Run inside a page of the finished site by measuring_phone.py; what it names is what that page has.
(() => {
  const wait = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));
  const layout = () => document.body.getBoundingClientRect();
  const middle = (times) => times.sort((one, other) => one - other)[Math.floor(times.length / 2)];
  const answered = (look) => new Promise((done) => {
    const watcher = new MutationObserver(() => {
      if (!look()) return;
      watcher.disconnect();
      done();
    });
    watcher.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  });

  /** From a tap until its answer is laid out; then the phone comes to rest. */
  async function timed(act, look) {
    const begun = performance.now();
    const answer = answered(look);
    act();
    await answer;
    layout();
    const taken = performance.now() - begun;
    await wait(400);
    return taken;
  }

  function took(act) {
    const begun = performance.now();
    act();
    return performance.now() - begun;
  }

  /** From an act until our programs are done with it, until all it brings about is laid out, and until its frame is handed over to be shown. */
  const frame = (act) => new Promise((done) => requestAnimationFrame(async () => {
    const { port1, port2 } = new MessageChannel();
    const begun = performance.now();
    let [written, seen] = [0, 0];
    port1.onmessage = () => done({ written, seen, whole: performance.now() - begun });
    port2.postMessage("comes to its turn after the frame");
    act();
    for (let turn = 0; turn < 20; turn += 1) await undefined; // what the act left to be done at once
    written = performance.now() - begun;
    layout();
    seen = performance.now() - begun;
  }));

  /** The same, and the longest piece of what was put off. */
  async function changed(act) {
    const { setTimeout: later } = window;
    const left = [];
    window.setTimeout = (what) => left.push(what);
    const times = await frame(act);
    let rest = 0;
    for (const what of left) rest = Math.max(rest, took(() => (what(), layout())));
    window.setTimeout = later;
    return { ...times, rest };
  }

  const middles = (all) => Object.fromEntries(Object.keys(all[0]).map((what) => [what, middle(all.map((times) => times[what]))]));

  /** The first input walks through its range in another window; this page follows. */
  async function repaint(root) {
    const { inputs } = await import(`${root}phone/formulas.js`);
    const [[input, { low, high }]] = Object.entries(inputs);
    const [title] = document.querySelector("h1").childNodes;
    const [plans, words] = [[], []];
    for (let turn = -2; turn <= 40; turn += 1) {
      const value = Math.round(low + ((high - low) * (turn + 2)) / 50);
      const act = () => heard[0].onmessage({ data: [[`plan/today/${input}`, value]] });
      if (turn > 0) plans.push(await changed(act));
      else await wait(700, act()); // fetches what it wants
      words.push(await frame(() => (title.data += "x")));
      await wait(20);
    }
    return { plan: middles(plans), word: middles(words) };
  }

  const reading = ({ readings }) => [...document.querySelectorAll("[data-reading]")].map((it) => it.dataset.reading)
    .find((of) => readings[of].measure && readings[of].range && !readings[of].adds_up && !readings[of].named && !readings[of].reasons);

  const opened = (name) => new Promise((done) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore("facts");
    request.onsuccess = () => done(request.result);
  });

  const written = (base, facts) => new Promise((done) => {
    const change = base.transaction("facts", "readwrite", { durability: "strict" });
    change.oncomplete = done;
    for (const [key, fact] of facts) change.objectStore("facts").put(fact, key);
  });

  /** A record of so many entries, about the list and the reading of this page. */
  async function fill(many) {
    const root = new URL("../../", location.href);
    const list = document.querySelector("[data-list]");
    const of = reading(await import(`${root}phone/readings.js`));
    const { readings } = await import(`${root}phone/readings.js`);
    const value = (readings[of].range[0] + readings[of].range[1]) / 2;
    const now = new Date();
    const run = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}-1`;
    const kinds = [{ kind: "tick", of: list.dataset.list, step: "x" }, { kind: "reading", of, value, written: "x" }, { kind: "remark", text: "x" }];
    const start = Math.max(Date.now() - many * 2000, new Date().setHours(0, 0, 0, 0)); // a day that began yesterday is asked about
    const each = (Date.now() - start) / many * 0.95;
    const entry = (place) => ({ id: `phone${place % 2}-${place}-abcdef`, run, at: Math.round(start + place * each), zone: 0, ...(place ? kinds[place % 3] : { kind: "plan", values: {} }) });
    const entries = Array.from({ length: many }, (_, place) => [`log/${run}/${entry(place).id}/x`, entry(place)]);
    const base = await opened(`day ${root.pathname}`);
    await written(base, [[`run/${run}`, { begun: start }], ["state/run", run], ...entries]);
    base.close();
  }

  /** Ticks, readings opened and readings kept, beside what a phone takes to keep anything at all. */
  async function taps() {
    const rows = [...document.querySelector("[data-list]").children].filter((row) => !row.hidden).slice(0, 5);
    const of = reading(await import(new URL("../../phone/readings.js", location.href)));
    const sheet = () => document.querySelector(".sheet-over .quick .key");
    const base = await opened("bench");
    const title = document.querySelector("h1");
    const times = { nothing: [], ticked: [], opened: [], kept: [] };
    for (const row of rows) {
      const put = () => written(base, [["fact", row.id]]).then(() => title.setAttribute("data-bench", row.id));
      times.nothing.push(await timed(put, () => title.dataset.bench === row.id));
      times.ticked.push(await timed(() => row.querySelector("input").click(), () => row.classList.contains("step--done")));
      times.opened.push(await timed(() => document.querySelector(`[data-reading="${of}"]`).click(), sheet));
      times.kept.push(await timed(() => sheet().click(), () => !sheet()));
    }
    return Object.fromEntries(Object.entries(times).map(([what, taken]) => [what, middle(taken)]));
  }

  /** Steps of the first field of the plan, the first of them apart. */
  async function steps() {
    const field = document.querySelector("[data-input]");
    const times = [];
    for (let turn = 0; turn < 22; turn += 1) {
      times.push(await frame(() => field.querySelector(turn % 2 ? "[data-less]" : "[data-more]").click()));
      await wait(250);
    }
    return { first: times[0], others: middles(times.slice(2)) };
  }

  return { repaint, fill, taps, steps };
})()
