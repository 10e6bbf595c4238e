import { caseMix, compareFamily, type FamilyAnswer, type FamilyMember } from "@/lib/answers";
import { balanceFigure } from "@/lib/charts";
import { drawable } from "../told/drawable";
import type { Registry } from "../told/question";
import type { LeftOut, Told } from "../told/told";
import { balanceRecord } from "../words/case-mix-record";
import { leftOutOf } from "../words/left-out";
import { notesOf } from "../words/notes";
import { commandOf } from "./side-by-side-command";
import { forestsOf } from "./side-by-side-forest";
import type { SideBySideQuestion } from "./side-by-side-question";
import { differencesTable, valuesTable } from "./side-by-side-tables";
import { balanceText, holmText, memberText, splitsText } from "./side-by-side-words";

/** Two groups side by side: case mix first, then each outcome's difference with its interval. */
export async function tellSideBySide(registry: Registry, question: SideBySideQuestion): Promise<Told> {
  const { between, measures, adjust, test, scheme, withoutPinSites = false } = question;
  const asOf = question.asOf === null ? {} : { asOf: question.asOf };
  const mix = await caseMix(registry, { between, ...asOf });
  const fields = adjust.map(({ field }) => field);
  const family = await compareFamily(registry, {
    between,
    measures,
    adjust: fields,
    test,
    withoutPinSites,
    ...(scheme === null ? {} : { scheme }),
    ...asOf,
  });
  const named = { labels: new Map(adjust.map(({ field, label }) => [field, label])), test };
  const [first] = family.members;
  return {
    title: "Side by side",
    sentences: [
      balanceText(mix),
      ...family.members.map((member) => memberText(member, named)),
      test ? holmText({ tested: family.tested, ticked: family.members.length }) : null,
      first ? splitsText(first.crude) : null,
    ].filter((text) => text !== null),
    cautions: [...cautionsOf(family), ...(withoutPinSites ? ["Pin-site infections are left out of every number here."] : [])],
    figures: [drawable(balanceFigure, balanceRecord(mix)), ...forestsOf(family, named)],
    tables: [valuesTable(family.members.map(({ crude }) => crude)), differencesTable(family, named)],
    definition: family.members.map(({ crude }) => `${crude.definition.title}: ${crude.definition.sentence}`).join(". "),
    method: methodOf(family, test),
    leftOut: leftOutIn(family),
    notes: family.members.flatMap((member) =>
      notesOf([...member.crude.notes, ...(member.adjusted?.notes ?? [])], []).map((note) => titled(member, note, family)),
    ),
    references: [
      { of: "case mix", stamp: mix.stamp },
      ...family.members.flatMap(({ crude, adjusted }) => [
        { of: crude.definition.title.toLowerCase(), stamp: crude.stamp },
        ...(adjusted ? [{ of: `${crude.definition.title.toLowerCase()}, adjusted`, stamp: adjusted.stamp }] : []),
      ]),
    ],
    commands: [commandOf(question)],
    batch: mix.batch,
    dataTo: mix.dataTo,
  };
}

function titled({ crude }: FamilyMember, note: string, { members }: FamilyAnswer): string {
  return members.length === 1 ? note : `${crude.definition.title}: ${note}`;
}

/** What would mislead if it stood only below: an index compared where gains differ, and adjustment that was refused. */
function cautionsOf({ members }: FamilyAnswer): readonly string[] {
  const grave = new Set(["shared-denominator", "known-later", "in-model", "too-many-covariates"]);
  const notes = members.flatMap((member) => [...member.crude.notes, ...(member.adjusted?.notes ?? [])]);
  return [...new Set(notes.filter(({ code }) => grave.has(code)).map(({ text }) => text))];
}

function methodOf({ members }: FamilyAnswer, test: boolean): string {
  const methods = new Set(
    members.flatMap(({ crude, adjusted }) => [...crude.differences, ...(adjusted?.differences ?? [])].map(({ method }) => method)),
  );
  return (
    [...methods, ...(test && members.length > 1 ? ["p values by Holm’s step-down rule over the outcomes ticked"] : [])].join("; ") ||
    "nothing could be estimated"
  );
}

function leftOutIn({ members }: FamilyAnswer): readonly LeftOut[] {
  return members.flatMap(({ crude }) =>
    leftOutOf(crude.groups).map(({ label, text }) => ({
      label: members.length === 1 ? label : `${crude.definition.title}, ${label}`,
      text,
    })),
  );
}
