// The set-up pages work without this. With it the level moves while the microphone is listened to, the page comes back by itself
// when that is over, and the focus goes where something is to be read.
"use strict";

const focusOn = (element) => {
  if (!element) return;
  if (!element.hasAttribute("tabindex") && !element.matches("a, button, input, select, textarea")) element.tabIndex = -1;
  element.focus();
};

// A link to a field takes the focus there, also where the field is within something closed.
document.addEventListener("click", (event) => {
  const link = event.target.closest(".summary a[href^='#']");
  if (!link) return;
  const field = document.getElementById(decodeURIComponent(link.hash.slice(1)));
  if (!field) return;
  event.preventDefault();
  for (let at = field.parentElement; at; at = at.parentElement) if (at.tagName === "DETAILS") at.open = true;
  field.scrollIntoView({ block: "center" });
  focusOn(field);
});

// A fault within something closed is opened to be seen.
for (const wrong of document.querySelectorAll("details .wrong")) wrong.closest("details").open = true;

const summary = document.getElementById("summary");
if (summary) focusOn(summary);
else if (location.hash) focusOn(document.getElementById(decodeURIComponent(location.hash.slice(1))));

// What is typed and not saved is not lost by a slip.
const form = document.querySelector("form input[name='draft'], form textarea[name='text']")?.form;
if (form) {
  let changed = false;
  let sent = false;
  form.addEventListener("input", () => { changed = true; });
  form.addEventListener("submit", () => { sent = true; });
  window.addEventListener("beforeunload", (event) => { if (changed && !sent) event.preventDefault(); });
}

const listening = document.querySelector("[data-listening]");
if (listening) {
  const part = (id) => document.getElementById(id);
  const share = (db) => (db === null ? 0 : Math.min(100, Math.max(0, ((db + 80) / 80) * 100)));
  const put = (element, text) => { if (element && element.textContent !== text) element.textContent = text; };
  const stream = new EventSource("/now");
  part("look").hidden = true;
  stream.onmessage = (event) => {
    const now = JSON.parse(event.data);
    put(part("now-told"), now.told);
    put(part("now-figure"), now.figure);
    put(part("now-say"), now.say);
    part("now-level").setAttribute("width", share(now.level).toFixed(1));
    part("now-room").setAttribute("x", share(now.room).toFixed(1));
  };
  stream.addEventListener("over", () => {
    stream.close();
    location.replace(listening.dataset.listening);
  });
}
