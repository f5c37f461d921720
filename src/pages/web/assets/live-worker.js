"use strict";
// One connection for all pages of this browser.
importScripts("/assets/live-link.js");

const pages = new Set();
const link = new LiveLink((news) => pages.forEach((page) => page.postMessage(news)));

self.onconnect = (event) => {
  const page = event.ports[0];
  page.onmessage = ({ data }) => {
    if (data === "bye") pages.delete(page);
    if (data === "nudge") link.nudge();
  };
  pages.add(page);
  page.postMessage({ changes: { ...link.state, whole: true } });
  page.postMessage({ link: link.link });
  link.nudge();
};
