import { join } from "node:path";
import { defineConfig } from "vitest/config";

const root = join(import.meta.dirname, "..");

/** The tests that mutants are held against: those of the statistics room, without those of other methods and the slow ones. */
export default defineConfig({
  root,
  resolve: { alias: { "@": root } },
  test: {
    include: ["tests/unit/stats/**/*.test.ts"],
    exclude: ["tests/unit/stats/{estimate,catalogue,ranks,tables,agreement,growth,firth,hard-cases,resampling}.test.ts"],
    setupFiles: ["tests/mutation.setup.ts"],
    isolate: false,
    testTimeout: 20_000,
  },
});
