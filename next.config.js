/** @type {import("next").NextConfig} */
const config = {
  serverExternalPackages: ["better-sqlite3"],
  poweredByHeader: false,
  // pages go to a browser on the same machine, or through a proxy that presses them itself: pressing here only delays the answer
  compress: false,
  images: { unoptimized: true },
  devIndicators: false,
  // types are checked by `npm run check` and `npm test`, not at every start of the demo
  typescript: { ignoreBuildErrors: true },
};

export default config;
