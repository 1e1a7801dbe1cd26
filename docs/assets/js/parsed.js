// Our scripts may run while the page is still being read.

/** Once the whole page is there. */
export function parsed(act) {
  if (document.readyState !== "loading") act();
  else document.addEventListener("DOMContentLoaded", act, { once: true });
}

/** An element that needs what it holds, and what stands elsewhere on the page. */
export const define = (name, element) => parsed(() => customElements.define(name, element));
