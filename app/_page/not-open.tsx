import { PlainPage } from "./plain-page";

/** Stands in place of every page while the registry's file can't be opened: what, and what to do. */
export function NotOpen({ why }: { readonly why: string }) {
  return (
    <PlainPage title="The registry can’t be opened.">
      <p>{`${why.charAt(0).toUpperCase()}${why.slice(1)}.`}</p>
      <p>Nothing was changed. Put that right, then load this page again; a new start is not needed.</p>
    </PlainPage>
  );
}
