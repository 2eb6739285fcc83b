// SPDX-License-Identifier: Apache-2.0
// Verifies with npm's jose what "hingepin records export" wrote: each seal by a key of the yard's list, each file
// named by the hash of its payload. Then flips bits of payload, header and signature: none of that may verify.
import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";

let jose;
try {
  jose = await import("jose");
} catch {
  console.log("skipped: npm's jose is not installed; run \"npm ci\" in the folder of this script");
  process.exit(77);
}

const folder = process.argv[2];
const { keys } = JSON.parse(readFileSync(join(folder, "keys.jwks.json"), "utf8"));
const imported = new Map();
for (const jwk of keys) {
  if ((await jose.calculateJwkThumbprint(jwk, "sha256")) !== jwk.kid) throw new Error(`thumbprint of ${jwk.kid}`);
  imported.set(jwk.kid, await jose.importJWK(jwk, "EdDSA"));
}

async function verified(payload, signature) {
  const { kid } = JSON.parse(Buffer.from(signature.protected, "base64url"));
  if (!imported.has(kid)) throw new Error(`no key ${kid}`);
  const one = { payload, signatures: [signature] };
  return (await jose.generalVerify(one, imported.get(kid), { algorithms: ["EdDSA"] })).payload;
}

const flipped = (text, bit) => {
  const bytes = Buffer.from(text, "base64url");
  const at = bit % (8 * bytes.length);
  bytes[at >> 3] ^= 1 << (at & 7);
  return bytes.toString("base64url");
};

let seals = 0;
let refused = 0;
for (const part of ["statements", "signers"]) {
  for (const file of readdirSync(join(folder, part))) {
    const { payload, signatures } = JSON.parse(readFileSync(join(folder, part, file), "utf8"));
    for (const signature of signatures) {
      const bytes = await verified(payload, signature);
      if (createHash("sha256").update(bytes).digest("hex") + ".jws.json" !== file) throw new Error(`name of ${file}`);
      seals += 1;
      for (let bit = 3; bit < 40000; bit = 2 * bit + 1) {
        const altered = [
          [flipped(payload, bit), signature],
          [payload, { ...signature, protected: flipped(signature.protected, bit) }],
          [payload, { ...signature, signature: flipped(signature.signature, bit) }],
        ];
        for (const [its_payload, its_signature] of altered) {
          if (await verified(its_payload, its_signature).then(() => true, () => false)) {
            throw new Error(`${file} verifies though bit ${bit} was flipped`);
          }
          refused += 1;
        }
      }
    }
  }
}
if (seals < 2) throw new Error("there is nothing to verify");
console.log(`jose verified ${seals} seals and refused ${refused} altered ones`);
