import { fieldsOf, tableNames, tables } from "./codebook";
import type { Field } from "./field";
import { commentHeaders, directIdentifierHeaders, fileOnlyFields, typedIndexHeaders } from "./file-only";
import { findingSeverities, type Severity } from "./findings";
import { snake } from "./names";
import { reasons } from "./reasons";
import { eventTypesByOrigin } from "./tables/event-types";

/** The page of the docs that lists every public id: written from the codebook, so that it can't lie. */
export function codebookPage(): string {
  return [
    "# Public ids\n",
    "Written from the codebook by `npm run docs`; a test compares the two. Pages, addresses, command line, JSON, templates and exports use these ids and no others. An id is never renamed or reused; new ones may be added.\n",
    "A template's header is the id in small letters with underlines (`gainMm` → `gain_mm`). Headers and values are matched without regard to case, accents and punctuation; the id, the label and the template header are aliases too. A day is stored as a whole number on the person's own line, never as a date.\n",
    "## Read from a file, never stored\n",
    ...Object.entries(fileOnlyFields).map(
      ([id, field]) => `- \`${id}\` (${field.label}): ${[...field.aliases, ...second(field)].join(", ")}`,
    ),
    `\nAlways dropped, never offered for mapping: ${directIdentifierHeaders.join(", ")}.`,
    `\nShown in the tab to be coded, then dropped: ${commentHeaders.join(", ")}.`,
    `\nAn index typed in a file is compared with the computed ones and never stored: ${typedIndexHeaders.join(", ")}.\n`,
    ...tableNames.flatMap((name) => tableSection(name)),
    "## Event types, by origin\n",
    ...Object.entries(eventTypesByOrigin).map(([origin, types]) => `- ${origin}: ${types.join(", ")}`),
    "\n## Why a measure can't be computed, the first that applies\n",
    reasons.join(", "),
    "\n## Findings\n",
    ...(["error", "ask", "warn", "note"] as const).map(findingsLine),
    "",
  ].join("\n");
}

function second(field: (typeof fileOnlyFields)[keyof typeof fileOnlyFields]): readonly string[] {
  return "secondChoice" in field ? field.secondChoice : [];
}

function findingsLine(severity: Severity): string {
  const codes = Object.entries(findingSeverities).filter(([, held]) => held === severity);
  return `- ${severity}: ${codes.map(([code]) => code).join(", ")}`;
}

function tableSection(name: (typeof tableNames)[number]): string[] {
  const { label, key } = tables[name];
  const head = [
    `## ${label}\n`,
    `Key: ${key.map((id) => `\`${id}\``).join(", ")}\n`,
    "| id | column | kind | codes or limits | headers · spellings of values |",
    "|---|---|---|---|---|",
  ];
  return [...head, ...fieldsOf(name).map(([id, field]) => row(id, field)), ""];
}

function row(id: string, field: Field): string {
  const required = field.required ? " **required**" : "";
  const header = field.madeByStrip ? "made when the file is stripped" : headersOf(field).join(", ");
  return `| \`${id}\`${required} | ${snake(id)} | ${kindOf(field)} | ${limitsOf(field)} | ${[header, ...spellings(field)].filter(Boolean).join(" · ")} |`;
}

function headersOf(field: Field): string[] {
  const timed = (field.aliasesWithTimeUnit ?? []).map((alias) => `${alias} (with a unit of time)`);
  return [field.label.toLowerCase(), ...(field.aliases ?? []), ...timed];
}

function kindOf(field: Field): string {
  return field.kind === "number" ? `number, ${field.unit}` : field.kind;
}

function limitsOf(field: Field): string {
  if (field.kind === "code") return field.codes.join(", ");
  if (field.kind === "listed") return `\`${field.pattern}\``;
  if (field.kind !== "count" && field.kind !== "number") return "";
  const usual = field.usual ? `; usual ${field.usual.join(" to ")}` : "";
  return field.hard ? `${field.hard.join(" to ")}${usual}` : "";
}

function spellings(field: Field): string[] {
  if (field.kind !== "code" && field.kind !== "count") return [];
  const byCode = new Map<string, string[]>();
  for (const [spelling, code] of Object.entries(field.values ?? {}))
    byCode.set(String(code), [...(byCode.get(String(code)) ?? []), spelling]);
  const lines = [...byCode].map(([code, words]) => `${words.join(", ")} → ${code}`);
  const asks = field.kind === "code" && field.asks ? [`${field.asks.join(", ")}: asked for`] : [];
  return lines.length + asks.length === 0 ? [] : [[...lines, ...asks].join("; ")];
}
