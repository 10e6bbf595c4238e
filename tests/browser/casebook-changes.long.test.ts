import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page, Request } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { startServer } from "@/lib/cli/setup/serve.mjs";
import { axeFaults, oneBrowser, shoot } from "./browser";
import { bring, goOn, openKey as openIntakeKey, turnTo, workedThrough } from "./intake/walk";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const passphrase = "invented unit, open key";
const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-casebook-"));
const data = path.join(folder, "registry");
const secret = path.join(folder, "passphrase.txt");
let address = "";
let stop = async () => {};

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const given = probe.address();
      probe.close(() => (typeof given === "object" && given ? resolve(given.port) : reject(new Error("no port was given"))));
    });
  });
}

/** Local numbers of the invented unit in the order of its sheet, with the sex that it gives them. */
function patients(): readonly { readonly number: string; readonly sex: string }[] {
  const [head = "", ...lines] = readFileSync("demo-data/seven-years.csv", "utf8").trim().split("\n");
  const names = head.split(",");
  const [number, sex] = [names.indexOf("local_id"), names.indexOf("sex")];
  const seen = new Map(lines.map((line) => line.split(",")).map((cells) => [cells[number] ?? "", cells[sex] ?? ""]));
  return [...seen].map(([id, of]) => ({ number: id, sex: of }));
}

beforeAll(async () => {
  writeFileSync(secret, `${passphrase}\n`, { mode: 0o600 });
  await lengthbook(data, ["intake", "demo-data/seven-years.csv", "--dates", "ymd", "--passphrase-file", secret, "--json"]);
  const { child, address: served, ended } = await startServer({ data, port: await freePort() });
  address = served;
  stop = async () => {
    child.kill("SIGTERM");
    await ended;
  };
});
afterAll(async () => {
  await stop();
  rmSync(folder, { recursive: true });
});

const json = async <T>(...words: string[]): Promise<T> => JSON.parse(await lengthbook(data, [...words, "--json"]));
type CaseJson = {
  readonly segments: readonly { readonly segment: number; readonly course: { readonly gained: { readonly mm: number } | null } }[];
  readonly corrections: readonly object[];
};

async function openKey(page: Page, at: string): Promise<void> {
  await page.goto(address + at);
  await page.waitForLoadState("networkidle");
  await page.getByText("Whose is this?").click();
  await page.getByLabel("Passphrase of the unit’s key").fill(passphrase);
  await page.getByRole("button", { name: "Open the key" }).click();
  await page.getByLabel("Local numbers, a line each").waitFor();
}

/** Everything that a page sends, addresses and bodies; its icon the browser fetches when it likes. */
function sentBy(page: Page): string[] {
  const sent: string[] = [];
  page.on("request", (request: Request) => {
    if (!new URL(request.url()).pathname.endsWith("/icon.svg"))
      sent.push(`${request.method()} ${request.url()} ${request.postData() ?? ""}`);
  });
  return sent;
}

describe("a field corrected by hand", () => {
  test("with a reason, as a batch; the sheet brought again leaves it, and taken back it is as before", async () => {
    const rows = await json<{ rows: { case: number; segment: number; gainMm: number | null }[] }>("casebook", "--columns", "gainMm");
    const one = rows.rows.find(({ gainMm }) => gainMm !== null);
    if (!one || one.gainMm === null) throw new Error("the invented unit has a gain");
    const page = await open({ viewport: { width: 1280, height: 900 } });
    await page.goto(`${address}/casebook/${one.case}?correct=segment-${one.segment}-gainMm`);
    const sent = sentBy(page);
    await page.getByLabel("It should be").fill("Quornaruthe");
    await page.getByRole("button", { name: "Correct it" }).click();
    expect(await page.locator("input:invalid").count()).toBe(1);
    expect(sent).toEqual([]);
    await page.evaluate("document.querySelector('.correct-form').noValidate = true");
    await page.getByLabel("It should be").fill("fifty");
    await page.getByRole("button", { name: "Correct it" }).click();
    await page.getByRole("alert").filter({ hasText: "no value of this field. Nothing was changed" }).waitFor();
    await page.getByLabel("It should be").fill("999");
    await page.getByRole("button", { name: "Correct it" }).click();
    await page.getByRole("alert").filter({ hasText: "outside what the field can hold" }).waitFor();
    await page.getByLabel("It should be").fill(String(one.gainMm + 1));
    await page.getByLabel("because of").selectOption("source-checked");
    await page.getByRole("button", { name: "Correct it" }).click();
    await page.getByRole("status").filter({ hasText: "The field was corrected, as batch 2" }).waitFor();
    await shoot(page, "case-corrected-wide");
    expect(await axeFaults(page)).toEqual([]);
    expect(await page.locator(".history li").first().innerText()).toContain("corrected by hand (checked against the source)");
    expect(await page.locator(".changes").first().innerText()).toContain(`gain from ${one.gainMm} mm to ${one.gainMm + 1} mm`);

    const again = await json<{ batch: number | null }>(
      "intake",
      "demo-data/seven-years.csv",
      "--dates",
      "ymd",
      "--passphrase-file",
      secret,
    );
    expect(again.batch).toBeNull();
    const held = await json<CaseJson>("casebook", String(one.case));
    expect(held.segments.find(({ segment }) => segment === one.segment)?.course.gained?.mm).toBe(one.gainMm + 1);
    expect(held.corrections).toMatchObject([{ field: "gainMm", sheet: one.gainMm, value: one.gainMm + 1, reason: "source-checked" }]);
    const before = await json<{ contentHash: string }[]>("batches");
    expect(await json("undo", "2")).toMatchObject({ batch: 3, contentHash: before[0]?.contentHash });
    await page.context().close();
  });

  test("of a row or field that can't be, in words", async () => {
    const page = await open();
    for (const row of ["segment-1-surgeryDay", "segment-999999-gainMm", "person-1-line", "shoe-1-gainMm", "segment-1"]) {
      await page.goto(`${address}/casebook/1`);
      await page.evaluate(
        `fetch("/casebook/correct", { method: "POST", body: new URLSearchParams({ case: "1", row: "${row}", value: "1", reason: "other" }) }).then((r) => { window.landed = r.url; })`,
      );
      await page.waitForFunction("window.landed");
      expect(await page.evaluate("window.landed")).toContain("trouble=unknown");
    }
    expect((await json<object[]>("batches")).length).toBe(3);
    await page.context().close();
  });
});

test("a sheet that says something else than a correction is shown beside it and asked about, held back unless it is chosen", async () => {
  const { rows } = await json<{ rows: { case: number; segment: number; gainMm: number | null }[] }>("casebook", "--columns", "gainMm");
  const one = rows.find(({ gainMm }) => gainMm !== null && gainMm > 20);
  if (!one || one.gainMm === null) throw new Error("the invented unit has a gain");
  const { batch } = await json<{ batch: number }>(
    "correct",
    String(one.case),
    "segment",
    String(one.segment),
    "gainMm",
    String(one.gainMm + 1),
  );
  // every gain of that size is another in the sheet now; only one of them was corrected by hand
  const third = one.gainMm - 2;
  const [head = "", ...lines] = readFileSync("demo-data/seven-years.csv", "utf8").trim().split("\n");
  const place = head.split(",").indexOf("gain_mm");
  const mended = lines.map((line) =>
    line
      .split(",")
      .map((cell, i) => (i === place && Number(cell) === one.gainMm ? String(third) : cell))
      .join(","),
  );
  const file = path.join(folder, "mended.csv");
  writeFileSync(file, `${[head, ...mended].join("\n")}\n`);
  const gain = async () =>
    (await json<CaseJson>("casebook", String(one.case))).segments.find(({ segment }) => segment === one.segment)?.course.gained?.mm;

  const page = await open({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${address}/intake`);
  await bring(page, file);
  await goOn(page);
  await openIntakeKey(page, passphrase);
  await workedThrough(page);
  await turnTo(page, "What will be kept");
  const asked = page.locator("fieldset", { hasText: "1 cell says something else than a correction made by hand" });
  expect(await asked.innerText()).toContain(`Gain, corrected to ${one.gainMm + 1}; the sheet now says ${third}`);
  await shoot(page, "intake-corrected-wide");
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole("button", { name: /^Keep \d+ rows?$/ }).click();
  await page
    .getByText(/Kept, as batch \d+/)
    .first()
    .waitFor();
  expect(await gain()).toBe(one.gainMm + 1);

  await page.goto(`${address}/intake`);
  await bring(page, file);
  await goOn(page);
  await openIntakeKey(page, passphrase);
  await workedThrough(page);
  await turnTo(page, "What will be kept");
  await page.getByLabel("Take what the sheet says; the corrections end").check();
  await page.getByRole("button", { name: /^Keep \d+ rows?$/ }).click();
  await page
    .getByText(/Kept, as batch \d+/)
    .first()
    .waitFor();
  expect(await gain()).toBe(third);
  expect((await json<CaseJson>("casebook", String(one.case))).corrections).toEqual([]);
  for (const undone of [batch + 2, batch + 1, batch]) await json("undo", String(undone));
  expect(await gain()).toBe(one.gainMm);
  await page.context().close();
});

describe("Whose is this?", () => {
  test("numbers typed and a list dropped are told in the tab, and nothing of them is sent or stays", async () => {
    const [a, b] = patients();
    const page = await open({ viewport: { width: 1280, height: 900 } });
    const sent = sentBy(page);
    await openKey(page, "/casebook?list=healing-date-missing");
    await page.getByLabel("Local numbers, a line each").fill(`${a?.number}\n ${b?.number} \n${a?.number}\nNOBODY-1`);
    await page.getByRole("button", { name: "Look them up" }).click();
    await page.locator(".whose-part [role=status]").filter({ hasText: "Of 3 numbers (what was typed), 2 are held, as 2 cases" }).waitFor();
    await shoot(page, "casebook-whose-wide");
    expect(await axeFaults(page)).toEqual([]);

    const list = path.join(folder, "list.csv");
    writeFileSync(
      list,
      `Hospital number;Name\n${patients()
        .map(({ number }) => `${number};Invented Person`)
        .join("\n")}\n`,
    );
    await page.locator(".whose-part input[type=file]").setInputFiles(list);
    await page
      .locator(".whose-part [role=status]")
      .filter({ hasText: `Of ${patients().length} numbers (the column of local numbers)` })
      .waitFor();
    const marks = await page.locator(".book .whose").allInnerTexts();
    const numbers = new Set(patients().map(({ number }) => number));
    expect(marks.length).toBeGreaterThan(5);
    for (const mark of marks) expect(numbers).toContain(mark);

    const everything = sent.join("\n");
    for (const { number } of patients()) expect(everything).not.toContain(number);
    for (const word of [passphrase, "NOBODY", "Invented Person", encodeURIComponent(passphrase)]) expect(everything).not.toContain(word);
    expect(sent.filter((line) => !line.startsWith("GET "))).toEqual([]);
    expect(
      await page.evaluate("JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie, indexedDB.databases ? 0 : 1])"),
    ).toBe('[{},{},"",0]');
    await page.reload();
    expect(await page.locator(".book .whose").allInnerTexts()).toEqual(marks.map(() => ""));
    await page.context().close();
  });

  test("a wrong passphrase opens nothing, and a shut key forgets", async () => {
    const page = await open();
    await page.goto(`${address}/casebook`);
    await page.waitForLoadState("networkidle");
    await page.getByText("Whose is this?").click();
    await page.getByLabel("Passphrase of the unit’s key").fill("another unit, another key");
    await page.getByRole("button", { name: "Open the key" }).click();
    await page.getByRole("alert").filter({ hasText: "does not open the registry’s key" }).waitFor();
    await page.getByLabel("Passphrase of the unit’s key").fill(passphrase);
    await page.getByRole("button", { name: "Open the key" }).click();
    await page.getByLabel("Local numbers, a line each").fill(patients()[0]?.number ?? "");
    await page.getByRole("button", { name: "Look them up" }).click();
    await page.locator(".matches li").first().waitFor();
    await page.getByRole("button", { name: "Shut the key and forget them" }).click();
    expect(await page.locator(".matches").count()).toBe(0);
    await page.getByLabel("Passphrase of the unit’s key").waitFor();
    await page.context().close();
  });

  test("the keys come down only for this, and are not stored", async () => {
    const reply = await fetch(`${address}/casebook/keys`);
    expect(reply.headers.get("cache-control")).toContain("no-store");
    const { keys } = (await reply.json()) as { keys: [number, string, number][] };
    expect(keys.length).toBe(patients().length);
    for (const [, pseudonym] of keys) expect(pseudonym).toMatch(/^[0-9A-HJKMNP-TV-Z]{26}$/);
    expect((await fetch(`${address}/casebook/keys?where=x`)).status).toBe(400);
    const page = await (await fetch(`${address}/casebook`)).text();
    for (const [, pseudonym] of keys) expect(page).not.toContain(pseudonym);
  });
});

test("two numbers of one patient are joined from the tab and parted on the page; only two cases and a number of days go up", async () => {
  const [a, b] = patients().filter(({ sex }) => sex === "male");
  if (!a || !b) throw new Error("the invented unit has two men");
  const before = await json<{ contentHash: string }[]>("batches");
  const page = await open({ viewport: { width: 1280, height: 900 } });
  const sent = sentBy(page);
  await openKey(page, "/casebook");
  await page.getByLabel("Local numbers, a line each").fill(`${a.number}\n${b.number}`);
  await page.getByRole("button", { name: "Look them up" }).click();
  await page.getByText("Are these two one patient?").waitFor();
  await shoot(page, "casebook-pair-wide");
  await page
    .getByRole("button", { name: /^Join case/ })
    .first()
    .click();
  await page.getByRole("status").filter({ hasText: "read as one patient from now on" }).waitFor();
  const posts = sent.filter((line) => line.startsWith("POST "));
  expect(posts).toHaveLength(1);
  expect(posts[0]).toMatch(/\/casebook\/join \{"person":\d+,"into":\d+,"days":-?\d+\}$/);
  expect(await page.locator("h2").first().innerText()).toBe("2 numbers of one patient");
  await shoot(page, "case-joined-wide");
  expect(await axeFaults(page)).toEqual([]);

  // a longer sheet brings both numbers' rows again: nothing is new
  const again = await json<{ batch: number | null }>("intake", "demo-data/seven-years.csv", "--dates", "ymd", "--passphrase-file", secret);
  expect(again.batch).toBeNull();
  const second = /what was case (\d+)/i.exec(await page.locator("main").innerText())?.[1];
  const first = page.url().split("/").at(-1)?.split("?")[0];
  await page.goto(`${address}/casebook/${second}`);
  expect(page.url()).toBe(`${address}/casebook/${first}`);
  await page.getByText("They are two patients after all").click();
  await page.getByRole("button", { name: new RegExp(`^Part case ${second} from case \\d+$`) }).click();
  await page.getByRole("status").filter({ hasText: "was parted from this patient" }).waitFor();
  expect((await json<{ contentHash: string }[]>("batches")).at(-1)?.contentHash).toBe(before.at(-1)?.contentHash);
  await page.context().close();
});

test.each([
  ["{"],
  ['{"person":1}'],
  ['{"person":1,"into":2,"days":0.5}'],
  ['{"person":1,"into":2,"days":1,"number":"0463906"}'],
  ['{"person":1,"into":1,"days":0}'],
])("a join asked with %s is refused, and nothing is joined", async (body) => {
  const before = await json<object[]>("batches");
  const reply = await fetch(`${address}/casebook/join`, {
    method: "POST",
    body,
    headers: { "Content-Type": "application/json", Origin: address },
  });
  expect([400, 409]).toContain(reply.status);
  expect(await reply.text()).not.toContain("0463906");
  expect(await json<object[]>("batches")).toEqual(before);
});
