"use client";

import "./globals.css";
import PageError from "./error";

type Props = { readonly error: unknown; readonly retry: () => void };

/** When even the line of page names could not be made: most often the registry's file can't be opened. */
export default function GlobalError(props: Props) {
  return (
    <html lang="en">
      <body>
        <title>This page could not be made · Lengthbook</title>
        <PageError {...props} />
      </body>
    </html>
  );
}
