# SPDX-License-Identifier: Apache-2.0
"""Verifies our records with python3-jwcrypto, seals some with it, and has ours verify those."""
import hashlib
import json
import pathlib
import subprocess
import sys
import tempfile

try:
    from jwcrypto import jwk, jws
    from jwcrypto.common import base64url_encode
except ImportError:
    print("skipped: jwcrypto is not installed (Debian: python3-jwcrypto)")
    sys.exit(77)


def canonical(value):
    """The canonical form of what is used here: integers, and keys in ASCII."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


def verified(text, key):
    sealed = jws.JWS()
    sealed.allowed_algs = ["EdDSA"]
    try:
        sealed.deserialize(text, jwk.JWK(**key))
    except jws.InvalidJWSSignature:
        return None
    return sealed


def main(peer, folder):
    failures = 0
    subprocess.run([peer, "make", str(folder)], check=True)
    ours = json.loads((folder / "ours.json").read_text(encoding="utf-8"))
    for entry in ours:
        text = (folder / entry["file"]).read_text(encoding="utf-8")
        for key in entry["keys"]:
            if jwk.JWK(**key).thumbprint() != key["kid"]:
                failures += 1
                print("wrong: thumbprint for", entry["file"])
            # A list with two seals is looked at one seal at a time: this peer wants all that it sees to hold.
            whole = json.loads(text)
            seals = whole["signatures"]
            if len(seals) > 1:
                seals = [seal for seal in seals if key["kid"] in str(header_of(seal))]
            one = verified(json.dumps({"payload": whole["payload"], "signatures": seals}), key)
            if (one is not None) != entry["holds"]:
                failures += 1
                print("wrong:", entry["file"], "expected", entry["holds"])
            if one is not None and canonical(json.loads(one.payload)).encode() != one.payload:
                failures += 1
                print("wrong:", entry["file"], "is not canonical")

    key = jwk.JWK.generate(kty="OKP", crv="Ed25519")
    kid, x = key.thumbprint(), json.loads(key.export_public())["x"]
    theirs = []

    def seal(name, finding, payload, header):
        sealed = jws.JWS(payload.encode())
        sealed.add_signature(key, protected=canonical(header))
        flat = json.loads(sealed.serialize(compact=False))
        whole = {"payload": flat.pop("payload"), "signatures": [flat]}
        (folder / name).write_text(canonical(whole), encoding="utf-8")
        theirs.append({"file": name, "finding": finding, "x": x})
        return whole

    header = {"alg": "EdDSA", "kid": kid, "typ": "hingepin-record"}
    for number in range(20):
        epoch = base64url_encode(hashlib.sha256(str(number).encode()).digest()[:16])
        record = {"chain": {"epoch": epoch, "installation": kid, "key": kid, "previous": None, "sequence": 1},
                  "content": {"demo": f"Schaufel {number} €"}, "format": "hingepin-record/1", "role": "technician",
                  "sealed_utc_ms": 1780000000000}
        whole = seal(f"sound-{number}", "", canonical(record), header)
        seal(f"role-{number}", "record-wrong-role", canonical({**record, "role": "safety-lead"}), header)
        seal(f"blank-{number}", "record-malformed", json.dumps(record, sort_keys=True), header)
        seal(f"crowded-{number}", "record-malformed", canonical(record), {**header, "cty": "json"})
        payload = whole["payload"]
        other = "B" if payload[40 + number] == "A" else "A"
        whole["payload"] = payload[:40 + number] + other + payload[41 + number:]
        (folder / f"altered-{number}").write_text(canonical(whole), encoding="utf-8")
        theirs.append({"file": f"altered-{number}", "finding": "record-altered", "x": x})
    (folder / "theirs.json").write_text(canonical(theirs), encoding="utf-8")
    failures += subprocess.run([peer, "check", str(folder)], check=False).returncode
    print(f"{len(ours)} of ours judged by jwcrypto, {failures} failures")
    return 1 if failures else 0


def header_of(seal):
    from jwcrypto.common import base64url_decode
    return json.loads(base64url_decode(seal["protected"]))


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as scratch:
        sys.exit(main(sys.argv[1], pathlib.Path(scratch)))
