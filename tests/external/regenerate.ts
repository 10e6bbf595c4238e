import { scriptNames, storeAnswers } from "./r-scripts";

const asked = process.argv.slice(2);
for (const name of asked.length ? asked : scriptNames()) console.log(`${name}: ${storeAnswers(name)} answers stored`);
