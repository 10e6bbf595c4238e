import { cautions, shortCaution } from "./cautions";

export function Colophon() {
  return (
    <footer className="colophon sans">
      <div className="not-printed">
        <p>{shortCaution}</p>
        <details>
          <summary>The whole of the cautions</summary>
          <Whole />
        </details>
      </div>
      <div className="only-printed">
        <Whole />
      </div>
    </footer>
  );
}

function Whole() {
  return cautions.map((caution) => <p key={caution}>{caution}</p>);
}
