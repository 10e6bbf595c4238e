import * as z from "zod";
import { type FindingCode, findingSeverities, type TableName, tableNames } from "@/lib/codebook";
import type { UnitKeyRecord } from "../key";

const base64 = z.string().regex(/^[A-Za-z0-9+/=_-]{1,400}$/);
const sealed = z.strictObject({ iterations: z.int().min(1).max(10_000_000), salt: base64, iv: base64, sealed: base64 });
const count = z.int().min(0).max(2_000_000);
const codes = Object.keys(findingSeverities) as [FindingCode, ...FindingCode[]];

export const headSchema = z.strictObject({
  lengthbook: z.literal(1),
  counts: z.partialRecord(z.enum(tableNames as [TableName, ...TableName[]]), count),
  findings: z.partialRecord(z.enum(codes), count),
  unitKey: z.strictObject({ keyId: z.string().regex(/^[0-9A-Za-z_-]{1,64}$/), byPassphrase: sealed, byRecovery: sealed }).optional(),
  overCorrections: count.optional(),
});

/** First line of a commit: how many rows of each table follow, findings by code and count, the sealed key of a first intake, and corrections overruled. */
export type CommitHead = {
  readonly lengthbook: 1;
  readonly counts: Readonly<Partial<Record<TableName, number>>>;
  readonly findings: Readonly<Partial<Record<FindingCode, number>>>;
  readonly unitKey?: UnitKeyRecord;
  /** How many cells differ from a correction made by hand and are to be taken: the person was asked and chose the sheet. */
  readonly overCorrections?: number;
};
