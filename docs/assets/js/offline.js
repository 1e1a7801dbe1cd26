// The copy of the site that stays on the device, and the line in the footer that says how things
// stand. A newer version waits until the reader agrees.

const line = document.querySelector(".salt-copy");
const HOUR = 3_600_000; // milliseconds
const ONLINE_ONLY = "Not kept on this device: it needs the network.";

function say(text, label, act) {
  const status = line.querySelector("[role=status]");
  status.textContent = text;
  if (!label) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = label;
  button.addEventListener("click", act, { once: true });
  status.append(" ", button);
}

/** How old the copy is; nothing where the device's clock runs behind. */
function age() {
  const time = line.querySelector("time");
  const days = Math.floor((Date.now() - Date.parse(time.dateTime)) / (24 * HOUR));
  if (days > 0) time.append(` (${days} ${days === 1 ? "day" : "days"} ago)`);
}

function follow(registration) {
  const { serviceWorker } = navigator;
  let replaced = Boolean(serviceWorker.controller);
  serviceWorker.addEventListener("controllerchange", () => {
    if (replaced) location.reload(); // all of the newer version, or none of it
    replaced = true;
  });
  const show = () => {
    const { waiting, installing, active } = registration;
    if (waiting && active) {
      say("A newer version is ready.", "Use it now", () => waiting.postMessage("use"));
    } else if (active) say("Ready for use without a network.");
    else if (installing || waiting) say("Getting ready for use without a network.");
    else say(ONLINE_ONLY);
  };
  const watch = () => registration.installing?.addEventListener("statechange", show);
  registration.addEventListener("updatefound", () => {
    watch();
    show();
  });
  watch();
  show();
  let asked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.hidden || Math.abs(Date.now() - asked) < HOUR) return;
    asked = Date.now();
    registration.update().catch(() => {}); // no network: the next time will do
  });
}

function keep() {
  const script = new URL(line.dataset.worker, document.baseURI);
  navigator.serviceWorker
    .register(script, { updateViaCache: "none" })
    .then(follow)
    .catch(() => say(ONLINE_ONLY));
}

/** The page has answered, or has had time to, or has nothing to answer. */
export function begin() {
  if (!line) return;
  age();
  if (!("serviceWorker" in navigator)) return say(ONLINE_ONLY);
  const known = navigator.serviceWorker.controller;
  const saves =
    navigator.connection?.saveData || matchMedia("(prefers-reduced-data: reduce)").matches;
  if (saves && !known) return say("", `Keep it on this device (${line.dataset.size})`, keep);
  if (document.readyState === "complete") keep();
  else addEventListener("load", keep, { once: true });
}
