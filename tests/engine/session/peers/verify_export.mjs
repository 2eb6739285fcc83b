// SPDX-License-Identifier: Apache-2.0
// Verifies with npm's jose what "hingepin records export" wrote: each seal by a key of the yard's list, each file
// named by the hash of its payload, each list of signers by the yard's key that it names.
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
let count = 0;

for (const part of ["statements", "signers"]) {
  for (const file of readdirSync(join(folder, part))) {
    const sealed = JSON.parse(readFileSync(join(folder, part, file), "utf8"));
    for (const signature of sealed.signatures) {
      const { kid } = JSON.parse(Buffer.from(signature.protected, "base64url"));
      const jwk = keys.find((key) => key.kid === kid);
      if (!jwk) throw new Error(`${file}: no key ${kid}`);
      if ((await jose.calculateJwkThumbprint(jwk, "sha256")) !== kid) throw new Error(`thumbprint of ${kid}`);
      const key = await jose.importJWK(jwk, "EdDSA");
      const one = { payload: sealed.payload, signatures: [signature] };
      const { payload } = await jose.generalVerify(one, key, { algorithms: ["EdDSA"] });
      if (createHash("sha256").update(payload).digest("hex") + ".jws.json" !== file) throw new Error(`name of ${file}`);
      // A payload that differs in one byte must not verify.
      const bytes = Buffer.from(payload);
      bytes[bytes.length >> 1] ^= 1;
      const altered = { payload: bytes.toString("base64url"), signatures: [signature] };
      const holds = await jose.generalVerify(altered, key, { algorithms: ["EdDSA"] }).then(() => true, () => false);
      if (holds) throw new Error(`${file} verifies though altered`);
      count += 1;
    }
  }
}
if (count < 2) throw new Error("there is nothing to verify");
console.log(`verified ${count}`);
