"use client";

import { PlainPage } from "./_page/plain-page";

type Props = { readonly error: unknown; readonly retry: () => void };

export default function PageError({ error, retry }: Props) {
  const digest = typeof error === "object" && error !== null && "digest" in error ? String(error.digest) : null;
  return (
    <PlainPage title="This page could not be made.">
      <p>
        The registry was not changed. Try again; if it happens again, the window in which Lengthbook was started says what went wrong
        {digest === null ? "." : <>, under the number {digest}.</>}
      </p>
      <p className="doings">
        <button type="button" onClick={() => retry()}>
          Try again
        </button>
        <a href="/">Go to Today</a>
      </p>
    </PlainPage>
  );
}
