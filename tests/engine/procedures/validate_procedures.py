# SPDX-License-Identifier: Apache-2.0
"""Validates every procedure file against the published schema with python3-jsonschema.

Also checks that the validator refuses files that are wrong, so that an empty schema would not pass.
"""
import copy
import json
import pathlib
import re
import sys

try:
    from jsonschema import Draft202012Validator
except ImportError:
    print("python3-jsonschema is missing")
    sys.exit(77)

root = pathlib.Path(sys.argv[1])
schema = json.loads((root / "engine/procedures/procedure.schema.json").read_text())
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)

readme = (root / "engine/procedures/README.md").read_text()
example = json.loads(re.search(r"```json\n(.*?)```", readme, re.S).group(1))
procedures = {"README.md": example}
for path in sorted(root.glob("engine/**/*.json")) + sorted(root.glob("procedures/**/*.json")) + sorted(
    root.glob("tests/engine/procedures/files/*.json")
):
    text = json.loads(path.read_text())
    if isinstance(text, dict) and text.get("format") == "hingepin-procedure/1":
        procedures[str(path.relative_to(root))] = text

failures = 0
for name, procedure in procedures.items():
    for error in validator.iter_errors(procedure):
        failures += 1
        print(f"{name}: {error.json_path}: {error.message[:200]}")
        for inner in error.context:
            print(f"    {inner.json_path}: {inner.message[:120]}")

wrong = {
    "unknown key": lambda p: p.update(extra=1),
    "unknown key in a step": lambda p: p["steps"][1].update(extra=1),
    "key of another kind": lambda p: p["steps"][0].update(unit="kg"),
    "prose for a code": lambda p: p.update(title="A proof."),
    "mark without going on": lambda p: p.update(on_failure={"do": "repeat", "mark": "m"}),
    "no cautions": lambda p: p.pop("cautions"),
    "number for a quantity": lambda p: p["entries"][1].update(default=40),
}
for name, spoil in wrong.items():
    spoiled = copy.deepcopy(example)
    spoil(spoiled)
    if validator.is_valid(spoiled):
        failures += 1
        print(f"the schema takes a file with: {name}")

print(f"{len(procedures)} procedures, {failures} failures")
sys.exit(1 if failures else 0)
