import { setImmediate } from "node:timers/promises";
import { expect, test } from "vitest";
import { type Commit, checkRows, encodeCommit, WireError } from "@/lib/intake";
import { type CommitPace, NothingCommitted, type Registry, RowsRefused, StopTooLate, UnitKeyRefused } from "@/lib/registry";
import { at, fresh, noCheck } from "./folder";
import { aPerson, aSegment, manyRows, rowsOf } from "./rows";

const whole = (rows: Commit["rows"], more: Partial<Commit> = {}) => [...encodeCommit({ rows, findings: {}, ...more })].join("");

/** The bytes of a text in pieces that break lines anywhere; `before` each piece something may happen. */
async function* pieces(text: string, before: (piece: number) => void = () => undefined): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(text);
  for (let from = 0; from < bytes.length; from += 50_000) {
    before(from / 50_000);
    yield bytes.subarray(from, from + 50_000);
  }
}

/** Any commit has a thread of its own. */
const inThread = { at, largeFrom: 0 };
const registryWithCheck = () => fresh(checkRows);
const stateOf = async (registry: Registry) => [await registry.state(), await registry.contentHash()];

test.each([
  ["here", { at }],
  ["in a thread", inThread],
])("lines committed %s give the batch that their rows give", async (_, options) => {
  const [byLines, byRows] = [await registryWithCheck(), await registryWithCheck()];
  const rows = manyRows(2000);
  const done = await byRows.commit(rows, { at, findings: { "months-converted": 3 } });
  expect(await byLines.commitLines(pieces(whole(rows, { findings: { "months-converted": 3 } })), options)).toEqual(done);
  expect(await byLines.batches()).toEqual(await byRows.batches());
  // over this thread's own connection too
  expect((await byLines.frameAsOf(await byLines.state(), "segment", ["gainMm"])).length).toBe(2000);
  expect(await byLines.commitLines(pieces(whole(rows)), options)).toMatchObject({
    batch: null,
    unchanged: { persons: 2000, segments: 2000 },
  });
});

test.each([
  ["here", { at }],
  ["in a thread", inThread],
])("what is wrong with lines committed %s is told as what it is, and nothing is written", async (_, options) => {
  const registry = await registryWithCheck();
  const sealed = (letter: string) => ({ iterations: 600_000, salt: letter.repeat(24), iv: letter.repeat(16), sealed: letter.repeat(64) });
  const key = { keyId: "KEY000000001", byPassphrase: sealed("A"), byRecovery: sealed("B") };
  await registry.commitLines(pieces(whole(rowsOf({ person: [aPerson(1)] }), { unitKey: key })), options);
  const before = await stateOf(registry);
  const refusal = (text: string, more = {}) =>
    registry.commitLines(pieces(text), { ...options, ...more }).catch((reason: unknown) => reason as Error);

  const named = whole(rowsOf({ person: [aPerson(2)] })).replace('"line"', '"patientName":"Jane","line"');
  expect(await refusal(named)).toEqual(new WireError(2, null, "a field that the codebook hasn't"));
  const text = whole(rowsOf({ person: [aPerson(2)] }));
  expect(await refusal(text.slice(0, -20))).toBeInstanceOf(WireError);
  const wrong = await refusal(whole(rowsOf({ person: [aPerson(2)], segment: [aSegment(2, { distractionStartDay: 990 })] })));
  expect(wrong).toBeInstanceOf(RowsRefused);
  expect((wrong as RowsRefused).findings).toMatchObject([{ code: "days-out-of-order", table: "segment", place: 0 }]);
  expect(await refusal(whole(rowsOf({ person: [aPerson(2)] }), { unitKey: { ...key, keyId: "KEY000000002" } }))).toBeInstanceOf(
    UnitKeyRefused,
  );
  expect(await refusal(text, { at: "now" })).toBeInstanceOf(RangeError);
  expect(await stateOf(registry)).toEqual(before);
});

test.each([
  ["here", { at }],
  ["in a thread", inThread],
])(
  "a sheet that a person chose over a correction is taken from lines committed %s, and not unless somebody was asked",
  async (_, options) => {
    const registry = await registryWithCheck();
    await registry.commit(rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { gainMm: 50 })] }), { at });
    await registry.correct({ table: "segment", entity: 1, field: "gainMm", value: 52, reason: "measured-again", at });
    const sheet = rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { gainMm: 54 })] });
    expect(await registry.commitLines(pieces(whole(sheet)), options)).toMatchObject({ batch: null });
    expect(await registry.commitLines(pieces(whole(sheet, { overCorrections: 1 })), options)).toMatchObject({ batch: 3 });
    expect(await registry.corrections()).toEqual([]);
  },
);

test("bytes that are no text are refused", async () => {
  const registry = await registryWithCheck();
  async function* bytes() {
    yield new Uint8Array([0x7b, 0xff, 0xfe]);
  }
  await expect(registry.commitLines(bytes(), { at })).rejects.toThrow(TypeError);
});

test("while a thread commits, this one goes on reading; writers wait their turn", async () => {
  const registry = await registryWithCheck();
  await registry.commit(rowsOf({ person: [aPerson(1)] }), { at });
  let ended = 0;
  const large = registry.commitLines(pieces(whole(manyRows(3000))), inThread).finally(() => {
    ended = 1;
  });
  let answers = 0;
  let written: Promise<unknown> | undefined;
  while (ended === 0) {
    await setImmediate();
    // what was held before, until the thread is done
    const { batch } = await registry.state();
    if (batch === 1) answers += 1;
    if (answers === 1) written = registry.keepQuestion("0123456789ab", "{}");
  }
  expect(await large).toMatchObject({ batch: 2 });
  await written;
  expect(await registry.findQuestion("0123456789ab")).toBe("{}");
  // a commit in this thread would have left none of these
  expect(answers).toBeGreaterThan(20);
  const [third, fourth] = [
    registry.commitLines(pieces(whole(manyRows(3200))), inThread),
    registry.commit(rowsOf({ person: [aPerson(5)] }), { at }),
  ];
  const batches = [(await third).batch, (await fourth).batch];
  expect([...batches].sort()).toEqual([3, 4]);
});

test("a commit that is stopped while its lines come writes nothing", async () => {
  const registry = await registryWithCheck();
  const before = await stateOf(registry);
  for (const largeFrom of [0, Number.POSITIVE_INFINITY]) {
    const stop = new AbortController();
    const lines = pieces(whole(manyRows(3000)), (piece) => {
      if (piece === 3) stop.abort();
    });
    await expect(registry.commitLines(lines, { at, largeFrom, signal: stop.signal })).rejects.toThrow(NothingCommitted);
  }
  expect(await stateOf(registry)).toEqual(before);
  expect(await registry.commitLines(pieces(whole(manyRows(3000))), inThread)).toMatchObject({ batch: 1 });
});

test("a commit that is stopped at any moment has written all of its rows or none", async () => {
  const text = whole(manyRows(4000));
  const lone = await registryWithCheck();
  let sent = 0;
  async function* counted() {
    yield* pieces(text);
    sent = performance.now();
  }
  const { contentHash } = await lone.commitLines(counted(), inThread);
  const commitMs = performance.now() - sent;
  const stopped: boolean[] = [];
  for (const share of [0.1, 0.3, 0.5, 0.7]) {
    const registry = await registryWithCheck();
    const stop = new AbortController();
    async function* lines() {
      yield* pieces(text);
      setTimeout(() => stop.abort(), share * commitMs);
    }
    const outcome = await registry.commitLines(lines(), { ...inThread, signal: stop.signal }).then(
      () => "committed",
      (error: unknown) => (error instanceof NothingCommitted ? "nothing" : error instanceof StopTooLate ? "too late" : String(error)),
    );
    expect(["committed", "nothing", "too late"]).toContain(outcome);
    expect(await registry.state()).toMatchObject({ batch: outcome === "nothing" ? 0 : 1 });
    stopped.push(outcome === "nothing");
    await registry.commitLines(pieces(text), inThread);
    expect(await registry.contentHash()).toBe(contentHash);
  }
  // at least the earliest was in time
  expect(stopped[0]).toBe(true);
});

test("a thread tells how far it is: rows written, then looked at beside what was held, then gone into the hash", async () => {
  const registry = await registryWithCheck();
  const paces: CommitPace[] = [];
  await registry.commitLines(pieces(whole(manyRows(5000))), { ...inThread, onPace: (pace) => paces.push(pace) });
  expect([...new Set(paces.map(({ step }) => step))]).toEqual(["write", "seal"]);
  for (const step of ["write", "seal"]) {
    const own = paces.filter((pace) => pace.step === step);
    expect(own.map(({ done }) => done)).toEqual([0, 2000, 4000, 6000, 8000, 10_000].slice(0, own.length));
    expect(own.length).toBeGreaterThan(4);
    expect(new Set(own.map(({ of }) => of))).toEqual(new Set([10_000]));
  }
  const later = manyRows(5000);
  const changed = rowsOf({ segment: later.segment.map((row) => ({ ...row, gainMm: 51.5 })) });
  const more: CommitPace[] = [];
  await registry.commitLines(pieces(whole(changed)), { ...inThread, onPace: (pace) => more.push(pace) });
  expect([...new Set(more.map(({ step }) => step))]).toEqual(["write", "check", "seal"]);
});

test("a registry with a check of its caller's own commits in its caller's thread", async () => {
  let checked = 0;
  const registry = await fresh((rows) => {
    checked += rows.person.length;
    return noCheck(rows);
  });
  expect(await registry.commitLines(pieces(whole(manyRows(10))), inThread)).toMatchObject({ batch: 1 });
  expect(checked).toBe(10);
});
