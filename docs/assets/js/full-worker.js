// The full engine (CPython as WebAssembly) in a worker: fetches its files from this site with a count
// of bytes, starts, and answers the same questions as the light engine.

let answer;
const held = new Map();
const network = self.fetch.bind(self);

/** Pyodide asks for its files by address; those already fetched are given from memory. */
self.fetch = async (resource, options) => {
  const body = held.get(String(resource?.url ?? resource));
  if (!body) return network(resource, options);
  const type = String(resource).endsWith(".wasm") ? "application/wasm" : "application/octet-stream";
  return new Response(body, { headers: { "Content-Type": type } });
};

async function fetched(address, count) {
  const got = await network(address);
  if (!got.ok) throw new Error(`${got.status} ${address}`);
  const parts = [];
  const reader = got.body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    count(value.length);
  }
  return new Blob(parts).arrayBuffer();
}

async function start({ base, files, wheel }) {
  let bytes = 0;
  const count = (more) => self.postMessage({ bytes: (bytes += more) });
  for (const [name, size] of files) {
    const address = base + name;
    if (/\.m?js$/.test(name)) {
      await import(address);
      count(size);
    } else held.set(address, await fetched(address, count));
  }
  const { loadPyodide } = await import(base + "pyodide.mjs");
  const engine = await loadPyodide({ indexURL: base });
  engine.unpackArchive(held.get(base + wheel), "wheel");
  held.clear();
  return engine.pyimport("saltline.answering").answer;
}

self.onmessage = async ({ data }) => {
  try {
    if (data.start) answer = start(data.start);
    else self.postMessage({ id: data.id, reply: (await answer)(data.question) });
  } catch (failure) {
    self.postMessage({ id: data.id, failure: String(failure?.message ?? failure) });
  }
};
