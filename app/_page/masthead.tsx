import { labelOfCode } from "@/lib/codebook";
import { pages } from "./pages";

type Props = {
  readonly units: readonly string[];
  readonly dataTo: string | null;
  readonly path: string;
  /** The demo registry: everything in it is invented, and says so. */
  readonly invented: boolean;
};

export function Masthead({ units, dataTo, path, invented }: Props) {
  return (
    <header className="masthead sans">
      <span className="unit-name">
        {units.length === 0 ? "Lengthbook" : units.map(labelOfCode).join(", ")}
        {invented ? <span className="invented">, invented</span> : null}
      </span>
      <nav aria-label="Pages">
        <ul>
          {pages.map((page) => (
            <li key={page.path}>
              <a href={page.path} aria-current={page.path === path ? "page" : path.startsWith(`${page.path}/`) ? "true" : undefined}>
                {page.name}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <span className="data-to">{dataTo === null ? "No data yet" : `${invented ? "Invented data" : "Data"} to ${dataTo}`}</span>
    </header>
  );
}
