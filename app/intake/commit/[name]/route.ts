import { paceOf, stopCommit } from "../../_server/commits";
import { refused } from "../../_server/refusals";
import { commitName, type StoppedCommit } from "../../_talk/commit";

export const dynamic = "force-dynamic";

type Named = { readonly params: Promise<{ readonly name: string }> };

/** How far a commit is that a tab named; `null` when it hasn't begun. */
export async function GET(_: Request, { params }: Named): Promise<Response> {
  return Response.json(paceOf((await params).name));
}

/** Stops a commit, and answers when it is over: whether it had been written. */
export async function DELETE(_: Request, { params }: Named): Promise<Response> {
  const { name } = await params;
  if (!commitName.test(name)) return refused(400, "no-commit", "No commit has such a name.");
  const stopped: StoppedCommit = { batch: await stopCommit(name) };
  return Response.json(stopped);
}
