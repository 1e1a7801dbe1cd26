// Addresses that others can open: the site's own where the build knew it, else where the reader is.

const known = document.querySelector("link[rel=canonical]")?.href;

/** The site's root, for links that are handed on. */
export const handedRoot = () => {
  const manifest = document.querySelector("link[rel=manifest]").getAttribute("href");
  return new URL(".", new URL(manifest, known ?? location.href)).href;
};

/** A link to this page as it is handed on. */
export const handed = (link) => (known ? new URL(new URL(link).hash, known).href : link);

/** A link to another page, as it stands in this one's HTML, as it is handed on. */
export const handedTo = (href) => new URL(href, known ?? location.href).href;
