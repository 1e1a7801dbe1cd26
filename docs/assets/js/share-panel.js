// "Share or keep": a panel below the buttons with what can be done with an answer. All of it happens
// on the device. Fetched when it is first opened.

import { code } from "./code.js";
import { make } from "./make.js";
import { paper, printAlone } from "./paper.js";
import { isCurrent, record, summary } from "./record.js";
import { addAnswer } from "./store.js";

const WAIT = "These numbers are not worked out yet: finish the form above first.";
const NO_CODE = "This link is too long for a QR code: copy it instead.";

/** Open the panel of a calculator, or close it. */
export function togglePanel(calculator, opener) {
  const id = `share-${calculator.declared.id}`; // an input may be named "share"
  let found = document.getElementById(id);
  if (found) found.hidden = !found.hidden;
  else opener.closest(".salt-actions").after((found = panel(calculator, opener, id)));
  opener.setAttribute("aria-expanded", String(!found.hidden));
  opener.setAttribute("aria-controls", id);
}

function panel(calculator, opener, id) {
  const status = make("p", { class: "salt-note", role: "status" });
  const spare = make("div");
  const root = new URL(document.querySelector("link[rel=manifest]").href);

  /** A button that acts on the answer as it stands, and says what came of it. */
  const action = (label, act) => {
    const button = make("button", { type: "button" }, label);
    button.addEventListener("click", async () => {
      spare.replaceChildren();
      status.textContent = isCurrent(calculator) ? "" : WAIT;
      if (status.textContent) return;
      status.replaceChildren(...[(await act(record(calculator))) ?? ""].flat());
    });
    return button;
  };

  /** Where a page may not copy, the reader can. */
  const copy = async (text, done) => {
    try {
      await navigator.clipboard.writeText(text);
      return done;
    } catch {
      const box = make("textarea", { readOnly: true, rows: 6, value: text, "aria-label": "Text to copy" });
      spare.replaceChildren(box);
      box.select();
      box.focus();
      return "This browser does not let a page copy: copy the text in the box.";
    }
  };

  const send = ({ question, verdict, number, link }) =>
    navigator
      .share({ title: question, text: [verdict, number].filter(Boolean).join(" "), url: link })
      .catch(({ name }) => (name === "AbortError" ? "" : `Copy this link: ${link}`));

  const mail = make("a", { class: "salt-button", href: "mailto:" }, "Write an email");
  mail.addEventListener("click", (event) => {
    status.textContent = isCurrent(calculator) ? "" : WAIT;
    if (status.textContent) return event.preventDefault();
    const kept = record(calculator);
    const body = encodeURIComponent(summary(kept).replaceAll("\n", "\r\n"));
    mail.href = `mailto:?subject=${encodeURIComponent(kept.question)}&body=${body}`;
  });

  const square = ({ link }) => {
    try {
      spare.replaceChildren(code(link));
      return "Another phone’s camera opens this answer from the code.";
    } catch {
      return NO_CODE;
    }
  };

  const keep = (kept) =>
    addAnswer(kept)
      ? ["On your sheet. ", make("a", { href: new URL("sheet/", root).href }, "Look at the sheet")]
      : "Not on the sheet: it holds twelve answers at most, and this browser must keep them.";

  const made = make(
    "div",
    { class: "salt-share", id, role: "group", "aria-label": "Share or keep this answer" },
    make("p", { class: "salt-hint" }, "The link holds the numbers in this form and nothing else."),
    make(
      "div",
      { class: "salt-ways" },
      navigator.share ? action("Share", send) : "",
      action("Copy the link", ({ link }) => copy(link, "The link is copied. It opens with these numbers.")),
      action("Copy as text", (kept) => copy(summary(kept), "The answer is copied as text, with its link.")),
      mail,
      action("Show a QR code", square),
      action("Add to my sheet", keep),
      action("Print this answer", (kept) => printAlone(paper(kept))),
    ),
    status,
    spare,
  );
  calculator.form.addEventListener("input", () => {
    spare.replaceChildren(); // what stands there is another answer's
    status.textContent = "";
  });
  made.addEventListener("keydown", ({ key }) => {
    if (key !== "Escape") return;
    togglePanel(calculator, opener);
    opener.focus();
  });
  return made;
}
