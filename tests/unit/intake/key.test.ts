import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tables } from "@/lib/codebook";
import {
  changePassphrase,
  keyIdOf,
  keyRing,
  makeRecoveryCode,
  makeUnitKey,
  normaliseLocalId,
  normaliseSurgeonName,
  openByPassphrase,
  openByRecoveryCode,
  openKey,
  readRecoveryCode,
  type SealedKey,
  sealKey,
  sealUnitKey,
  unitKeyOf,
  WrongSecretError,
} from "../../../lib/intake/key";
import { base32 } from "../../../lib/intake/key/base32";
import { fromBase64, toBase64 } from "../../../lib/intake/key/base64";
import { hmacSha256, importHmacKey } from "../../../lib/intake/key/hmac";
import { macUnder } from "../../../lib/intake/key/mac";
import { deriveBits } from "../../../lib/intake/key/passphrase";

const hex = (bytes: ArrayBuffer | Uint8Array) => Buffer.from(bytes as Uint8Array).toString("hex");
const bytes = (length: number, of: (at: number) => number) => Uint8Array.from({ length }, (_, at) => of(at));
const random = (length: number) => crypto.getRandomValues(new Uint8Array(length));
const countingKey = unitKeyOf(bytes(32, (at) => at));
// a test that is not about the cost of a guess needs no costly one
const quick = { iterations: 2, random };

describe("published vectors", () => {
  // RFC 4231 §4.2 and §4.3 (test cases 1 and 2)
  test.each([
    [bytes(20, () => 0x0b), "Hi There", "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"],
    [
      Uint8Array.from(Buffer.from("Jefe")),
      "what do ya want for nothing?",
      "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
    ],
  ])("RFC 4231, HMAC-SHA-256 of case %#", async (key, message, expected) => {
    expect(hex(await hmacSha256(await importHmacKey({ bytes: key }), message))).toBe(expected);
    expect(hex(macUnder({ bytes: key })(message))).toBe(expected);
  });

  test("many macs under one key are the platform's own", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ minLength: 1, maxLength: 100 }),
        fc.array(fc.string({ unit: "grapheme", maxLength: 200 }), { maxLength: 5 }),
        async (given, messages) => {
          const key = { bytes: Uint8Array.from(given) };
          const platform = await importHmacKey(key);
          const mac = macUnder(key);
          for (const message of messages) expect(hex(mac(message))).toBe(hex(await hmacSha256(platform, message)));
        },
      ),
    );
  });

  // RFC 7914 §11; the third, at the count that OWASP recommends, from Python's hashlib.pbkdf2_hmac
  test.each([
    [
      "passwd",
      "salt",
      1,
      64,
      "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783",
    ],
    [
      "Password",
      "NaCl",
      80_000,
      64,
      "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d",
    ],
    ["correct horse", "0123456789abcdef", 600_000, 32, "91828083f760ed60bb550e24f3e89aa29bbcb27c4219d034c4c4f03c2e6db9d9"],
  ])("PBKDF2-HMAC-SHA-256 of %s, %s, %i rounds", async (secret, salt, rounds, length, expected) => {
    expect(hex(await deriveBits(secret, Uint8Array.from(Buffer.from(salt)), rounds, length * 8))).toBe(expected);
  });
});

// Expected values by another tool (Python 3: hmac, hashlib, and integer arithmetic for base 32; the first was asked of openssl dgst too),
// key = bytes 00 to 1f, message = domain 0x1F unit 0x1F normalised id. Without the 0x1F the published values would be others.
describe("persons and surgeons by the key", () => {
  const ring = keyRing(countingKey);

  test.each([
    ["unit-1", "9434765870", "2Z8Z2FY6VGMPVV5NJQW056QCPZ", 32_933],
    ["unit-1", "943 476 5870", "2Z8Z2FY6VGMPVV5NJQW056QCPZ", 32_933],
    ["unit-1", " 943-476-5870 ", "2Z8Z2FY6VGMPVV5NJQW056QCPZ", 32_933],
    ["unit-1", "943\u2011476\u20115870", "2Z8Z2FY6VGMPVV5NJQW056QCPZ", 32_933],
    ["unit-1", "９４３４７６５８７０", "2Z8Z2FY6VGMPVV5NJQW056QCPZ", 32_933],
    ["unit-1", "9434765871", "3EMWSSCK4QP1PZKRRNR7PA1XZT", 27_138],
    ["unit-1", "00123", "NBRB467J9ZVGP946FHMR5A9ZCA", 4652],
    ["unit-1", "123", "N7RDC3CDE0J0TKSPFK86AEGD5Y", 3178],
    ["unit-1", "ab-00 12", "BG6MH8GXAPHECWPJAJHC9AM30N", 23_459],
    ["unit-2", "9434765870", "8QYSKPGKJ8SGQBY5YXF3YSP4YG", 3854],
    ["unit-2", "ab0012", "48AYSZ8E8JE5VD8JVC19A2JJGN", 19_136],
  ])("%s, %s", async (unit, localId, person, shiftDays) => {
    expect(await ring.pseudonym(unit, localId)).toBe(person);
    expect(await ring.shiftDays(unit, localId)).toBe(shiftDays);
  });

  test.each([
    ["Example, A. B.", "9CWMRQ244Y5VFCJ3GWFZTJY723"],
    ["EXAMPLE  a b", "9CWMRQ244Y5VFCJ3GWFZTJY723"],
    ["Éxample", "NBFJBMKA32FS3E0RXPR4QX2PGA"],
  ])("surgeon %s", async (name, code) => expect(await ring.surgeonCode("unit-1", name)).toBe(code));

  test("the key has the name that Python gives it", async () => expect(await keyIdOf(countingKey)).toBe("K5VA28726ZVJ"));

  test("many at once are the same as one by one, in their order, and progress is told to the end", async () => {
    const ids = Array.from({ length: 1300 }, (_, at) => `A${at % 700}`);
    const heard: number[] = [];
    const many = await ring.persons("unit-1", ids, (done) => heard.push(done));
    expect(many).toHaveLength(1300);
    for (const at of [0, 511, 512, 699, 700, 1299]) {
      const id = ids[at] ?? "";
      expect(many[at]).toEqual({ person: await ring.pseudonym("unit-1", id), shiftDays: await ring.shiftDays("unit-1", id) });
    }
    expect(new Set(many.map(({ person }) => person)).size).toBe(700);
    expect(heard.at(-1)).toBe(1300);
    expect(heard.length).toBeGreaterThan(1);
  });

  test("an id is computed once", async () => {
    const own = keyRing(countingKey);
    const [first, alike, spaced, other, again] = await own.persons("unit-1", ["A1", "a-1", "A 1", "B2", "A1"]);
    for (const same of [alike, spaced, again, (await own.persons("unit-1", ["A1"]))[0]]) expect(same).toBe(first);
    expect(other).not.toBe(first);
  });

  test("another key, another unit and another domain give other names", async () => {
    const other = keyRing(makeUnitKey(random));
    const names = [
      await ring.pseudonym("unit-1", "1234"),
      await ring.pseudonym("unit-2", "1234"),
      await ring.surgeonCode("unit-1", "1234"),
      await other.pseudonym("unit-1", "1234"),
    ];
    expect(new Set(names).size).toBe(4);
  });

  test("no name is the digest of the number without the key, whole or cut", async () => {
    const alphabet = /^[0-9A-HJKMNP-TV-Z]{26}$/;
    for (const id of ["9434765870", "9434765871", "00123", "AB0012"]) {
      const person = await ring.pseudonym("unit-1", id);
      expect(person).toMatch(alphabet);
      for (const method of ["md5", "sha1", "sha256"]) {
        for (const message of [id, `unit-1${id}`, `lengthbook/person/1\u001funit-1\u001f${id}`]) {
          const digest = createHash(method).update(message).digest();
          expect(person).not.toBe(base32(Uint8Array.from(Buffer.concat([digest, digest])), 26));
        }
      }
      expect(person).not.toContain(id);
    }
  });

  // 0 ≤ shift < 36 525; 2 000 ids spread over ten equal parts of it, each within six standard deviations of a tenth (binomial)
  test("shifts stay in range and spread over it", async () => {
    const people = await keyRing(countingKey).persons(
      "unit-1",
      Array.from({ length: 2000 }, (_, at) => `P${at}`),
    );
    const tenths = new Array<number>(10).fill(0);
    for (const { shiftDays } of people) {
      expect(Number.isInteger(shiftDays) && shiftDays >= 0 && shiftDays < 36_525).toBe(true);
      const tenth = Math.floor((shiftDays * 10) / 36_525);
      tenths[tenth] = (tenths[tenth] ?? 0) + 1;
    }
    for (const n of tenths) expect(Math.abs(n - 200)).toBeLessThan(6 * Math.sqrt(2000 * 0.1 * 0.9));
  });

  test.each([
    ["unit-1", ""],
    ["unit-1", " - \u200b"],
    ["", "1234"],
    ["unit\u001f1", "1234"],
  ])("unit %j and id %j are refused", async (unit, localId) => {
    await expect(ring.pseudonym(unit, localId)).rejects.toThrow(RangeError);
    await expect(ring.shiftDays(unit, localId)).rejects.toThrow(RangeError);
  });
  test("a surgeon without a letter is refused", async () => {
    await expect(ring.surgeonCode("unit-1", " -.- ")).rejects.toThrow(RangeError);
  });
});

describe("normal forms", () => {
  test.each([
    ["  00 12-3 ", "00123"],
    ["ab\u00a012\u2013x", "AB12X"],
    ["\ufeff12\u200b34", "1234"],
    ["ｒ１２", "R12"],
    ["12\u001f34", "1234"],
    ["12/34", "12/34"],
    ["\u2212\u2010", ""],
  ])("%j is %j", (typed, normal) => expect(normaliseLocalId(typed)).toBe(normal));

  test("what is normal stays so, and holds no separator, blank or dash", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const normal = normaliseLocalId(text);
        return normaliseLocalId(normal) === normal && !/[\s\p{Dash}]/u.test(normal) && !normal.includes("\u001f");
      }),
      { numRuns: 2000 },
    );
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => normaliseSurgeonName(normaliseSurgeonName(text)) === normaliseSurgeonName(text)),
    );
  });
});

describe("sealing", () => {
  // made by Python (hashlib.pbkdf2_hmac, 600 000 rounds; cryptography's AESGCM with "lengthbook/seal/1" as associated data)
  const sealedElsewhere: SealedKey = {
    iterations: 600_000,
    salt: "ZGVmZ2hpamtsbW5vcHFycw==",
    iv: "yMnKy8zNzs/Q0dLT",
    sealed: "j+uxBm3+MRBTEn4AmKd+DN+zEgn1NJ4WYWimAGPq+irDtTflxoAjoeP6axXthTGO",
  };

  test("a key sealed by another program opens", async () => {
    expect(hex((await openKey(sealedElsewhere, "an invented sentence")).bytes)).toBe(hex(countingKey.bytes));
  });

  test("what is sealed opens again with the same words, in either Unicode form, and with no others", async () => {
    const key = makeUnitKey(random);
    const sealed = await sealKey(key, "wörter für die Einheit", quick);
    expect(await openKey(sealed, "wörter für die Einheit".normalize("NFD"))).toEqual(key);
    for (const wrong of ["wörter für die einheit", "wörter für die Einheit ", "", "w"])
      await expect(openKey(sealed, wrong)).rejects.toThrow(WrongSecretError);
  });

  test("600 000 rounds, a 16-byte salt and a 12-byte iv unless told otherwise", async () => {
    const sealed = await sealKey(countingKey, "fifteen letters", { random });
    expect(sealed.iterations).toBe(600_000);
    expect(fromBase64(sealed.salt)).toHaveLength(16);
    expect(fromBase64(sealed.iv)).toHaveLength(12);
    expect(fromBase64(sealed.sealed)).toHaveLength(32 + 16);
    expect(await openKey(sealed, "fifteen letters")).toEqual(countingKey);
  });

  test("twice sealed is never twice the same, and shows nothing of the key", async () => {
    const [a, b] = [await sealKey(countingKey, "fifteen letters", quick), await sealKey(countingKey, "fifteen letters", quick)];
    for (const part of ["salt", "iv", "sealed"] as const) expect(a[part]).not.toBe(b[part]);
    expect(hex(fromBase64(a.sealed))).not.toContain(hex(countingKey.bytes).slice(0, 16));
  });

  test("one changed bit anywhere in the record and it does not open", async () => {
    const sealed = await sealKey(countingKey, "fifteen letters", quick);
    for (const part of ["salt", "iv", "sealed"] as const) {
      const damaged = fromBase64(sealed[part]);
      damaged[3] = (damaged[3] ?? 0) ^ 1;
      await expect(openKey({ ...sealed, [part]: toBase64(damaged) }, "fifteen letters")).rejects.toThrow(WrongSecretError);
    }
    await expect(openKey({ ...sealed, iterations: 3 }, "fifteen letters")).rejects.toThrow(WrongSecretError);
  });

  test.each([0, 1.5, -1, 1e9, Number.NaN])("%d rounds are refused", async (iterations) => {
    const sealed = await sealKey(countingKey, "fifteen letters", quick);
    await expect(openKey({ ...sealed, iterations }, "fifteen letters")).rejects.toThrow(RangeError);
    await expect(sealKey(countingKey, "fifteen letters", { random, iterations })).rejects.toThrow(RangeError);
  });

  test("a passphrase of fourteen characters is refused, however many bytes it has, and not repeated", async () => {
    for (const short of ["fourteen signs", "🦴".repeat(14), ""]) {
      const refused = sealKey(countingKey, short, quick);
      await expect(refused).rejects.toThrow(`sealKey requires a passphrase of at least 15 characters, received ${[...short].length}`);
    }
    expect(await openKey(await sealKey(countingKey, "🦴".repeat(15), quick), "🦴".repeat(15))).toEqual(countingKey);
  });

  test("a key is 32 bytes of the source given", () => {
    expect(makeUnitKey((length) => bytes(length, (at) => at))).toEqual(countingKey);
    expect(() => makeUnitKey(() => new Uint8Array(31))).toThrow(RangeError);
    expect(() => fromBase64("not base64!")).toThrow(RangeError);
  });
});

describe("recovery", () => {
  test("a code is six groups of five, without letters that are misread", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 19, maxLength: 19 }), (source) => {
        const code = makeRecoveryCode((length) => Uint8Array.from(source.slice(0, length)));
        return /^([0-9A-HJKMNP-TV-Z]{5}-){5}[0-9A-HJKMNP-TV-Z]{5}$/.test(code) && readRecoveryCode(code) === code;
      }),
    );
    expect(new Set(Array.from({ length: 50 }, () => makeRecoveryCode(random))).size).toBe(50);
  });

  test("all 150 bits are the source's", () => {
    const codes = Array.from({ length: 150 }, (_, bit) =>
      makeRecoveryCode((n) => bytes(n, (at) => (at === bit >> 3 ? 128 >> (bit & 7) : 0))),
    );
    expect(new Set(codes).size).toBe(150);
    expect(codes).not.toContain("00000-00000-00000-00000-00000-00000");
  });

  test.each([
    "",
    "12345",
    "00111-22222-33333-44444-55555-6666",
    "00111-22222-33333-44444-55555-6666!",
    "00111-22222-33333-44444-55555-66666-7",
  ])("%j is no recovery code", (typed) =>
    expect(() => readRecoveryCode(typed)).toThrow(/^readRecoveryCode requires 30 letters and digits, received \d+$/),
  );

  test("either secret opens the record; a new passphrase ends the old one and leaves code and key as they were", async () => {
    const key = makeUnitKey(random);
    const recoveryCode = makeRecoveryCode(random);
    const record = await sealUnitKey(key, { passphrase: "the first passphrase", recoveryCode, ...quick });
    const changed = await changePassphrase(record, key, { passphrase: "the second passphrase", ...quick });
    expect(await openByPassphrase(record, "the first passphrase")).toEqual(key);
    expect(await openByRecoveryCode(record, ` ${recoveryCode.toLowerCase().replaceAll("-", " ")} `)).toEqual(key);
    expect(await openByPassphrase(changed, "the second passphrase")).toEqual(key);
    expect(await openByRecoveryCode(changed, recoveryCode)).toEqual(key);
    await expect(openByPassphrase(changed, "the first passphrase")).rejects.toThrow(WrongSecretError);
    await expect(openByRecoveryCode(record, makeRecoveryCode(random))).rejects.toThrow(WrongSecretError);
    expect(JSON.stringify(record)).not.toContain(recoveryCode.slice(0, 5));
  });

  test("a record put together from two keys, and a change with another key, are refused", async () => {
    const [mine, other] = [makeUnitKey(random), makeUnitKey(random)];
    const recoveryCode = makeRecoveryCode(random);
    const record = await sealUnitKey(mine, { passphrase: "the first passphrase", recoveryCode, ...quick });
    const mixed = { ...record, byPassphrase: await sealKey(other, "the first passphrase", quick) };
    await expect(openByPassphrase(mixed, "the first passphrase")).rejects.toThrow(/requires key/);
    await expect(changePassphrase(record, other, { passphrase: "the second passphrase", ...quick })).rejects.toThrow(/requires key/);
  });
});

test("where the platform has no cryptography, the message says where it has", async () => {
  const held = Object.getOwnPropertyDescriptor(globalThis, "crypto");
  Object.defineProperty(globalThis, "crypto", { value: {}, configurable: true });
  try {
    await expect(
      sealKey(countingKey, "a passphrase of the tests", { iterations: 2, random: (length) => new Uint8Array(length) }),
    ).rejects.toThrow(/localhost and https only/);
  } finally {
    if (held !== undefined) Object.defineProperty(globalThis, "crypto", held);
  }
});

test("the codebook's keyed fields are what the ring makes", () => {
  expect(tables.person.fields.person.kind).toBe("keyed");
  expect(
    base32(
      bytes(32, () => 255),
      26,
    ),
  ).toBe("Z".repeat(26));
});
