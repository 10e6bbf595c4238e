// The README's commands. It runs before anything is installed, so it uses Node's own modules only.
import { build } from "./setup/build.mjs";
import { checkNode, install } from "./setup/install.mjs";
import { seedDemo } from "./setup/seed.mjs";
import { serve } from "./setup/serve.mjs";
import { runTests } from "./setup/tests.mjs";

const commands = {
  async demo() {
    await install();
    await build();
    await seedDemo();
    return serve({ name: "Lengthbook, the demo registry (invented data)", data: ".data/demo" });
  },
  async start() {
    await install();
    await build();
    return serve({ name: "Lengthbook", data: process.env.LENGTHBOOK_DATA ?? ".data/registry" });
  },
  async test() {
    await install();
    await build();
    return runTests(process.argv.slice(3));
  },
};

const command = commands[process.argv[2]];
if (!command) {
  console.error(`setup requires one of ${Object.keys(commands).join(", ")}, received ${process.argv[2] ?? "nothing"}`);
  process.exit(2);
}
try {
  checkNode();
  process.exitCode = await command();
} catch (error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}
