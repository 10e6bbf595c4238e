import type { CaseAnswer, CaseEvent, CaseSegment, Held } from "@/lib/answers";
import { codeWords, fieldWords, sentence, valueWords } from "../../_words";
import { CorrectLink } from "./correct-link";

const lookedFor: Readonly<Record<CaseSegment["eventsLookedFor"], string>> = {
  fully: "Events were looked for, and none is held.",
  "serious-only": "Only serious events were looked for, and none is held.",
  "not-collected": "Events not collected: this segment enters no rate of complications.",
};

/** Events with the class that each scheme derives from their facts. */
type Props = { readonly segment: CaseSegment; readonly name: string; readonly number: number };

export function Events({ segment: { events, eventsLookedFor }, name, number }: Props) {
  return (
    <>
      <h3>Events</h3>
      {events.length === 0 ? (
        <p>{lookedFor[eventsLookedFor]}</p>
      ) : (
        <>
          {eventsLookedFor === "fully" ? null : (
            <p>
              {eventsLookedFor === "serious-only"
                ? "Only serious events were looked for."
                : "Events not collected in full: this segment enters no rate of complications."}
            </p>
          )}
          <EventTable events={events} name={`Events of the ${name}`} number={number} />
        </>
      )}
    </>
  );
}

export function EventsOfPerson({ answer: { events, case: number } }: { readonly answer: CaseAnswer }) {
  if (events.length === 0) return null;
  return (
    <section aria-labelledby="events-of-person">
      <h2 id="events-of-person">Events of the patient</h2>
      <p className="muted">Of no one segment; days from the first operation.</p>
      <EventTable events={events} name="Events of the patient" number={number} />
    </section>
  );
}

const schemes: readonly (readonly [id: string, words: string])[] = [
  ["problem-obstacle", "Problem, obstacle"],
  ["three-level", "Three levels"],
  ["severity", "Severity"],
  ["surgical", "Surgical"],
  ["device-related", "Device"],
];

type TableProps = { readonly events: readonly CaseEvent[]; readonly name: string; readonly number: number };

function EventTable({ events, name, number }: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label={name}>
      <table className="data">
        <caption className="only-heard">{name}, with the class that each scheme derives from the facts</caption>
        <thead>
          <tr>
            <th scope="col" className="start">
              Event
            </th>
            <th scope="col">Day</th>
            <th scope="col" className="start">
              Phase
            </th>
            <th scope="col" className="start">
              Facts
            </th>
            {schemes.map(([id, words]) => (
              <th key={id} scope="col" className="start">
                {words}
                <span className="under">derived</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{events.map((event) => eventRow(event, number))}</tbody>
      </table>
    </section>
  );
}

function eventRow({ event, type, day, phase, phaseDerived, complication, classes, recorded }: CaseEvent, number: number) {
  const classOf = (scheme: string) => classes.find((one) => one.scheme === scheme)?.class;
  return (
    <tr key={event}>
      <th scope="row" className="start">
        {sentence(codeWords(type))}
        {complication ? null : <span className="under">planned: no complication</span>}{" "}
        <CorrectLink number={number} table="event" entity={event} label={`the event ${codeWords(type)}`} />
      </th>
      <td>{day ?? "–"}</td>
      <td className="start">
        {phase === null ? "–" : codeWords(phase)}
        {phaseDerived ? <span className="under">from its day</span> : null}
      </td>
      <td className="start wraps">{factsText(recorded)}</td>
      {schemes.map(([id]) => (
        <td key={id} className="start">
          {codeWords(classOf(id) ?? "–")}
        </td>
      ))}
    </tr>
  );
}

/** What was recorded of an event: a flag that is set by its name alone, one that isn't not at all. */
function factsText(recorded: readonly Held[]): string {
  const facts = recorded.filter(({ value }) => value !== false).map(factWords);
  return facts.length === 0 ? "–" : facts.join("; ");
}

function factWords(held: Held): string {
  if (held.value === true) return held.label.toLowerCase();
  return held.field === "handling" ? valueWords(held, held.value) : fieldWords(held, held.value);
}
