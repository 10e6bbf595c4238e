import { PlainPage } from "../../_page/plain-page";

export default function NoSuchCase() {
  return (
    <PlainPage title="No such case is held.">
      <p>A case’s number stays with it for ever; one that an undo took away, or that never was, has no page.</p>
      <p>
        <a href="/casebook">Show the casebook</a>
      </p>
    </PlainPage>
  );
}
