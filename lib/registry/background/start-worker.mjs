// A thread starts without TypeScript: what --import brings a process, a thread of Node 20 must register for itself.
import { register } from "tsx/esm/api";

register();
await import("./commit-worker.ts");
