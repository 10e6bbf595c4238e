/** @type {import("next").NextConfig} */
const config = {
  serverExternalPackages: ["better-sqlite3"],
  poweredByHeader: false,
  images: { unoptimized: true },
  devIndicators: false,
};

export default config;
