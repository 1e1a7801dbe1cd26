// The line above a sheet: the club's name, where a club's link has set one on this device.

import { define } from "./parsed.js";
import { recall } from "./store.js";

class SaltHead extends HTMLElement {
  connectedCallback() {
    this.querySelector(".salt-blank").textContent = recall("club")?.settings?.name ?? "";
  }
}

define("salt-head", SaltHead);
