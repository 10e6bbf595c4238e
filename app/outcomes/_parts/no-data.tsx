import { pathOf } from "../../_page/pages";
import { PlainPage } from "../../_page/plain-page";

const healing = "how long bones took to heal: every segment a mark, the mean of each group with its interval, and the unhealed beside them";

/** An empty registry: what would stand here, and the one thing to do. */
export function NoData({ wouldStand = healing }: { readonly wouldStand?: string }) {
  const intake = pathOf("Intake");
  return (
    <PlainPage title="There is nothing to answer from yet.">
      <p className="answer">Here would stand {wouldStand}.</p>
      <p>{intake === null ? <a href="/">See how the first file comes in</a> : <a href={intake}>Bring your first file</a>}</p>
    </PlainPage>
  );
}
