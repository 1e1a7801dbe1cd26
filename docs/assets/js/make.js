// Small parts of a page made by a script.

/** An element with properties (`class`, `data-…` and `aria-…` as attributes) and children. */
export function make(tag, properties = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (name in made) made[name] = value;
    else made.setAttribute(name, value);
  }
  made.append(...children.filter((child) => child !== null && child !== ""));
  return made;
}

/** A list of texts, with its title before it; nothing where there is no text. */
export function listed(title, texts) {
  if (!texts.length) return [];
  return [make("h3", {}, title), make("ul", {}, ...texts.map((text) => make("li", {}, text)))];
}
