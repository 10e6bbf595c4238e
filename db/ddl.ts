import { tableNames } from "@/lib/codebook";
import { open } from "./identities";
import { identityDdl } from "./identity-ddl";
import { ledgerDdl } from "./ledger-ddl";
import { versionDdl } from "./version-ddl";

const heading = `-- Written from the codebook by: npm run db:write
-- Once released this file is never changed; what comes later is a file of its own.
-- An identity table says what a row is, for ever; a version table what was known of it, from batch to batch.
-- As of batch N: since_batch <= N AND N < until_batch. ${open} stands for open.`;

/** The first migration, as text: the ledger of batches, and an identity and a version table for each table of the codebook. */
export function ddl(): string {
  const kinds = tableNames.flatMap((table) => [...identityDdl(table), ...versionDdl(table)]);
  return `${[heading, ...ledgerDdl(), ...kinds].join("\n\n")}\n`;
}
