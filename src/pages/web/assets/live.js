"use strict";
// Joins the page to the program: what comes is drawn, what is pressed is sent.

const linkLine = part("link");
const log = part("log");
const LOG_KEEPS = 12;
let phase = "starting";
let heardId = null;
let once = [];

// What comes.

function news({ changes, link }) {
  if (link) shown(link);
  if (!changes) return;
  if (changes.stage) phase = changes.stage.phase;
  for (const [name, value] of Object.entries(changes)) if (draw[name] && value !== null) draw[name](value);
  if (changes.said) read(changes.said);
  if (changes.seq !== undefined) document.documentElement.dataset.seq = changes.seq;
}

// Whole lines for a screen reader. What was said before this page was opened is not read out.
function read(said) {
  const newest = said.length ? said[said.length - 1].id : 0;
  if (heardId !== null) {
    for (const line of said.filter((line) => line.id > heardId)) {
      log.append(Object.assign(document.createElement("p"), { textContent: line.text }));
    }
  }
  heardId = newest;
  while (log.children.length > LOG_KEEPS) log.firstChild.remove();
}

let away;
function shown(link) {
  document.documentElement.dataset.link = link;
  clearTimeout(away);
  if (link === "open") {
    put("link", "");
    refill();
    return;
  }
  if (link === "anew") {
    heardId = null;
    put("link", linkLine.dataset.anew);
    return;
  }
  // A moment's break is not worth a word.
  const words = phase === "over" ? linkLine.dataset.ended : linkLine.dataset.connecting;
  away = setTimeout(() => put("link", words), 700);
}

let port;
function follow() {
  const direct = () => {
    const link = new LiveLink(news);
    port = { postMessage: (word) => word === "nudge" && link.nudge() };
  };
  if (!("SharedWorker" in self)) return direct();
  try {
    const worker = new SharedWorker("/assets/live-worker.js", { name: "tidecount" });
    let begun = false;
    worker.onerror = () => {
      if (!begun) {
        begun = true;
        direct();
      }
    };
    worker.port.onmessage = ({ data }) => {
      begun = true;
      news(data);
    };
    port = worker.port;
  } catch {
    direct();
  }
}

// What is pressed.

async function refill() {
  try {
    const answer = await fetch("/live/once", { cache: "no-store" });
    if (answer.ok) once = (await answer.json()).once;
  } catch {
    once = [];
  }
}

async function send(name, value, again = true) {
  if (once.length === 0) await refill();
  const number = once.shift() || "";
  try {
    const answer = await fetch(`/live/command?once=${number}`, { method: "POST", body: new URLSearchParams({ [name]: value }) });
    if (answer.status === 409 && again) {
      once = [];
      return send(name, value, false);
    }
    const told = answer.headers.get("content-type") === "application/json" ? await answer.json() : {};
    if (told.once) once.push(told.once);
    refused(answer.ok || name === "key" ? "" : told.why || linkLine.dataset.refused);
  } catch {
    refused(linkLine.dataset.refused);
    port.postMessage("nudge");
  }
}

let refusal;
function refused(why) {
  clearTimeout(refusal);
  if (document.documentElement.dataset.link !== "open") return;
  put("link", why);
  if (why) refusal = setTimeout(() => put("link", ""), 5000);
}

document.addEventListener("click", (event) => {
  const button = event.target.closest("button[data-command]");
  if (button) send("command", button.dataset.command);
});

// The keys of the terminal. Escape stops at once; all others are off until they are switched on, for letters and arrows belong to
// screen readers and to scrolling (WCAG 2.2, 2.1.4).
const KEYS = {
  " ": "done", Enter: "done", PageDown: "done", ArrowRight: "done", ArrowDown: "done",
  PageUp: "again", ArrowLeft: "again", ArrowUp: "again", Backspace: "again",
  ".": "pause", b: "pause", p: "pause", F5: "stop", 0: "stop",
  s: "skip", v: "go-back", r: "rest", y: "yes", n: "no", "+": "louder", "=": "louder", "-": "softer",
  "<": "slower", ">": "faster", h: "help", "?": "help", w: "why", q: "finish",
};

// While a number is asked for, the figures answer. A 1 waits a moment for a 0 behind it.
let one;
function answered(key) {
  const button = (n) => document.querySelector(`#now button[data-command="answer-${n}"]`);
  const ten = one && key === "0";
  clearTimeout(one);
  one = undefined;
  if (!/^[0-9]$/.test(key) || !button(key)) return false;
  if (ten && button(10)) button(10).click();
  else if (key === "1" && button(10)) one = setTimeout(() => { one = undefined; button(1)?.click(); }, 700);
  else button(key).click();
  return true;
}
document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
  if (event.key === "Escape") return void send("command", part("stop").dataset.command);
  if (part("keys").checked && answered(event.key)) return void event.preventDefault();
  const command = part("keys").checked && KEYS[event.key];
  if (!command || event.target.closest("button, input, a, summary")) return;
  event.preventDefault();
  send("key", command);
});

// Choices are this browser's own.

function kept(id, change) {
  const box = part(id);
  try {
    const before = localStorage.getItem(`tidecount-${id}`);
    if (before !== null) box.checked = before === "yes";
    box.addEventListener("change", () => localStorage.setItem(`tidecount-${id}`, box.checked ? "yes" : "no"));
  } catch {
    // Without a store it is chosen anew each time.
  }
  box.addEventListener("change", change);
  change();
}
kept("keys", () => {});
kept("aloud", () => log.setAttribute("aria-live", part("aloud").checked ? "polite" : "off"));

part("more").addEventListener("click", () => {
  const [more, everything] = [part("more"), part("everything")];
  everything.hidden = !everything.hidden;
  more.setAttribute("aria-expanded", String(!everything.hidden));
  more.textContent = everything.hidden ? more.dataset.more : more.dataset.less;
  // The button that was pressed stays in sight under the bar at the top.
  if (!everything.hidden) more.scrollIntoView({ block: "start" });
});

document.addEventListener("visibilitychange", () => document.hidden || port.postMessage("nudge"));
addEventListener("online", () => port.postMessage("nudge"));
addEventListener("pagehide", () => port.postMessage("bye"));
addEventListener("pageshow", (event) => event.persisted && location.reload());
follow();
