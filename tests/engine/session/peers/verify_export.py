# SPDX-License-Identifier: Apache-2.0
"""The same as verify_export.mjs with python3-jwcrypto, which shares no code with npm's jose."""
import hashlib
import json
import pathlib
import sys

try:
    from jwcrypto import jwk, jws
    from jwcrypto.common import base64url_decode, base64url_encode
except ImportError:
    print("skipped: jwcrypto is not installed (Debian: python3-jwcrypto)")
    sys.exit(77)


def verified(payload, signature, keys):
    kid = json.loads(base64url_decode(signature["protected"]))["kid"]
    sealed = jws.JWS()
    sealed.allowed_algs = ["EdDSA"]
    sealed.deserialize(json.dumps({"payload": payload, "signatures": [signature]}), keys[kid])
    return sealed.payload


def holds(payload, signature, keys):
    try:
        verified(payload, signature, keys)
    except (jws.InvalidJWSSignature, jws.InvalidJWSObject, KeyError, TypeError, ValueError):
        return False
    return True


def flipped(text, bit):
    data = bytearray(base64url_decode(text))
    at = bit % (8 * len(data))
    data[at >> 3] ^= 1 << (at & 7)
    return base64url_encode(bytes(data))


def main(folder):
    keys = {}
    for each in json.loads((folder / "keys.jwks.json").read_text(encoding="utf-8"))["keys"]:
        keys[each["kid"]] = jwk.JWK(**each)
        assert keys[each["kid"]].thumbprint() == each["kid"], "thumbprint of " + each["kid"]
    seals = refused = 0
    for path in sorted([*(folder / "statements").iterdir(), *(folder / "signers").iterdir()]):
        sealed = json.loads(path.read_text(encoding="utf-8"))
        for signature in sealed["signatures"]:
            payload = verified(sealed["payload"], signature, keys)
            assert hashlib.sha256(payload).hexdigest() + ".jws.json" == path.name, "name of " + path.name
            seals += 1
            bit = 3
            while bit < 40000:
                for its_payload, its_signature in (
                    (flipped(sealed["payload"], bit), signature),
                    (sealed["payload"], {**signature, "protected": flipped(signature["protected"], bit)}),
                    (sealed["payload"], {**signature, "signature": flipped(signature["signature"], bit)}),
                ):
                    assert not holds(its_payload, its_signature, keys), f"{path.name} verifies with bit {bit} flipped"
                    refused += 1
                bit = 2 * bit + 1
    assert seals > 1, "there is nothing to verify"
    print(f"jwcrypto verified {seals} seals and refused {refused} altered ones")


if __name__ == "__main__":
    main(pathlib.Path(sys.argv[1]))
