import type { Metadata } from "next";
import { registry } from "../_data/registry";
import type { PageAsked } from "../_page/asked";
import { Intake } from "./_client/intake";

export const metadata: Metadata = { title: "Intake" };

export default async function IntakePage({ searchParams }: PageAsked) {
  const { batch } = await searchParams;
  const kept = typeof batch === "string" && /^[1-9]\d{0,8}$/.test(batch) ? Number(batch) : null;
  const known = (await (await registry()).batches()).find((one) => one.batch === kept) ?? null;
  return (
    <main className="sheet" id="page">
      <Intake kept={known && { batch: known.batch, counts: known.counts }} />
    </main>
  );
}
