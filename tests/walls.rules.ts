import { builtinModules } from "node:module";
import type { IConfiguration } from "dependency-cruiser";

/** Each room: what it may see of ours, and the sentence a trespasser reads. The list is the architecture's. */
const rooms: Record<string, [sees: string[], why: string]> = {
  "lib/codebook": [[], "the codebook is the shared vocabulary: it knows nobody"],
  "lib/stats": [[], "stats is mathematics: numbers in, numbers out"],
  "lib/intake": [["lib/codebook"], "intake turns bytes into stripped rows: it knows fields, not tables"],
  "lib/outcomes": [["lib/codebook", "lib/stats"], "measures are defined on cases, never on rows of a table"],
  "lib/cohorts": [["lib/codebook", "lib/outcomes"], "a cohort is a predicate on fields and measures"],
  "lib/yardsticks": [["lib/codebook", "lib/stats", "lib/outcomes", "lib/cohorts"], "published series are data with their own definitions"],
  "lib/charts": [["lib/stats"], "a figure is drawn from a record"],
  "lib/disclosure": [["lib/stats"], "disclosure works on counts"],
  db: [["lib/codebook"], "db declares tables and opens the file"],
  "lib/registry": [["lib/codebook", "lib/intake", "db"], "the registry is the only writer"],
  "lib/answers": [
    ["lib/codebook", "lib/stats", "lib/intake", "lib/outcomes", "lib/cohorts", "lib/yardsticks", "lib/disclosure", "db", "lib/registry"],
    "answers ask, measure and compare; they draw nothing",
  ],
  "lib/reports": [["lib/answers", "lib/charts", "lib/disclosure"], "a report is written from records"],
  "lib/cli": [
    ["lib/codebook", "lib/cohorts", "lib/answers", "lib/reports", "lib/charts", "lib/intake", "lib/registry", "lib/stats"],
    "the command line asks answers, and brings in through intake and registry",
  ],
  app: [
    ["lib/codebook", "lib/cohorts", "lib/answers", "lib/reports", "lib/charts", "lib/intake", "lib/registry"],
    "a page asks answers and renders; it never touches tables or formulas",
  ],
};

const ours = "^(lib|db|app)/";
const anywhere = "codebook|stats|intake|outcomes|cohorts|yardsticks|charts|disclosure";

export const walls: IConfiguration = {
  forbidden: [
    ...Object.entries(rooms).map(([room, [sees, comment]]) => ({
      name: `wall-${room.replaceAll("/", "-")}`,
      comment,
      severity: "error" as const,
      from: { path: `^${room}/` },
      to: { path: ours, pathNot: `^(${[room, ...sees].join("|")})/` },
    })),
    {
      name: "runs-anywhere",
      comment: "these rooms run in a browser, a worker and Node: no Node module, React or database is reachable from them",
      severity: "error",
      from: { path: `^lib/(${anywhere})/` },
      to: {
        reachable: true,
        path: `^(node:)?(${builtinModules.join("|")})$|node_modules/(better-sqlite3|drizzle-orm|next|react|d3-selection)/`,
      },
    },
    {
      name: "no-react-outside-app",
      severity: "error",
      from: { path: "^(lib|db)/" },
      to: { path: "node_modules/(react|react-dom|next)/" },
    },
    {
      name: "by-the-door",
      comment: "outsiders enter a room by its index.ts",
      severity: "error",
      from: { path: "^(lib/[^/]+|app|db)/" },
      to: { path: "^lib/", pathNot: "^$1/|^lib/[^/]+/index\\.ts$" },
    },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
  ],
  options: { tsConfig: { fileName: "tsconfig.json" }, tsPreCompilationDeps: true, doNotFollow: { path: "node_modules" } },
};
