import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { totalText } from "../say/excluded";
import { count, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { done, layoutFollowUp } from "./layout-follow-up";
import { closedIn, type FollowUpGroup, type FollowUpRecord, type FollowUpWindowCounts } from "./record";

/** Follow-up by window: seen, due, lost, dead, not yet due. */
export const followUpFigure: Figure<FollowUpRecord> = {
  id: "follow-up",
  layout: layoutFollowUp,
  caption: captionOfFollowUp,
  table: tableOfFollowUp,
  units: () => [""],
};

function captionOfFollowUp(record: FollowUpRecord, options: CaptionOptions = {}): string {
  const reading = [
    `Windows ${record.clock ?? "from surgery"}; nearest visit inside, none carried forward`,
    "Due, not seen: the window has closed by the last data, without a visit in it",
  ];
  const what = "Follow-up: who was seen, and who not";
  return captionFrom(record, { what, counts: totalText(record.groups, record.of, done), reading, groups: record.groups }, options);
}

type Row = { readonly group: FollowUpGroup; readonly window: FollowUpWindowCounts };

function tableOfFollowUp({ groups }: FollowUpRecord): DataTable {
  const rows = groups.flatMap((group) => group.windows.map((window): Row => ({ group, window })));
  return tableFrom<Row>(
    [
      words("group", "Group", ({ group }) => group.label),
      words("window", "Window", ({ window }) => window.label),
      count("n", "Followed", ({ group }) => group.n),
      count("seen", "Seen", ({ window }) => window.seen),
      count("closed", "Seen, due or lost", ({ window }) => closedIn(window)),
      count("due", "Due, not seen", ({ window }) => window.due),
      count("lost", "Lost", ({ window }) => window.lost),
      count("dead", "Dead", ({ window }) => window.dead),
      count("not-yet-due", "Not yet due", ({ window }) => window.notYetDue),
    ],
    rows,
  );
}
