import { pathOf } from "../../_page/pages";
import { PlainPage } from "../../_page/plain-page";

export function NoData() {
  const intake = pathOf("Intake");
  return (
    <PlainPage title="There is nothing to answer from yet.">
      <p className="answer">
        Here would stand how long bones took to heal: every segment a mark, the mean of each group with its interval, and the unhealed
        beside them.
      </p>
      <p>{intake === null ? <a href="/">See how the first file comes in</a> : <a href={intake}>Bring your first file</a>}</p>
    </PlainPage>
  );
}
