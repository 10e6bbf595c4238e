import { describeWhere, type Where } from "@/lib/cohorts";
import type { Told } from "@/lib/reports";
import { Command } from "../../_page/command";
import { noBreak } from "../../_page/no-break";

/** Definition, exclusions, method, notes and result references: all that one needs to ask the same again. */
export function Worked({ told, where }: { readonly told: Told; readonly where: Where }) {
  return (
    <details className="worked-out">
      <summary>How this was worked out</summary>
      <dl>
        <dt>Definition</dt>
        <dd>{asSentence(told.definition)}</dd>
        <dt>Cohort</dt>
        <dd>{asSentence(describeWhere(where))}</dd>
        <dt>Left out, and why</dt>
        {told.leftOut.length === 0 ? <dd>Nothing.</dd> : told.leftOut.map(({ label, text }) => <dd key={label}>{`${label}: ${text}.`}</dd>)}
        <dt>Method</dt>
        <dd>{noBreak(asSentence(told.method))}</dd>
        {told.notes.length === 0 ? null : <dt>Notes</dt>}
        {told.notes.map((note) => (
          <dd key={note}>{noBreak(note)}</dd>
        ))}
        <References told={told} />
        <dt>At the command line</dt>
        {told.commands.map((command) => (
          <dd key={command}>
            <Command text={`npm run -s lengthbook -- ${command}`} />
          </dd>
        ))}
      </dl>
    </details>
  );
}

function References({ told: { references, commands, batch, dataTo } }: { readonly told: Told }) {
  // a comparison is asked again by its own words
  const again = commands.every((command) => command.startsWith("compare ")) ? null : (references[0]?.stamp ?? null);
  return (
    <>
      <dt>{references.length === 1 ? "Result reference" : "Result references"}</dt>
      {references.map(({ of, stamp }) => (
        <dd key={stamp + of}>
          <code>{stamp}</code>
          {references.length === 1 ? "" : `, ${of}`}
        </dd>
      ))}
      <dd>
        Batch {batch}
        {dataTo === null ? "" : `, data to ${dataTo}`}.
        {again === null ? null : (
          <>
            {" "}
            The same numbers come again with <Command text={`npm run -s lengthbook -- result ${again}`} />
          </>
        )}
      </dd>
    </>
  );
}

function asSentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;
}
