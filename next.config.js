/** @type {import("next").NextConfig} */
const config = {
  serverExternalPackages: ["better-sqlite3"],
  poweredByHeader: false,
  images: { unoptimized: true },
  devIndicators: false,
  // types are checked by `npm run check` and `npm test`, not at every start of the demo
  typescript: { ignoreBuildErrors: true },
};

export default config;
