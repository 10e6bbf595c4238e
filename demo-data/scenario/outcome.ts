import { closingDay, type Day } from "./calendar";
import type { Chance } from "./chance";
import { assistedFrames, frames, lengtheningNails } from "./device";
import type { Distraction } from "./distraction";
import type { Device, EventDraft, Fate, SegmentDraft } from "./types";

export type Seen = {
  readonly surgery: Day;
  readonly device: Device;
  readonly fate: Fate;
  readonly distraction: Distraction;
  readonly solid: Day;
  readonly rescue: Day | null;
  readonly clinic: readonly Day[];
};
export type Outcome = { readonly fields: SegmentDraft; readonly events: readonly EventDraft[] };

/** What the sheet says of healing, as far as the clinic days show it. */
export function outcomeOf(chance: Chance, seen: Seen): Outcome {
  const last = seen.clinic.at(-1);
  if (last === undefined || last < seen.distraction.endDay) return { fields: stillDistracting(chance, seen), events: [] };
  if (seen.fate === "gain-none") return { fields: { ...noGain(seen), ...follow(last) }, events: [failureToDistract(seen)] };
  if (endings.has(seen.fate)) return ended(chance, seen);
  const healed = seen.clinic.find((day) => day >= seen.solid);
  if (healed === undefined) return { fields: { ...reached(seen), ...unhealed(seen), ...follow(last), lastFilmDay: last }, events: [] };
  if (seen.fate === "date-missing") return { fields: { ...reached(seen), ...withoutDate(seen, healed), ...follow(last) }, events: [] };
  return { fields: { ...reached(seen), ...consolidated(chance, seen, healed), lastFilmDay: last }, events: [] };
}

const endings: ReadonlySet<Fate> = new Set(["infection", "breakage", "abandoned", "nonunion", "amputated"]);
const follow = (last: Day): SegmentDraft => ({ lastFollowUpDay: last });

function reached({ distraction, rescue }: Seen): SegmentDraft {
  const { startDay, endDay, gainMm, daysPaused, reason, plannedGainFinalMm } = distraction;
  return {
    distractionStartDay: startDay,
    distractionEndDay: endDay,
    gainMm,
    daysPaused,
    planChangeReason: reason ?? null,
    plannedGainFinalMm,
    rescueDay: rescue,
  };
}

/** The last film was taken while the bone was still being drawn apart: no end of distraction, a gain at most so far. */
function stillDistracting(chance: Chance, { surgery, distraction, clinic }: Seen): SegmentDraft {
  const last = clinic.at(-1) ?? surgery;
  const soFar = Math.round((last - distraction.startDay) * 0.9 * (distraction.gainMm / (distraction.endDay - distraction.startDay)));
  const shown = soFar >= 10 && chance.happens(0.4);
  return {
    distractionStartDay: distraction.startDay,
    gainMm: shown ? soFar : null,
    lastNotHealedDay: last,
    lastFilmDay: last,
    lastFollowUpDay: last,
    endState: "healing",
  };
}

/** The device never drew the bone apart; it healed as a fracture does. */
function noGain({ surgery, distraction, clinic }: Seen): SegmentDraft {
  const healed = clinic.find((day) => day >= surgery + 55) ?? null;
  return {
    distractionStartDay: distraction.startDay,
    gainMm: 0,
    planChangeReason: "device",
    consolidationDay: healed,
    fullWeightBearingDay: healed,
    lastFilmDay: clinic.at(-1) ?? null,
    endState: "consolidated",
  };
}

const failureToDistract = ({ surgery, distraction }: Seen): EventDraft => ({
  eventType: "failure-to-distract",
  onsetDay: Math.max(surgery, distraction.startDay + 9),
  handling: "programme-changed",
  planChanged: true,
  goalMissed: true,
  resolved: false,
});

function unhealed({ rescue, solid, clinic }: Seen): SegmentDraft {
  const open = clinic.filter((day) => day < solid).at(-1) ?? null;
  return { lastNotHealedDay: open, endState: rescue === null || (open !== null && rescue <= open) ? "healing" : null };
}

/** The bone is solid and borne upon, but the film that showed it was never entered. */
function withoutDate(seen: Seen, healed: Day): SegmentDraft {
  const open = seen.clinic.filter((day) => day < healed).at(-1) ?? null;
  return { lastNotHealedDay: open, lastFilmDay: open, fullWeightBearingDay: healed };
}

function consolidated(chance: Chance, seen: Seen, healed: Day): SegmentDraft {
  const open = seen.clinic.filter((day) => day < healed).at(-1) ?? null;
  const bearing = seen.clinic.find((day) => day >= healed + chance.whole(0, 24)) ?? null;
  const last = seen.clinic.at(-1) ?? healed;
  const removal = removalOf(chance, seen, healed, last);
  const latest = Math.max(last, removal.implantRemovalDay ?? 0, removal.fixatorRemovalDay ?? 0);
  return {
    lastNotHealedDay: open,
    consolidationDay: healed,
    consolidationCriterion: chance.among({ "three-of-four": 90, "four-of-four": 6, "surgeon-judgement": 4 }),
    fullWeightBearingDay: chance.happens(0.93) ? bearing : null,
    ...removal,
    lastFollowUpDay: Math.min(closingDay, latest),
    gainFinalMm: chance.happens(0.6)
      ? Math.max(
          0,
          seen.distraction.gainMm -
            chance.weighted([
              [0, 6],
              [1, 3],
              [2, 1],
            ] as const),
        )
      : null,
    endState: seen.rescue === null ? "consolidated" : "healed-after-bone-surgery",
  };
}

/** Frames come off when the bone is solid, or when a nail or plate takes over; nails a year or two later, if at all. */
function removalOf(chance: Chance, { surgery, device, distraction }: Seen, healed: Day, last: Day): SegmentDraft {
  if (frames.has(device)) return { fixatorRemovalDay: Math.min(healed + chance.whole(0, 18), Math.max(healed, last)) };
  const assisted = assistedFrames.has(device)
    ? { fixatorRemovalDay: distraction.endDay + chance.whole(10, 18), implantOutReason: "planned" as const }
    : {};
  const out = surgery + chance.whole(430, 820);
  const nail = lengtheningNails.has(device) || device === "lengthening-over-nail" || device === "lengthening-then-nailing";
  if (!nail || out < healed + 120 || out > closingDay || !chance.happens(0.72)) return assisted;
  return { ...assisted, implantRemovalDay: out, implantOutReason: "planned" };
}

/** Taken out or given up before the bone had healed: removal, its reason, and a visit or two after. */
function ended(chance: Chance, seen: Seen): Outcome {
  const { fate, device, distraction, clinic } = seen;
  const at = clinic.find((day) => day >= distraction.endDay + 60) ?? clinic.at(-1) ?? distraction.endDay;
  const open = clinic.filter((day) => day < at).at(-1) ?? null;
  const out = at + chance.whole(1, 6);
  const last = Math.min(closingDay, out + chance.whole(40, 80));
  const frame = frames.has(device) || assistedFrames.has(device);
  const reason = fate === "infection" || fate === "breakage" ? fate : "other";
  const gone: SegmentDraft = { ...(frame ? { fixatorRemovalDay: out } : { implantRemovalDay: out }), implantOutReason: reason };
  const state = fate === "nonunion" || fate === "amputated" ? fate : "abandoned";
  return {
    fields: { ...reached(seen), ...gone, lastNotHealedDay: open, lastFilmDay: at, lastFollowUpDay: last, endState: state },
    events: [endingEvent(fate, frame, at, out)],
  };
}

function endingEvent(fate: Fate, frame: boolean, at: Day, out: Day): EventDraft {
  const types = {
    infection: frame ? "osteomyelitis" : "implant-infection",
    breakage: frame ? "pin-or-wire-broken" : "nail-broken",
  } as const;
  const eventType = fate === "infection" || fate === "breakage" ? types[fate] : fate === "abandoned" ? "stopped-by-patient" : "nonunion";
  return {
    eventType,
    onsetDay: at,
    handling: fate === "amputated" ? "operation-under-anaesthesia" : "implant-exchanged",
    planned: false,
    planChanged: true,
    goalMissed: true,
    resolved: fate === "infection",
    resolvedDay: fate === "infection" ? out : null,
    sequela: fate === "amputated" ? "permanent" : "temporary",
    lifeOrLimbThreat: fate === "amputated",
  };
}
