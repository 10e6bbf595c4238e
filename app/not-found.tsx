import type { Metadata } from "next";
import { PlainPage } from "./_page/plain-page";

export const metadata: Metadata = { title: "No such page" };

export default function NotFound() {
  return (
    <PlainPage title="There is no page at this address.">
      <p>
        Pages are named in the line above. An address that was sent to you may belong to a later version, or have lost a piece on the way.
      </p>
      <p>
        <a href="/">Go to Today</a>
      </p>
    </PlainPage>
  );
}
