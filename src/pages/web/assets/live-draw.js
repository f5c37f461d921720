"use strict";
// Puts the state on the page. Nothing here knows where it comes from.

const part = (id) => document.getElementById(id);
const put = (id, text) => {
  const element = part(id);
  if (element.textContent !== text) element.textContent = text;
};
const ICONS = { speaking: "speaking", listening: "listening", holding: "holding", still: "still" };

const draw = {
  stage({ phase, heading, part: which, prompt, aside }) {
    document.body.dataset.phase = phase;
    put("heading", heading || part("heading").dataset.title);
    put("part", which);
    put("prompt", prompt);
    same();
    put("aside", aside);
    document.body.classList.toggle("wordy", prompt.length > 34);
    const others = part("others");
    if (others) others.hidden = phase === "practice" || phase === "starting";
  },

  figure({ text, label, of, share }) {
    const figure = part("figure");
    if (figure.textContent !== text) {
      figure.textContent = text;
      beat();
    }
    figure.setAttribute("aria-label", text ? `${label} ${text}`.trim() : "");
    figure.classList.toggle("long", text.length > 4);
    document.body.classList.toggle("counts", text !== "");
    put("of", of);
    part("line").hidden = share === null;
    if (share !== null) part("line-done").style.transform = `scaleX(${Math.min(1, Math.max(0, share))})`;
  },

  picture({ name, described }) {
    const picture = part("picture");
    picture.hidden = name === "";
    document.body.classList.toggle("pictured", name !== "");
    if (name === "") return;
    part("drawn").setAttribute("href", `#picture-${name}`);
    picture.setAttribute("aria-label", described);
  },

  bar({ kind, active, timed, label, goal, goal_label, base, base_label }) {
    const gauge = part("gauge");
    gauge.hidden = kind === "none";
    gauge.classList.toggle("away", !active);
    document.body.classList.toggle("gauged", kind !== "none");
    document.body.classList.toggle("timed", kind !== "none" && timed);
    gauge.dataset.kind = kind;
    put("gauge-label", label);
    part("track").setAttribute("aria-label", label);
    mark("goal", goal, goal_label);
    mark("base", base, base_label);
    if (!active) draw.meter({ at: null, top: null, words: "" });
  },

  meter({ at, top, words }) {
    const track = part("track");
    const place = at === null ? 0 : at;
    part("fill").style.transform = `scaleY(${place})`;
    part("bead").style.transform = `translateY(${(-place * 100).toFixed(2)}%)`;
    part("bead").classList.toggle("gone", at === null);
    mark("reached", top, null);
    put("gauge-words", words);
    track.setAttribute("aria-valuenow", Math.round(100 * place));
    track.setAttribute("aria-valuetext", words || "–");
  },

  offers({ now, more, always }) {
    part("always").hidden = always.length === 0;
    for (const id of ["stop", "pause"]) part(id).hidden = !always.some((offer) => offer.name === part(id).dataset.command);
    buttons("now", now);
    buttons("all", more);
    part("all").hidden = more.length === 0;
    document.querySelector(".say").classList.toggle("empty", now.length === 0);
  },

  rows(rows) {
    // Where the page alone leads, the sentence stands above; here stands what was heard of the client.
    const leads = document.body.classList.contains("by-page");
    const two = leads ? rows.filter((row) => row.who === "client").slice(-1) : rows.slice(-2);
    while (two.length < 2) two.push(null);
    two.forEach((row, index) => {
      const element = part(`row-${index + 1}`);
      put(element.id, row ? row.text : "");
      element.dataset.who = row ? row.who : "";
    });
  },

  mood({ name, words }) {
    const mood = part("mood");
    mood.dataset.mood = ICONS[name] || "idle";
    mood.querySelector("span").textContent = words;
  },

  done(rows) {
    part("summary").hidden = rows.length === 0;
    list("done", rows, (row) => [row.name, row.done]);
  },

  // The page alone leads: the whole sentence, and over it what to do now.
  by_page({ leads, sentence, doing, words }) {
    document.body.classList.toggle("by-page", leads);
    document.body.dataset.doing = doing;
    part("doing").hidden = words === "";
    part("sentence").hidden = sentence === "";
    put("doing", words);
    put("sentence", sentence);
    document.body.classList.toggle("long-sentence", sentence.length > 56);
    same();
  },

  notes(notes) {
    part("messages").hidden = notes.length === 0;
    list("notes", notes, (note) => [note.text]);
  },
};

// The beat to the eye: one of two discs is filled, in turn. It needs no motion to be seen.
function beat() {
  const discs = part("beat");
  discs.dataset.side = discs.dataset.side === "left" ? "right" : "left";
}

// What stands there as a sentence does not stand there twice.
function same() {
  const plain = (id) => part(id).textContent.replace(/[.?!]$/, "");
  document.body.classList.toggle("said-already", plain("sentence") !== "" && plain("sentence") === plain("prompt"));
}

// A mark on the track, and what it means beside it.
function mark(id, at, words) {
  const line = part(id);
  line.hidden = at === null;
  line.style.bottom = `${100 * (at || 0)}%`;
  const legend = part(`${id}-legend`);
  if (!legend) return;
  legend.hidden = at === null || !words;
  put(`${id}-label`, words || "");
}

// Buttons that are offered still keep their place and their focus.
function buttons(id, offers) {
  const group = part(id);
  const held = group.contains(document.activeElement) && document.activeElement !== group;
  const before = new Map([...group.querySelectorAll("button")].map((button) => [button.dataset.command, button]));
  for (const [name, button] of before) if (!offers.some((offer) => offer.name === name)) button.remove();
  for (const [place, { name, label }] of offers.entries()) {
    let button = before.get(name);
    if (!button) {
      button = document.createElement("button");
      button.type = "button";
      button.dataset.command = name;
    }
    if (button.textContent !== label) button.textContent = label;
    const there = group.querySelectorAll("button")[place];
    if (there !== button) group.insertBefore(button, there || null);
  }
  // What had the focus is gone: it stays near, and on nothing that could be pressed by mistake.
  if (held && !group.contains(document.activeElement)) group.focus({ preventScroll: true });
}

function list(id, rows, cells) {
  const items = rows.map((row) => {
    const item = document.createElement("li");
    for (const text of cells(row)) item.append(Object.assign(document.createElement("span"), { textContent: text }));
    return item;
  });
  part(id).replaceChildren(...items);
}
