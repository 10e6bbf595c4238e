import { eventTypes, fileOnlyFields, fold, tables } from "@/lib/codebook";

// words of notes and headers that the codebook does not hold
const commonWords = `a about above abscess accident acute additional adjusted admission admitted adult advanced advised after again against age aged all
  allowed also am an anaesthesia anaesthetic and angle ankle another anterior antibiotic antibiotics any ap appointment approach april arm
  arranged arthritis arthrogram as asap at attended attending audit august awaiting away back bad bar be because been before being below
  better between bilateral birth bleeding blood bone booked both bracket broken but by calculated call callus came can cancelled cast cell
  centre changed check checked child children clear clinic clinical closed cm comment comments complains complete completed complication
  complications congenital consent consultant contact continued control corrected correction cortex crutches ct current cut daily data
  date day days december declined deep default defect deficiency deformity delayed department detail details developed diagnosis diameter
  did difference discharged discrepancy discussed disease disorder distal do doctor doing done down dr drain dressing due during dysplasia
  each early east eight elbow end error estimated eventually every excellent exchange exfix extended external extra failed fair false
  family father febrile february feeling female femoral femur few fibula fibular field film films final fine first five fixed flexion
  follow followed following foot for form four fracture frame free friday from full function further ga gait general generally girl given
  good grade graft great group had half hand has have he healed healing height her here high him hip his history home hospital how i icu
  if imaging implant important improved in increased infected infection inserted inside intact internal into is it january joint july june
  just knee known la lat later lateral left leg length less level limb line list little lock long loss lost low lower made major male man
  many march mark may mean measured medial medical medication metal method mild minor missed mobile mobilising mobilizing moderate monday
  month months more most mother motor mr mri much muscle na nail name nan near neck needed negative nerve new next night nil nine no none
  normal north not note noted notes nothing november now null number numbness nurse october of off old on one only opd open operated
  operation or oral orif original other out outcome over own pain painful painless parents partial patient patients per permanent phone
  physio physiotherapy pin pins plan planned plate poor position positive possible post posterior pre present presented pressure previous
  probable problem problems procedure progress proximal quality quarter rate ray reason record recovered recurrent reduced referred region
  regular release removal removed repeat report requested required research residual resolved result results return reviewed revised
  revision right ring rod satisfactory saturday scan score screw screws second seen segment segmental sensation september septic
  series serious settled seven severe she short shortening shoulder side sign since single sister site six skeletal skin slight slow small
  soft some son south stable stage standing start started stature status steps stiff still stopped study successful sunday superficial
  surgeon surgery surgical swelling syndrome tbc tbd technique telephone temporary ten test than that the then therapy there they third
  this three thursday tibia tibial time times tissue to told tolerating too total traction transfer transport trauma treated treatment
  true tuesday twice two type ulcer under unequal unit united unknown until up upper use used usg usual very via visit wait walking ward
  was weak wean wednesday week weeks weight weightbearing well were west when where which while who with within without woman work wound
  wrist x xr xray year years yes yet young`;

function wordsOf(value: unknown, into: Set<string>): void {
  if (typeof value === "string") for (const word of fold(value).split(" ")) into.add(word);
  else if (typeof value === "object" && value !== null)
    for (const [key, inner] of Object.entries(value)) {
      wordsOf(key.replace(/([a-z])([A-Z])/g, "$1 $2"), into);
      wordsOf(inner, into);
    }
}

function gather(): ReadonlySet<string> {
  const words = new Set(commonWords.split(/\s+/));
  wordsOf([tables, fileOnlyFields, eventTypes], words);
  return words;
}

/** Folded words that are no one's name: the codebook's own, and the common words of notes. */
export const vocabulary: ReadonlySet<string> = gather();
