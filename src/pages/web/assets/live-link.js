"use strict";
// Follows the program: keeps the newest state, and connects again by itself. Used by the page, or by the worker that all pages of one
// browser share (a browser opens only a few connections to one place).

const QUIET_MS = 6000; // Beats come every 2 s; after so long without any the connection is dead.
const FIRST_WAIT_MS = 200;
const LONGEST_WAIT_MS = 3000;

class LiveLink {
  // `tell({changes})` with what changed, `tell({link})` with "open", "again" or "anew".
  constructor(tell) {
    this.tell = tell;
    this.state = {};
    this.link = "again";
    this.wait = FIRST_WAIT_MS;
    this.connect();
  }

  connect() {
    clearTimeout(this.later);
    if (this.source) this.source.close();
    const source = new EventSource("/live/events");
    this.source = source;
    source.onmessage = (event) => {
      this.heard();
      const changes = JSON.parse(event.data);
      // A whole state replaces everything, so that nothing of an earlier start stays.
      if (changes.whole) this.state = {};
      Object.assign(this.state, changes);
      this.tell({ changes });
    };
    source.addEventListener("beat", () => this.heard());
    source.onerror = () => this.lost();
    this.watch();
  }

  heard() {
    this.wait = FIRST_WAIT_MS;
    this.set("open");
    this.watch();
  }

  watch() {
    clearTimeout(this.quiet);
    this.quiet = setTimeout(() => this.lost(), QUIET_MS);
  }

  // The browser's own trying again is not used: it does not know a program that was started anew from one that is away.
  lost() {
    clearTimeout(this.quiet);
    if (this.source) this.source.close();
    this.source = null;
    if (this.link === "open") this.set("again");
    clearTimeout(this.later);
    this.later = setTimeout(() => this.again(), this.wait);
    this.wait = Math.min(2 * this.wait, LONGEST_WAIT_MS);
  }

  async again() {
    try {
      const answer = await fetch("/live/state", { cache: "no-store" });
      if (answer.status === 403) {
        this.set("anew");
        return this.lost();
      }
      if (answer.ok) return this.connect();
    } catch {
      this.set("again");
    }
    this.lost();
  }

  // Somebody looks again: no reason to wait longer.
  nudge() {
    if (this.link !== "open") {
      this.wait = FIRST_WAIT_MS;
      clearTimeout(this.later);
      this.again();
    }
  }

  set(link) {
    if (this.link !== link) {
      this.link = link;
      this.tell({ link });
    }
  }
}
