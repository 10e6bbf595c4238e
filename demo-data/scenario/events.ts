import { type Day, partsOf } from "./calendar";
import type { Chance } from "./chance";
import { frames, lengtheningNails } from "./device";
import { type EventKind, eventKinds, type Window } from "./event-kinds";
import { eventsPerSegment } from "./parameters";
import type { Bone, Device, EventDraft, SegmentDraft } from "./types";

export type Happening = {
  readonly surgery: Day;
  readonly bone: Bone;
  readonly device: Device;
  readonly fields: SegmentDraft;
  readonly forced: readonly EventDraft[];
  readonly steel: boolean;
};
export type Recorded = { readonly eventsLookedFor: SegmentDraft["eventsLookedFor"]; readonly events: readonly EventDraft[] };

/** Events of a segment as recorded: fully in the later years, in part or not at all in the first ones. */
export function eventsOf(chance: Chance, happening: Happening): Recorded {
  const all = [...happening.forced, ...stopEvents(chance, happening), ...chanceEvents(chance, happening)].map((event) =>
    settled(chance, event, happening),
  );
  const eventsLookedFor = lookedFor(chance, happening.surgery);
  if (eventsLookedFor === "not-collected") return { eventsLookedFor, events: [] };
  const serious = all.filter((event) => event.handling === "operation-under-anaesthesia" || event.handling === "implant-exchanged");
  return { eventsLookedFor, events: distinct(eventsLookedFor === "fully" ? all : serious).slice(0, 3) };
}

function lookedFor(chance: Chance, surgery: Day): SegmentDraft["eventsLookedFor"] {
  const year = partsOf(surgery).year;
  const missing = year === 2018 ? 35 : year === 2019 ? 18 : 3;
  return chance.among({ "not-collected": missing, "serious-only": year <= 2019 ? 10 : 3, fully: 94 - missing });
}

/** One event of a type a segment: the key of an event is its type and day. */
function distinct(events: readonly EventDraft[]): readonly EventDraft[] {
  return events.filter((event, index) => events.findIndex(({ eventType }) => eventType === event.eventType) === index);
}

/** The event behind a programme that was stopped early. */
function stopEvents(chance: Chance, { bone, fields }: Happening): readonly EventDraft[] {
  const end = fields.distractionEndDay;
  if (!end) return [];
  const types = {
    stiffness: bone === "tibia" ? "equinus" : "stiffness",
    nerve: bone === "tibia" ? "peroneal-palsy" : "sensory-deficit",
    pain: "pain-changing-plan",
    "poor-regenerate": "insufficient-regenerate",
    "patient-wish": "stopped-by-patient",
    device: "mechanism-failure",
    "goal-reached-early": null,
    other: null,
  } as const;
  const eventType = fields.planChangeReason ? types[fields.planChangeReason] : null;
  if (!eventType) return [];
  const goalMissed = (fields.plannedGainMm ?? 0) - (fields.gainMm ?? 0) > 5;
  return [{ eventType, onsetDay: end - chance.whole(0, 6), handling: "programme-changed", planned: false, planChanged: true, goalMissed }];
}

function chanceEvents(chance: Chance, happening: Happening): readonly EventDraft[] {
  const { bone, device, steel } = happening;
  const frame = frames.has(device);
  const fitting = eventKinds.filter(
    ({ on }) => on === "any" || on === bone || (on === "nail" && lengtheningNails.has(device)) || (on === "frame" && frame),
  );
  const mean = frame ? eventsPerSegment.frame : eventsPerSegment.nail;
  const number = chance.weighted([
    [0, 1 - mean * 0.8],
    [1, mean * 0.6],
    [2, mean * 0.2],
  ]);
  const drawn = Array.from({ length: number }, () =>
    drawnEvent(chance, chance.weighted(fitting.map((kind) => [kind, kind.weight] as const)), happening),
  );
  const pins = frame && chance.happens(eventsPerSegment.pinSite) ? [pinSite(chance, happening)] : [];
  const corroded = steel && chance.happens(0.2) ? [late(chance, happening)] : [];
  return [...pins, ...drawn, ...corroded].filter((event) => event !== null);
}

function drawnEvent(chance: Chance, kind: EventKind, happening: Happening): EventDraft | null {
  const window = windowOf(kind.window, happening);
  if (window === null) return null;
  const handling = chance.weighted(kind.handling);
  const permanent = chance.happens(kind.permanent);
  const operated = handling === "operation-under-anaesthesia" || handling === "implant-exchanged";
  return {
    eventType: kind.eventType,
    onsetDay: chance.whole(...window),
    handling,
    planned: false,
    planChanged: operated || handling === "programme-changed",
    goalMissed: false,
    sequela: permanent ? "permanent" : chance.happens(0.7) ? "none" : "temporary",
    resolved: !permanent,
    purpose: operated ? purposeOf(kind) : null,
  };
}

const purposeOf = ({ on, window }: EventKind): EventDraft["purpose"] =>
  on === "nail" || on === "frame" ? "device" : window === "distraction" ? "joint" : "other";

function pinSite(chance: Chance, happening: Happening): EventDraft | null {
  const window = windowOf("distraction", happening);
  if (window === null) return null;
  const handling = chance.among({ "oral-drug": 8, "intravenous-drug": 1, "procedure-without-anaesthesia": 1 });
  return {
    eventType: "pin-site-infection",
    onsetDay: chance.whole(...window),
    handling,
    planned: false,
    planChanged: false,
    goalMissed: false,
    resolved: true,
  };
}

/** Changes about the junction of stainless-steel nails, seen late. */
function late(chance: Chance, happening: Happening): EventDraft | null {
  const window = windowOf("after", happening);
  if (window === null) return null;
  const eventType = chance.pick(["osteolysis", "corrosion"] as const);
  return {
    eventType,
    onsetDay: chance.whole(...window),
    handling: "nothing",
    planned: false,
    planChanged: false,
    goalMissed: false,
    resolved: false,
  };
}

function windowOf(window: Window, { surgery, fields }: Happening): readonly [Day, Day] | null {
  const last = fields.lastFollowUpDay ?? surgery;
  const end = Math.min(fields.distractionEndDay ?? last, last);
  const healed = Math.min(fields.consolidationDay ?? last, last);
  const windows: Readonly<Record<Window, readonly [Day, Day]>> = {
    theatre: [surgery, surgery],
    distraction: [(fields.distractionStartDay ?? surgery) + 3, end],
    consolidation: [end + 1, healed],
    after: [healed + 10, last],
  };
  const [from, to] = windows[window];
  return from <= to ? [from, to] : null;
}

/** Day resolved, and the class that the surgeon wrote, which is not always the one that the facts give. */
function settled(chance: Chance, event: EventDraft, { surgery, fields }: Happening): EventDraft {
  const last = fields.lastFollowUpDay ?? surgery;
  const until = (event.onsetDay ?? last) + chance.whole(10, 90);
  const resolved = event.resolved ?? (until <= last ? true : null);
  const resolvedDay = event.resolvedDay ?? (resolved && until <= last ? until : null);
  return {
    ...event,
    resolved,
    resolvedDay,
    foundBy: chance.happens(0.8) ? "form" : "notes",
    classSeverity: chance.happens(0.8) ? severityOf(chance, event) : null,
  };
}

function severityOf(chance: Chance, { sequela, goalMissed, planChanged, handling }: EventDraft): EventDraft["classSeverity"] {
  if (sequela === "permanent") return "iiib";
  if (goalMissed) return chance.happens(0.85) ? "iiia" : "ii";
  const substantial = planChanged || handling === "operation-under-anaesthesia";
  return chance.happens(0.88) === substantial ? "ii" : "i";
}
