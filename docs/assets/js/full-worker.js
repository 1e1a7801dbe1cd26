// The full engine (CPython as WebAssembly) in a worker: fetches its files from this site with a count
// of bytes, starts, and answers the same questions as the light engine.

// While this is held, the service worker fetches nothing for later (it asks for the same name).
const LOCK = "saltline: fetching";
let answer;
const held = new Map(); // address -> promise of a reply
const network = self.fetch.bind(self);

/** Pyodide asks for its files by address; those are on their way already, and unpacked here. */
self.fetch = (resource, options) => {
  const address = String(resource?.url ?? resource);
  return held.get(address) ?? network(resource, options);
};

async function unpacked(address, type, count) {
  const got = await network(address);
  if (!got.ok) throw new Error(`${got.status} ${address}`);
  const counted = new TransformStream({
    transform(part, out) {
      count(part.length);
      out.enqueue(part);
    },
  });
  const body = got.body.pipeThrough(counted).pipeThrough(new DecompressionStream("gzip"));
  return new Response(body, { headers: { "Content-Type": type } });
}

/** All files at once, since the link is the slowest part. */
async function start({ base, files, lock }) {
  let bytes = 0;
  const count = (more) => self.postMessage({ bytes: (bytes += more) });
  const size = new Map(files);
  const script = (name) =>
    import(base + name).then((module) => {
      count(size.get(name));
      return module;
    });
  held.set(
    base + "pyodide.asm.wasm",
    unpacked(base + "pyodide.asm.bin", "application/wasm", count),
  );
  held.set(base + "python_stdlib.zip", unpacked(base + "library.bin", "application/zip", count));
  const scripts = [script("pyodide.mjs"), script("pyodide.asm.js")];
  await Promise.all([...scripts, ...held.values()]);
  const { loadPyodide } = await scripts[0];
  const engine = await loadPyodide({ indexURL: base, packageBaseUrl: base, lockFileContents: lock });
  held.clear();
  return engine.pyimport("saltline.answering").answer;
}

self.onmessage = async ({ data }) => {
  try {
    if (data.start) {
      answer = start(data.start);
      self.navigator.locks?.request(LOCK, () => answer).catch(() => {});
    } else self.postMessage({ id: data.id, reply: (await answer)(data.question) });
  } catch (failure) {
    self.postMessage({ id: data.id, failure: String(failure?.message ?? failure) });
  }
};
