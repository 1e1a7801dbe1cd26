// Flush day, step by step: one screen at a time, kept on the device until it is finished. What comes
// next is decided in session.js and by the science; the screens are drawn in session-pots.js and
// session-work.js.

import { parse } from "./link.js";
import { make } from "./make.js";
import { define } from "./parsed.js";
import { judged } from "./session-asked.js";
import { actions, button, main, quiet, say } from "./session-parts.js";
import { choosing } from "./session-pots.js";
import { done, drips, evening, night, pours } from "./session-work.js";
import * as step from "./session.js";
import { shareLink } from "./share.js";
import { keep, recall } from "./store.js";

const SCREENS = { pots: choosing, evening, night, drips, pours, done };
const LOSES = "This browser keeps nothing: leave this page open until you are done.";
const REPLACES = "You have a session of your own here. Opening this one replaces it.";

class SaltSession extends HTMLElement {
  connectedCallback() {
    this.forms = JSON.parse(this.querySelector(":scope > script").textContent);
    this.screen = this.querySelector(".salt-screen");
    this.session = recall("session") ?? step.fresh();
    addEventListener("hashchange", () => this.open());
    document.addEventListener("visibilitychange", () => this.tick());
    this.ticking = setInterval(() => this.tick(), 1000);
    if (!this.open()) this.draw();
  }

  disconnectedCallback() {
    clearInterval(this.ticking);
  }

  /** A link's session is shown beside the reader's own, never in its place unasked. */
  open() {
    const link = parse(location.hash);
    const found = link && step.fromLink(link);
    if (!found) return false;
    this.put(
      "A flush session from a link",
      say(found.pots.map((each) => each.name).join(", ")),
      say(this.session.pots.length ? REPLACES : ""),
      actions(
        main("Open it", () => this.go(found)),
        button("Leave it", () => this.draw()),
      ),
    );
    return true;
  }

  go(session) {
    this.session = session;
    this.kept = keep("session", session);
    this.draw();
  }

  change(more) {
    this.go({ ...this.session, ...more });
  }

  /** The pots with one of them as it is now. */
  with(pot, now) {
    return { pots: this.session.pots.map((each) => (each === pot ? now : each)) };
  }

  replace(pot, now) {
    this.change(this.with(pot, now));
  }

  /** Take what was read or poured, even if the science should fail to say what it means. */
  async learn(pot, read, rest) {
    this.session = { ...this.session, ...this.with(pot, read) };
    this.replace(read, await judged(this.forms, read, this.session.rinse, rest));
  }

  draw() {
    SCREENS[this.session.phase](this);
  }

  /** Show a screen; its heading takes the focus, except on the first one. */
  put(title, ...parts) {
    const heading = make("h3", { tabindex: "-1" }, title);
    this.screen.replaceChildren(heading, ...parts.filter(Boolean));
    if (this.kept === false) this.screen.append(say(LOSES, "salt-note"));
    if (this.drawn) queueMicrotask(() => heading.focus({ preventScroll: false }));
    this.drawn = true;
  }

  /** A copy of what the page keeps aside: a `choice`, or the `words` of a screen. */
  aside(kind, name) {
    return this.querySelector(`template[data-${kind}=${name}]`).content.cloneNode(true);
  }

  foot() {
    const share = async (pressed) => {
      const url = new URL(step.toLink(this.session), location.href).href;
      pressed.after(make("span", { role: "status" }, await shareLink("Flush day", url)));
    };
    const again = (pressed) => {
      const sure = quiet("Yes, forget this session", () => this.go(step.fresh()));
      pressed.replaceWith(sure);
      sure.focus();
    };
    return make(
      "p",
      { class: "salt-foot" },
      quiet("Share or keep", share),
      quiet("Print", () => print()),
      quiet("Start again", again),
    );
  }

  /** Count down in `timer`; `then` runs at the end. */
  wait(until, timer, then) {
    this.count = { until, timer, then };
    this.tick();
  }

  /** The clock on the wall decides, so that a dark screen does not stop the time. */
  tick() {
    const { count } = this;
    if (!count?.timer.isConnected) return;
    const now = Date.now();
    if (now < count.until) {
      count.timer.textContent = step.clock(count.until, now);
      return;
    }
    count.timer.textContent = "Time is up";
    this.count = null;
    navigator.vibrate?.(400);
    count.then?.();
  }
}

define("salt-session", SaltSession);
