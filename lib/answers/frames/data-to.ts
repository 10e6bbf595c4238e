import type { Registry, State } from "@/lib/registry";
import { answerCache } from "../question/cache";
import { columnOf, valueAt } from "./read";

const cached = answerCache<string | null>();

/** The latest quarter of surgery held, `2024 Q3` (`2024` where a unit keeps years only); `null` in an empty registry. */
export function dataTo(registry: Registry, state: State): Promise<string | null> {
  return cached(`${registry.folder} ${state.batch} ${state.erasures}`, () => latestQuarter(registry, state));
}

async function latestQuarter(registry: Registry, state: State): Promise<string | null> {
  const frame = await registry.frameAsOf(state, "segment", ["surgeryYear", "surgeryQuarter"]);
  let latest = 0;
  for (let row = 0; row < frame.length; row++) {
    const year = valueAt(columnOf(frame, "surgeryYear"), row) as number;
    const quarter = valueAt(columnOf(frame, "surgeryQuarter"), row) as number | null;
    latest = Math.max(latest, year * 10 + (quarter ?? 0));
  }
  if (latest === 0) return null;
  const quarter = latest % 10;
  return quarter === 0 ? String(Math.floor(latest / 10)) : `${Math.floor(latest / 10)} Q${quarter}`;
}
