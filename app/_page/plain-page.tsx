import type { ReactNode } from "react";

type Props = { readonly title: string; readonly children: ReactNode };

/** A page that says one thing: not found, not understood, out of order. */
export function PlainPage({ title, children }: Props) {
  return (
    <main className="sheet" id="page">
      <h1>{title}</h1>
      {children}
    </main>
  );
}
