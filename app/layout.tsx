import "@fontsource-variable/source-sans-3/wght.css";
import "@fontsource-variable/source-serif-4/opsz.css";
import "@fontsource-variable/source-serif-4/opsz-italic.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import { isDemo } from "./_data/registry";
import { standing, whyNotOpen } from "./_data/standing";
import { Colophon } from "./_page/colophon";
import { Masthead } from "./_page/masthead";
import { NotOpen } from "./_page/not-open";

// every page reads the registry and bears the nonce of its request
export const dynamic = "force-dynamic";

export const metadata: Metadata = {
  title: { default: "Lengthbook", template: "%s · Lengthbook" },
  description: "Research registry and outcomes workbench of a limb-lengthening unit",
  robots: { index: false, follow: false },
};
export const viewport: Viewport = {
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#fcfbf8" },
    { media: "(prefers-color-scheme: dark)", color: "#161513" },
  ],
};

export default async function Layout({ children }: { readonly children: ReactNode }) {
  const path = (await headers()).get("x-path") ?? "/";
  const why = await whyNotOpen();
  const { units, dataTo } = why === null ? await standing() : { units: [], dataTo: null };
  return (
    <html lang="en">
      <body>
        <a className="skip sans" href="#page">
          To the page
        </a>
        <Masthead units={units} dataTo={dataTo} path={path} invented={isDemo()} />
        {why === null ? children : <NotOpen why={why} />}
        <Colophon />
      </body>
    </html>
  );
}
