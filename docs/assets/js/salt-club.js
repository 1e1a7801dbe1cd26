// The form that makes a club's link: name, tap, pen scale, units and hemisphere.

import { handedRoot } from "./address.js";
import { code } from "./code.js";
import { make } from "./make.js";
import { define } from "./parsed.js";
import { field } from "./read.js";
import { inWords, toFragment, undo, usable } from "./settings.js";
import { recall } from "./store.js";

const TAP = { label: "Tap water", kind: "number", unit: "ms_cm", low: 0, high: 5, optional: true };

class SaltClub extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector("form");
    this.made = this.querySelector(".salt-made");
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.make();
    });
    this.form.addEventListener("input", () => this.made.replaceChildren());
    this.now();
  }

  say(text) {
    this.querySelector(".salt-note").textContent = text;
  }

  /** What is set on this device, and the way back. */
  now() {
    const settings = recall("club")?.settings;
    const place = this.querySelector(".salt-now");
    if (!settings) return place.replaceChildren();
    const button = make("button", { type: "button" }, "Undo");
    button.addEventListener("click", () => {
      undo();
      this.now();
      this.say("Taken back. The site is as it was before.");
    });
    const words = [settings.name ?? "a club", inWords(settings)].filter(Boolean).join(": ");
    place.replaceChildren(make("p", {}, `This device is set for ${words}.`), button);
  }

  make() {
    const { name, tap, way, scale, units, hemisphere } = this.form.elements;
    const ways = JSON.parse(this.dataset.ways);
    const outcome = field(TAP, tap.value, { ways, at: Number(way.value) });
    if (!("value" in outcome)) {
      this.say(`${TAP.label} ${outcome.tail}`);
      return tap.focus();
    }
    const tap_ms_cm = outcome.value === null ? "" : String(Number(outcome.value.toPrecision(4)));
    const typed = { name: name.value, tap_ms_cm, scale: scale.value, units: units.value };
    const settings = usable({ ...typed, hemisphere: hemisphere.value });
    if (!Object.keys(settings).length) {
      this.say("Fill in at least one field.");
      return name.focus();
    }
    const link = handedRoot() + toFragment(settings);
    const copy = make("button", { type: "button" }, "Copy the link");
    copy.addEventListener("click", () =>
      navigator.clipboard.writeText(link).then(
        () => this.say("The link is copied."),
        () => this.say("This browser does not let a page copy: press and hold the link."),
      ),
    );
    this.say("Send this link, or print the code:");
    this.made.replaceChildren(make("p", {}, make("a", { href: link }, link)), copy, code(link));
  }
}

define("salt-club", SaltClub);
