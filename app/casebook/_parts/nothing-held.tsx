import { pathOf } from "../../_page/pages";
import { PlainPage } from "../../_page/plain-page";

export function NothingHeld() {
  const intake = pathOf("Intake");
  return (
    <PlainPage title="No case is held yet.">
      <p className="answer">
        Here would stand every segment that the registry holds, a row each, under its case’s number; and behind each number all that is
        known of the case.
      </p>
      <p>{intake === null ? <a href="/">See how the first file comes in</a> : <a href={intake}>Bring your first file</a>}</p>
    </PlainPage>
  );
}
