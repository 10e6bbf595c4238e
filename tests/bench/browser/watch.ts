import type { Page } from "playwright-core";

/** How long work showed itself in a tab. */
export type Watch = {
  /** How many different lengths the bar of progress had. */
  readonly values: number;
  /** The longest that neither the bar nor the words beside it moved. */
  readonly silenceMs: number;
  /** The longest that the tab's own thread did one thing. */
  readonly blockMs: number;
  /** The longest from a click to what it painted. */
  readonly clickMs: number;
  readonly clicks: number;
};

/** Runs in every page, before its own scripts. */
export const watch = `
  window.watch = (() => {
    let seen, last, silence, block, click, clicks, tick = performance.now();
    const begin = () => { seen = new Set(); last = performance.now(); silence = block = click = clicks = 0; tick = performance.now(); };
    begin();
    setInterval(() => {
      const now = performance.now();
      block = Math.max(block, now - tick - 10);
      tick = now;
      const bar = document.querySelector(".working");
      const said = bar ? bar.querySelector("label").innerText + " " + bar.querySelector("progress").value : "none";
      if (!seen.has(said)) { seen.add(said); last = now; }
      if (bar) silence = Math.max(silence, now - last);
      else last = now;
    }, 10);
    new PerformanceObserver((list) => {
      for (const { name, duration } of list.getEntries()) if (name === "click") { clicks++; click = Math.max(click, duration); }
    }).observe({ type: "event", durationThreshold: 16 });
    const stop = () => new Promise((resolve) => {
      const button = document.querySelector(".working button");
      if (!button) return resolve({ ms: null, said: "" });
      const told = performance.now();
      const look = () => {
        const said = document.querySelector("p[role=alert]");
        if (said && /Stopped\\.|too late/.test(said.textContent)) resolve({ ms: performance.now() - told, said: said.textContent });
        // over before the word was heard
        else if (!document.querySelector(".working") && performance.now() - told > 3000) resolve({ ms: null, said: "" });
        else setTimeout(look, 5);
      };
      button.click();
      look();
    });
    return { begin, stop, read: () => ({ values: seen.size, silenceMs: silence, blockMs: block, clickMs: click, clicks }) };
  })();
`;

export function readWatch(page: Page): Promise<Watch> {
  return page.evaluate<Watch>("window.watch.read()");
}
