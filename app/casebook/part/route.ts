import { now } from "../../_data/now";
import { registry } from "../../_data/registry";

/** Parts a number from the patient that it was joined to, then shows the case that stays. */
export async function POST(request: Request): Promise<Response> {
  const form = await request.formData();
  const [person, number] = ["person", "case"].map((name) => {
    const value = form.get(name);
    return typeof value === "string" && /^\d{1,9}$/.test(value) ? Number(value) : null;
  });
  if (typeof person !== "number" || typeof number !== "number")
    return new Response(null, { status: 303, headers: { Location: "/casebook" } });
  const open = await registry();
  const joined = (await open.joins()).some((join) => join.person.entity === person);
  const said = joined ? `?parted=${(await open.part({ person, at: now() })).batch}` : "";
  return new Response(null, { status: 303, headers: { Location: `/casebook/${number}${said}` } });
}
