import type { ReactNode } from "react";
import { type DataTable, isCrowded } from "@/lib/charts";
import { describeWhere, type Where } from "@/lib/cohorts";
import type { Drawable, Told } from "@/lib/reports";
import { noBreak } from "../../_page/no-break";
import { Figure } from "../_client/figure";
import { Numbers } from "../_parts/numbers";
import { Worked } from "./worked";

const widths = { wide: 880, narrow: 328 } as const;

type Props = {
  readonly told: Told;
  readonly where: Where;
  /** Of the units that figures can be read in; those that know another keep their own. */
  readonly unit?: string;
  readonly sentence: ReactNode;
  /** What stands between the answer and the figures, such as case mix. */
  readonly children?: ReactNode;
};

/** A place of Outcomes: question, answer, figures, numbers, and how they were worked out. */
export function PlacePage({ told, where, unit, sentence, children }: Props) {
  const [answer, ...more] = told.sentences;
  return (
    <main className="sheet" id="page">
      <h1 className="only-heard">Outcomes: {told.title}</h1>
      {sentence}
      {answer === undefined ? null : (
        <p className="answer number" aria-live="polite">
          {noBreak(answer)}
        </p>
      )}
      {more.map((text) => (
        <p key={text} className="number">
          {noBreak(text)}
        </p>
      ))}
      {told.cautions.map((text) => (
        <p key={text} className="said warm">
          {noBreak(text)}
        </p>
      ))}
      {children}
      {told.figures.map((figure) => (
        <FigureAndNumbers
          key={figure.id}
          figure={figure}
          stamp={told.references[0]?.stamp ?? ""}
          where={where}
          alone={told.figures.length === 1}
          {...unitOf(figure, unit)}
        />
      ))}
      {told.tables.map(({ table, caption }) => (
        <section key={caption} className="told-table">
          {table.rows.length > mostRowsOpen ? null : <h2>{caption}</h2>}
          <NumbersFolded table={table} caption={caption} />
        </section>
      ))}
      <Worked told={told} where={where} />
    </main>
  );
}

function unitOf(figure: Drawable, unit: string | undefined): { readonly unit?: string } {
  return unit !== undefined && figure.units.includes(unit) ? { unit } : {};
}

type FigureProps = {
  readonly figure: Drawable;
  readonly unit?: string;
  readonly stamp: string;
  readonly where: Where;
  /** Of several figures on a page each table says whose numbers it holds. */
  readonly alone?: boolean;
};

export function FigureAndNumbers({ figure, unit, stamp, where, alone = true }: FigureProps) {
  const shown = unit === undefined ? {} : { unit };
  const table = figure.table(unit);
  // a figure of nobody has no rows, and the answer has said so
  if (table.rows.length === 0) return null;
  const wide = figure.svg({ width: widths.wide, ...shown });
  const crowded = isCrowded(wide);
  const caption = figure.caption({ cohort: describeWhere(where), crowded, ...shown });
  return (
    <section className="told-figure">
      <Figure
        key={`${stamp} ${unit}`}
        wide={wide}
        narrow={figure.svg({ width: widths.narrow, ...shown })}
        caption={caption}
        fileName={`${figure.id}-${stamp}.svg`}
        csv={figure.csv(unit)}
        crowded={crowded}
      />
      <NumbersFolded
        table={table}
        caption={alone ? "The numbers of the figure" : `The numbers of the figure: ${caption.split(/[;.]/, 1)[0]}`}
      />
    </section>
  );
}

const mostRowsOpen = 20;

/** A long table is folded on the screen; paper and whoever opens it have all of it. */
function NumbersFolded({ table, caption }: { readonly table: DataTable; readonly caption: string }) {
  if (table.rows.length <= mostRowsOpen) return <Numbers table={table} caption={caption} />;
  return (
    <details className="folded">
      <summary>{`${caption}, ${table.rows.length} rows`}</summary>
      <Numbers table={table} caption={caption} />
    </details>
  );
}
