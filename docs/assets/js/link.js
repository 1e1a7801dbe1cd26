// Share links: the fragment `#ID=VERSION;name=value;...` in letters, digits and `. _ - ~ ; = ,` only.
// The other half is calculators/saltline_pages/links.py; tests/vectors/shown.json holds them together.

const bytes = new TextEncoder();

function escaped(value) {
  if (Array.isArray(value)) return value.map(escaped).join(",");
  const text = typeof value === "number" ? String(value).replace("e+", "e") : value;
  return text.replace(/[^A-Za-z0-9._-]/gu, (sign) =>
    [...bytes.encode(sign)]
      .map((byte) => "~" + byte.toString(16).toUpperCase().padStart(2, "0"))
      .join(""),
  );
}

/** The fragment, with its `#`, for these inputs; empty ones are left out. */
export function fragment(form, inputs) {
  const parts = [`${form.id}=${form.version}`];
  for (const { name } of form.inputs) {
    const value = inputs[name];
    if (value !== null && value !== undefined && value !== "") {
      parts.push(`${name}=${escaped(value)}`);
    }
  }
  return "#" + parts.join(";");
}

function unescaped(text) {
  try {
    return decodeURIComponent(text.replaceAll("%", "%25").replaceAll("~", "%"));
  } catch {
    return null;
  }
}

/** The calculator a fragment speaks of: `{id, version, values, dropped}`, or null. */
export function parse(hash) {
  const [head, ...parts] = hash.replace(/^#/, "").split(";");
  const match = head.match(/^([a-z][a-z0-9-]*)=(\d{1,6})$/);
  if (!match) return null;
  const values = {};
  const dropped = [];
  for (const part of parts.slice(0, 100)) {
    const at = part.indexOf("=");
    const name = part.slice(0, at);
    const value = at > 0 ? unescaped(part.slice(at + 1)) : null;
    if (value === null || !/^[a-z0-9_]{1,40}$/.test(name)) dropped.push(part.slice(0, 40));
    else values[name] = value;
  }
  return { id: match[1], version: Number(match[2]), values, dropped };
}
