import type { Chance } from "./chance";
import { lengtheningNails } from "./device";
import type { Technique } from "./technique";
import type { SegmentDraft } from "./types";

/** Where and how the bone was cut. */
export function osteotomyOf(chance: Chance, technique: Technique): SegmentDraft {
  const { bone, device } = technique;
  const nail = lengtheningNails.has(device);
  return {
    osteotomyTechnique: chance.among({
      "drill-and-osteotome": 72,
      "gigli-saw": bone === "tibia" && !nail ? 30 : 2,
      "intramedullary-saw": nail ? 6 : 0,
      corticotomy: nail ? 1 : 10,
    }),
    osteotomySite: siteOf(chance, technique),
    osteotomyLevels: levelsOf(chance, technique),
    osteotomyOrientation: chance.happens(0.85) ? chance.among({ transverse: 8, oblique: 2 }) : null,
    osteotomyCooled: chance.happens(0.6) ? chance.happens(0.8) : null,
    osteotomyFromProximalMm: nail && chance.happens(0.4) ? chance.whole(bone === "tibia" ? 70 : 90, 130) : null,
  };
}

function siteOf(chance: Chance, { bone, device, entry }: Technique): SegmentDraft["osteotomySite"] {
  const proximal = bone === "tibia" || (bone === "femur" && entry !== "retrograde" && lengtheningNails.has(device));
  return proximal ? chance.among({ proximal: 8, middle: 2 }) : chance.among({ distal: 7, middle: 3 });
}

/** Half of the dysplastic tibiae in circular frames are drawn apart at two levels. */
function levelsOf(chance: Chance, { group, bone, device }: Technique): number {
  return group === "dysplasia" && bone === "tibia" && device === "circular-fixator" && chance.happens(0.5) ? 2 : 1;
}
