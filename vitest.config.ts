import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

const alias = { "@": import.meta.dirname };

export default defineConfig({
  resolve: { alias },
  test: {
    // a core each: by default one is kept back, which on two cores halves the pace
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: { name: "unit", testTimeout: 30_000, include: ["tests/unit/**/*.test.ts", "tests/docs/**/*.test.ts", "tests/walls.test.ts"] },
      },
      {
        extends: true,
        test: {
          name: "integration",
          include: ["tests/integration/**/*.test.ts", "tests/external/**/*.test.ts"],
          exclude: ["**/*.long.test.ts"],
          globalSetup: ["tests/command-line.ts", "tests/external/announce.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          // npm run test:long: every raw file, every part and every place, at length
          name: "long",
          include: ["tests/**/*.long.test.ts"],
          globalSetup: ["tests/command-line.ts", "tests/browser/server.ts"],
          fileParallelism: false,
          testTimeout: 240_000,
          hookTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          exclude: ["**/*.long.test.ts"],
          globalSetup: ["tests/command-line.ts", "tests/browser/server.ts"],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
});
