// SPDX-License-Identifier: Apache-2.0
// Verifies our records with npm's jose, seals some with it, and has ours verify those.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

let jose;
try {
  jose = await import("jose");
} catch {
  console.log(`skipped: npm's jose is not installed; run "npm ci" in ${import.meta.dirname ?? "the folder of this script"}`);
  process.exit(77);
}

const peer = process.argv[2];
const folder = mkdtempSync(join(tmpdir(), "records-"));
const text = (file) => readFileSync(join(folder, file), "utf8");
const encode = (string) => new TextEncoder().encode(string);
let failures = 0;
const expect = (holds, what) => {
  if (!holds) failures += 1, console.log(`wrong: ${what}`);
};

async function verified(sealed, jwk) {
  try {
    const key = await jose.importJWK(jwk, "EdDSA");
    return await jose.generalVerify(sealed, key, { algorithms: ["EdDSA"] });
  } catch (error) {
    if (error.code === "ERR_JWS_SIGNATURE_VERIFICATION_FAILED" || error.code === "ERR_JWS_INVALID") return null;
    throw error;
  }
}

// The canonical form of what is used here: integers, and keys in ASCII.
const canonical = (value) =>
  value === null || typeof value !== "object" ? JSON.stringify(value)
  : Array.isArray(value) ? `[${value.map(canonical).join(",")}]`
  : `{${Object.keys(value).sort().map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`).join(",")}}`;

try {
  execFileSync(peer, ["make", folder], { stdio: "inherit" });
  const ours = JSON.parse(text("ours.json"));
  for (const { file, holds, keys } of ours) {
    const sealed = JSON.parse(text(file));
    for (const jwk of keys) {
      expect((await jose.calculateJwkThumbprint(jwk, "sha256")) === jwk.kid, `thumbprint for ${file}`);
      const result = await verified(sealed, jwk);
      expect((result !== null) === holds, `${file}: expected ${holds}`);
      if (result === null) continue;
      expect(canonical(JSON.parse(new TextDecoder().decode(result.payload))) === new TextDecoder().decode(result.payload),
        `${file} is not canonical`);
      expect(ours.length > 40 && Object.keys(result.protectedHeader).join() === "alg,kid,typ", `header of ${file}`);
    }
  }

  const { publicKey, privateKey } = await jose.generateKeyPair("EdDSA", { crv: "Ed25519", extractable: true });
  const { x } = await jose.exportJWK(publicKey);
  const kid = await jose.calculateJwkThumbprint(await jose.exportJWK(publicKey), "sha256");
  const theirs = [];
  const seal = async (file, finding, payload, header) => {
    const sealed = await new jose.GeneralSign(encode(payload)).addSignature(privateKey).setProtectedHeader(header).sign();
    writeFileSync(join(folder, file), canonical(sealed));
    theirs.push({ file, finding, x });
    return sealed;
  };
  const header = { alg: "EdDSA", kid, typ: "hingepin-record" };
  for (let round = 0; round < 20; round += 1) {
    const epoch = createHash("sha256").update(`${round}`).digest().subarray(0, 16).toString("base64url");
    const chain = { epoch, installation: kid, key: kid, previous: null, sequence: 1 };
    const record = { chain, content: { demo: `Schaufel ${round} €` }, format: "hingepin-record/1", role: "technician",
      sealed_utc_ms: 1780000000000 };
    const sealed = await seal(`sound-${round}`, "", canonical(record), header);
    await seal(`role-${round}`, "record-wrong-role", canonical({ ...record, role: "safety-lead" }), header);
    await seal(`order-${round}`, "record-malformed", JSON.stringify({ sealed_utc_ms: 0, ...record }), header);
    await seal(`crowded-${round}`, "record-malformed", canonical(record), { ...header, cty: "json" });
    const other = sealed.payload[40 + round] === "A" ? "B" : "A";
    const altered = sealed.payload.slice(0, 40 + round) + other + sealed.payload.slice(41 + round);
    writeFileSync(join(folder, `altered-${round}`), canonical({ ...sealed, payload: altered }));
    theirs.push({ file: `altered-${round}`, finding: "record-altered", x });
  }
  writeFileSync(join(folder, "theirs.json"), canonical(theirs));
  execFileSync(peer, ["check", folder], { stdio: "inherit" });
  console.log(`${ours.length} of ours judged by jose, ${failures} wrongly`);
} finally {
  rmSync(folder, { recursive: true });
}
process.exit(failures === 0 ? 0 : 1);
