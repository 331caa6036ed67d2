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
    layout();
    return performance.now() - begun;
  }

  /** A plan that walks through the range of its first input, painted on this page. */
  async function repaint(root) {
    const [{ openPlan }, { painter }, { inputs }] = await Promise.all(["plan_state", "paint", "formulas"].map((name) => import(`${root}phone/${name}.js`)));
    const [[input, { low, high }]] = Object.entries(inputs);
    const facts = new Map();
    const entries = (start) => [...facts].filter(([key]) => key.startsWith(start));
    const plan = openPlan({ get: (key) => facts.get(key), entries, watch: () => () => undefined });
    const formulas = await plan.load();
    const paint = painter();
    const [title] = document.querySelector("h1").childNodes;
    const times = { seen: [], rest: [], word: [] };
    const { setTimeout: later } = window;
    await wait(300);
    for (let turn = 1; turn <= 40; turn += 1) {
      let putOff = () => undefined;
      window.setTimeout = (act) => void (putOff = act);
      facts.set(`plan/today/${input}`, Math.round(low + ((high - low) * turn) / 50));
      times.seen.push(took(() => paint(plan, plan.compute(formulas))));
      window.setTimeout = later;
      times.rest.push(took(putOff));
      times.word.push(took(() => (title.data += "x")));
      await wait(20);
    }
    return { seen: middle(times.seen), rest: middle(times.rest), word: middle(times.word) };
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
    const start = Date.now() - many * 2000;
    const entry = (place) => ({ id: `phone${place % 2}-${place}-abcdef`, run, at: start + place * 1900, zone: 0, ...(place ? kinds[place % 3] : { kind: "plan", values: {} }) });
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

  /** Steps of the first field of the plan. */
  async function steps() {
    const field = document.querySelector("[data-input]");
    const shown = () => document.querySelector(`[data-quantity="${field.dataset.input}"]`).textContent;
    const times = [];
    for (let turn = 0; turn < 9; turn += 1) {
      const before = shown();
      times.push(await timed(() => field.querySelector("[data-more]").click(), () => shown() !== before));
    }
    return middle(times);
  }

  return { repaint, fill, taps, steps };
})()
