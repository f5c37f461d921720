// Checks of a page that has been drawn; each gives a list of faults in words.
(() => {
  const shown = (element) => {
    const style = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    return style.visibility === "visible" && style.display !== "none" && Number(style.opacity) > 0 && box.width > 1 && box.height > 1;
  };
  const named = (element) => {
    const text = (element.innerText || element.value || element.getAttribute("aria-label") || "").trim().slice(0, 40);
    return `<${element.tagName.toLowerCase()}${element.id ? "#" + element.id : ""}> "${text}"`;
  };
  const channels = (colour) => {
    const found = colour.match(/rgba?\(([^)]+)\)/);
    if (!found) return null;
    const [r, g, b, a] = found[1].split(/[,/ ]+/).map(Number);
    return { r, g, b, a: a === undefined || Number.isNaN(a) ? 1 : a };
  };
  // Relative luminance and contrast ratio as WCAG 2.2 defines them.
  const linear = (c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4);
  const luminance = ({ r, g, b }) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  const ratio = (one, other) => {
    const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
    return (light + 0.05) / (dark + 0.05);
  };
  const over = (top, under) => ({ r: top.r * top.a + under.r * (1 - top.a), g: top.g * top.a + under.g * (1 - top.a), b: top.b * top.a + under.b * (1 - top.a), a: 1 });
  const ground = (element) => {
    const layers = [];
    for (let at = element; at; at = at.parentElement) {
      const colour = channels(getComputedStyle(at).backgroundColor);
      if (colour && colour.a > 0) layers.push(colour);
      if (colour && colour.a === 1) break;
    }
    return layers.reverse().reduce((under, top) => over(top, under), { r: 255, g: 255, b: 255, a: 1 });
  };

  window.tidecountChecks = {
    // Every text on its ground, at least `least` to 1, large or not.
    contrast(least) {
      const faults = [];
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      const seen = new Set();
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const element = node.parentElement;
        if (!node.data.trim() || seen.has(element) || ["SCRIPT", "STYLE", "NOSCRIPT", "TEMPLATE"].includes(element.tagName) || !shown(element)) continue;
        seen.add(element);
        const under = ground(element);
        const ink = channels(getComputedStyle(element).color);
        const found = ink && ratio(over(ink, under), under);
        if (!(found >= least)) faults.push(`${named(element)}: contrast ${found && found.toFixed(2)} to 1, not ${least}`);
      }
      return faults;
    },
    // What is pressed is at least `least` px each way; nothing runs out of the page sideways or is cut off.
    layout(least) {
      const faults = [];
      const root = document.documentElement;
      if (root.scrollWidth > root.clientWidth + 1) faults.push(`the page is ${root.scrollWidth} px wide in a window of ${root.clientWidth}`);
      for (const element of document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary")) {
        if (!shown(element) || element.closest(".skip")) continue;
        const label = element.closest("label");
        const box = (label || element).getBoundingClientRect();
        const inline = element.tagName === "A" && getComputedStyle(element).display === "inline";
        if (!inline && (box.width < least - 0.5 || box.height < least - 0.5)) faults.push(`${named(element)} is ${box.width.toFixed(0)} × ${box.height.toFixed(0)} px, not ${least}`);
        if (box.left < -1 || box.right > root.clientWidth + 1) faults.push(`${named(element)} runs out of the page`);
      }
      for (const element of document.querySelectorAll("body *")) {
        if (!shown(element) || element.closest(".unseen")) continue;
        const style = getComputedStyle(element);
        const cuts = ["hidden", "clip"].includes(style.overflowX) || ["hidden", "clip"].includes(style.overflowY);
        if (cuts && (element.scrollWidth > element.clientWidth + 1 || element.scrollHeight > element.clientHeight + 1)) faults.push(`${named(element)} is cut off`);
      }
      return faults;
    },
    // Where each part of the page lies, by its `data-region`.
    regions() {
      const boxes = {};
      for (const element of document.querySelectorAll("[data-region]")) {
        if (!shown(element)) continue;
        const { left, top, width, height } = element.getBoundingClientRect();
        boxes[element.dataset.region] = { left, top, width, height };
      }
      return boxes;
    },
    async axe() {
      const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
      const rules = { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } };
      const found = await axe.run(document, { runOnly: { type: "tag", values: tags }, rules, resultTypes: ["violations"] });
      return found.violations.map((fault) => `${fault.id}: ${fault.help}: ${fault.nodes.map((node) => node.html.slice(0, 160)).join(" | ")}`);
    },
  };
})();
