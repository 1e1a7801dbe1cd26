// Runs every check on the reader's own device: at once in the light engine, and on request in CPython.

import { define } from "./parsed.js";

const RELATIVE = 1e-12; // how far this device may differ from the build

class SaltTrust extends HTMLElement {
  connectedCallback() {
    this.parts = JSON.parse(this.dataset.parts);
    this.runs = [];
    const { science, fullWorker, full } = this.parts;
    const files = full.files.map(([name]) => full.base + name);
    this.on("light", () => this.run("light engine", () => this.light(), [science]));
    this.on("full", () => this.run("CPython", () => this.full(), [fullWorker, ...files]));
    this.on("cancel", () => this.stop("Stopped. Nothing is kept."));
    this.on("export", () => this.save());
  }

  on(name, act) {
    this.button(name).addEventListener("click", act);
  }

  button(name) {
    return this.querySelector(`[data-do=${name}]`);
  }

  say(text) {
    this.querySelector(".salt-note").textContent = text;
  }

  stop(text) {
    this.worker?.terminate();
    this.worker = null;
    this.progress(0, 0);
    this.button("cancel").hidden = true;
    this.say(text);
  }

  progress(done, all) {
    const bar = this.querySelector("progress");
    bar.hidden = !all;
    bar.max = all || 1;
    bar.value = done;
  }

  light() {
    const { worker, wasm, science } = this.parts;
    const made = new Worker(new URL(worker, document.baseURI), { type: "module" });
    const at = (path) => new URL(path, document.baseURI).href;
    made.postMessage({ wasm: at(wasm), texts: at(science) });
    return made;
  }

  full() {
    const { fullWorker, full } = this.parts;
    const made = new Worker(new URL(fullWorker, document.baseURI), { type: "module" });
    const base = new URL(full.base, document.baseURI).href;
    made.postMessage({ start: { ...full, base } });
    return made;
  }

  /** Start an engine, ask it every question, and compare. */
  async run(name, start, files) {
    this.stop("");
    const past = !navigator.serviceWorker?.controller;
    this.button("cancel").hidden = false;
    this.say(`Starting the ${name}.`);
    const began = performance.now();
    try {
      this.worker = start();
      const asked = fetch(new URL(this.parts.checks, document.baseURI));
      const rows = await this.ask(
        this.worker,
        asked.then((got) => got.json()),
      );
      const seconds = (performance.now() - began) / 1000;
      this.stop("");
      this.show(name, rows, seconds);
      if (past) keep([this.parts.checks, ...files]).catch(() => {}); // no network: next time
    } catch (failure) {
      this.stop(`The ${name} could not run here: ${failure.message}.`);
    }
  }

  ask(worker, coming) {
    const all = this.parts.full.files.reduce((sum, [, size]) => sum + size, 0);
    const rows = [];
    let checks = [];
    return new Promise((resolve, reject) => {
      worker.onerror = (event) => reject(new Error(event.message || "it did not start"));
      worker.onmessage = ({ data }) => {
        if (data.begun) return;
        if (data.bytes) {
          this.progress(Math.min(data.bytes, all), all);
          const [now, then] = [data.bytes, all].map((bytes) => (bytes / 1e6).toFixed(1));
          this.say(`Loading CPython: ${now} of ${then} MB.`);
          return;
        }
        if (!data.id) return reject(new Error(data.failure));
        rows.push(compared(checks[data.id - 1], data));
        this.progress(rows.length, checks.length);
        if (rows.length === checks.length) resolve(rows);
        else worker.postMessage({ id: data.id + 1, question: checks[data.id].question });
      };
      coming.then((list) => {
        checks = list;
        worker.postMessage({ id: 1, question: checks[0].question });
      }, reject);
    });
  }

  show(name, rows, seconds) {
    this.runs.push({ name, rows });
    const within = rows.filter((row) => row.within).length;
    const same = rows.filter((row) => row.same).length;
    const line = document.createElement("tr");
    for (const [label, text] of [
      ["Engine", name],
      ["Checks", rows.length],
      ["Within tolerance", within],
      ["Same as the build to 1e-12", same],
      ["Seconds", seconds.toFixed(1)],
    ]) {
      const cell = document.createElement("td");
      cell.dataset.label = label;
      cell.textContent = text;
      line.append(cell);
    }
    line.dataset.engine = name;
    this.querySelector("tbody").append(line);
    this.querySelector("table").hidden = false;
    this.button("export").hidden = false;
    const good = within === rows.length && same === rows.length;
    this.say(
      good
        ? `The ${name} on this device agrees with every check.`
        : `The ${name} on this device differs in ${rows.length - Math.min(within, same)} checks.`,
    );
  }

  /** The rows as CSV, handed to the reader as a file. */
  save() {
    const head = "engine,table,line,published,ours,here,within,same\r\n";
    const lines = this.runs.flatMap(({ name, rows }) =>
      rows.map((r) => [name, r.table, r.line, r.expected, r.ours, r.here, r.within, r.same]),
    );
    const cell = (value) => {
      const text = String(value);
      // A spreadsheet must never take a cell for a formula.
      const safe = /^[=+@\t\r]|^-(?![\d.])/.test(text) ? "'" + text : text;
      return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
    };
    const text = head + lines.map((line) => line.map(cell).join() + "\r\n").join("");
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
    link.download = "saltline-checks.csv";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }
}

/** What came past the service worker, while it was not ready yet, is asked for again: it keeps it. */
async function keep(files) {
  const { serviceWorker } = navigator;
  if (!serviceWorker) return;
  if (!serviceWorker.controller) {
    await new Promise((done) => {
      serviceWorker.addEventListener("controllerchange", done, { once: true });
    });
  }
  for (const file of files) {
    const got = await fetch(new URL(file, document.baseURI), { cache: "force-cache" });
    await got.arrayBuffer();
  }
}

/** One check with the value found here. */
function compared(check, { reply, failure }) {
  const found = failure ? { crashed: failure } : JSON.parse(reply);
  let here = found.value;
  if (here !== undefined) for (const step of check.place) here = here?.[step];
  const { table, line, expected, tolerance, ours } = check;
  const words = tolerance === null;
  return {
    table,
    line,
    expected,
    ours,
    here: here ?? JSON.stringify(found),
    within: words ? here === expected : Math.abs(here - expected) <= tolerance,
    same: words ? here === ours : Math.abs(here - ours) <= RELATIVE * Math.abs(ours),
  };
}

define("salt-trust", SaltTrust);
