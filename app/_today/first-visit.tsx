import { pathOf } from "../_page/pages";

/** An empty registry says what would stand here, and the two ways on. */
export function FirstVisit() {
  const intake = pathOf("Intake");
  return (
    <>
      <h1>Nothing has been brought in yet.</h1>
      <p className="answer">
        Here would stand how many patients and segments the registry holds, how far they have healed, and what is waiting for the clerk.
      </p>
      <section aria-labelledby="first">
        <h2 id="first">Bring your first file</h2>
        <p>
          The spreadsheet that you keep goes in as it is. Names, numbers and dates are taken out before anything is sent or kept: the first
          file makes the unit’s key, under a passphrase that two people of the unit should hold, the data steward and the head of the unit,
          say. A recovery code is shown once, to print and put away.
        </p>
        {intake === null ? (
          <p>
            <code>npm run -s lengthbook -- intake FILE --passphrase-file FILE</code>
          </p>
        ) : (
          <p>
            <a className="button" href={intake}>
              Bring a file
            </a>
          </p>
        )}
      </section>
      <section aria-labelledby="demo">
        <h2 id="demo">Or try the demo</h2>
        <p>
          Seven invented years of an invented unit, in a registry of their own that never meets yours. Stop this one, then type{" "}
          <code>npm run demo</code>
        </p>
      </section>
    </>
  );
}
