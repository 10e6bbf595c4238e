import { counted } from "@/lib/charts";
import { type Mapping, parseMapping } from "@/lib/intake";
import type { Asked } from "../_talk/messages";
import type { IntakeStore } from "./store";

/** Brings files in: sheets go to the worker, a mapping is taken as what the person says. */
export async function bringFiles(store: IntakeStore, files: readonly File[]): Promise<void> {
  const mappings = files.filter(isMapping);
  const sheets = files.filter((file) => !isMapping(file));
  for (const file of mappings) await loadMapping(store, file);
  if (sheets.length === 0) return;
  const arrived = await store.atWork("arrive", "read", { files: sheets });
  if (!arrived) return;
  const refused = arrived.filter(({ sheets }) => sheets.length === 0).length;
  const spoken = `${counted(arrived.length - refused, "file")} arrived${refused > 0 ? `, ${refused} refused` : ""}.`;
  store.set({ arrived, view: null, stale: true, receipt: null, spoken });
}

export async function forgetFile(store: IntakeStore, file: string): Promise<void> {
  const arrived = await store.quietly("forget", { file });
  if (arrived) store.set({ arrived, view: null, stale: true, receipt: null });
}

/** A new letter after one was kept: the key stays open and the mapping said, the files and what was said of their rows go. */
export async function startAnew(store: IntakeStore): Promise<void> {
  for (const { file } of store.state.arrived) await store.quietly("forget", { file });
  store.say({ rowAnswers: [], coded: [] });
  store.set({ arrived: [], corrections: "keep", view: null, receipt: null, stale: true });
}

function isMapping({ name }: File): boolean {
  return name.toLowerCase().endsWith(".json");
}

export async function loadMapping(store: IntakeStore, file: File): Promise<void> {
  try {
    store.say({ mapping: parseMapping(JSON.parse(await file.text())) });
    store.set({ trouble: null, spoken: "The mapping is applied." });
  } catch {
    store.set({
      trouble: "That file is no mapping that was saved here: nothing of it was taken. Choose the file that ends in .mapping.json.",
    });
  }
}

export async function makeKey(store: IntakeStore, passphrase: string): Promise<void> {
  const made = await store.atWork("key", "makeKey", { passphrase });
  if (made)
    store.set({
      key: { is: "open", how: "made", recoveryCode: made.recoveryCode },
      stale: true,
      spoken: "The key is made. Its recovery code is shown.",
    });
}

/** Opens the key; `false` when the secret is not the one. */
export async function openKey(store: IntakeStore, asked: Asked<"openKey">): Promise<boolean | null> {
  const answer = await store.atWork("key", "openKey", asked);
  if (!answer) return null;
  const how = asked.by === "passphrase" ? "opened" : "recovered";
  if (answer.opened) store.set({ key: { is: "open", how, recoveryCode: null }, stale: true, spoken: "The key is open." });
  return answer.opened;
}

/** Gives the open key a new passphrase; the next commit brings the new seal to the registry. */
export async function sealAnew(store: IntakeStore, passphrase: string): Promise<void> {
  const sealed = await store.atWork("key", "sealAnew", { passphrase });
  if (sealed) store.set({ key: { is: "open", how: "sealed", recoveryCode: null }, spoken: "The key has a new passphrase." });
}

/** Prepares the files by what was said. A newer word stops an older run. */
export async function prepare(store: IntakeStore): Promise<void> {
  store.set({ stale: false });
  const view = await store.atWork("prepare", "prepare", store.state.said);
  if (!view) return;
  const { error, ask } = view.findingsBy;
  store.set({ view, spoken: `Worked through: ${counted(error, "fault")}, ${counted(ask + view.questions.length, "question")}.` });
}

export function sayColumn(store: IntakeStore, header: string, field: string | null | undefined): void {
  const { [header]: _, ...others } = store.state.said.mapping.columns;
  sayMapping(store, { columns: field === undefined ? others : { ...others, [header]: field } });
}

export function sayMapping(store: IntakeStore, change: Partial<Mapping>): void {
  store.say({ mapping: { ...store.state.said.mapping, ...change } });
}

/** Commits. What the page shows of a registry that has moved on meanwhile, by a stop that came too late or another tab, is worked through anew. */
export async function commit(store: IntakeStore): Promise<void> {
  const before = store.state.door?.batch;
  const receipt = await store.atWork("commit", "commit", { corrections: store.state.corrections });
  if (!receipt) {
    const { trouble } = store.state;
    await store.askDoor();
    store.set({ trouble, stale: store.state.door?.batch !== before });
    return;
  }
  const { batch } = receipt;
  // the address names the batch, so that a reload still shows what was kept
  if (batch) window.history.replaceState(null, "", `?step=kept&batch=${batch}`);
  if (batch) store.set({ key: { is: "open", how: "opened", recoveryCode: null } });
  store.set({ receipt, spoken: batch === null ? "Nothing was new." : `Kept, as batch ${batch}.` });
  await store.askDoor();
}
