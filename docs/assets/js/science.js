// The science in the light engine: files below /lib, and later parts of them.

// Modules that run already take what is new to them; `texts` come in the order of their imports.
const GROW = `
import sys
def grow(path, text):
    module = sys.modules.get(path[:-3].replace("/", "."))
    if module:
        exec(text, module.__dict__)
`;

/** Put a part of the science (an object of path and text) into the engine; nothing runs yet. */
export function put(engine, science) {
  const { FS } = engine;
  for (const [path, text] of Object.entries(science)) {
    const file = `/lib/${path}`;
    FS.mkdirTree(file.slice(0, file.lastIndexOf("/")));
    const stream = FS.open(file, "a");
    const bytes = new TextEncoder().encode(text);
    FS.write(stream, bytes, 0, bytes.length);
    FS.close(stream);
  }
}

/** Begin with the first part; the one function that answers. */
export function begin(engine, science) {
  put(engine, science);
  engine.runPython(`${GROW}sys.path.append("/lib")`);
  return engine.pyimport("saltline.answering").answer;
}

/** Add a later part. */
export function add(engine, science) {
  put(engine, science);
  const grow = engine.globals.get("grow");
  for (const [path, text] of Object.entries(science)) grow(path, text);
}
