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

/** A packed file as the reply that Pyodide expects; `lose` hears if it breaks off on the way. */
async function unpacked(address, type, count, lose) {
  const got = await network(address);
  if (!got.ok) throw new Error(`${got.status} ${address}`);
  const counted = new TransformStream({
    transform(part, out) {
      count(part.length);
      out.enqueue(part);
    },
  });
  const whole = new TransformStream();
  const packed = got.body.pipeThrough(counted);
  packed.pipeThrough(new DecompressionStream("gzip")).pipeTo(whole.writable).catch(lose);
  return new Response(whole.readable, { headers: { "Content-Type": type } });
}

/** Start it; all files are fetched at once, since the link is the slowest part. */
async function start({ base, files, lock }, lose) {
  let bytes = 0;
  const count = (more) => self.postMessage({ bytes: (bytes += more) });
  const size = new Map(files);
  const script = async (name) => {
    const module = await import(base + name);
    count(size.get(name));
    return module;
  };
  const hold = (wanted, name, type) =>
    held.set(base + wanted, unpacked(base + name, type, count, lose));
  hold("pyodide.asm.wasm", "pyodide.asm.bin", "application/wasm");
  hold("python_stdlib.zip", "library.bin", "application/zip");
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
      answer = new Promise((resolve, lose) => start(data.start, lose).then(resolve, lose));
      self.navigator.locks?.request(LOCK, () => answer).catch(() => {});
      await answer;
    } else self.postMessage({ id: data.id, reply: (await answer)(data.question) });
  } catch (failure) {
    self.postMessage({ id: data.id, failure: String(failure?.message ?? failure) });
  }
};
