import { cache } from "react";
import { today } from "@/lib/answers";
import { registry } from "./registry";

/** How the registry stands, asked once a request: by the line of page names, and by Today. */
export const standing = cache(async () => today(await registry()));
