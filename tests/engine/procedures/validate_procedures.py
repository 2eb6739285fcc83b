# SPDX-License-Identifier: Apache-2.0
"""Holds the published schema against procedure files and against the reader, with python3-jsonschema.

usage: validate_procedures.py SOURCE_DIR JUDGE

Every procedure file must fit the schema. Then thousands of procedures spoiled at random are given to the
validator and to JUDGE (judge_procedures.cpp): both must take and refuse the same ones, so that neither the
schema nor the reader is laxer than the other.
"""
import collections
import copy
import json
import os
import pathlib
import random
import re
import subprocess
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


def every_procedure():
    readme = (root / "engine/procedures/README.md").read_text()
    procedures = {"README.md": json.loads(re.search(r"```json\n(.*?)```", readme, re.S).group(1))}
    for folder in ("engine", "procedures", "translations", "tests/engine"):
        for path in sorted((root / folder).glob("**/*.json")):
            try:
                text = json.loads(path.read_text())
            except ValueError:
                continue
            if isinstance(text, dict) and text.get("format") == "hingepin-procedure/1":
                procedures[str(path.relative_to(root))] = text
    return procedures


def misfits(procedures):
    count = 0
    for name, procedure in procedures.items():
        for error in validator.iter_errors(procedure):
            count += 1
            print(f"{name}: {error.json_path}: {error.message[:200]}")
            for inner in error.context:
                print(f"    {inner.json_path}: {inner.message[:120]}")
    return count


def places(value, path=()):
    yield path
    if isinstance(value, dict):
        for key in value:
            yield from places(value[key], path + (key,))
    elif isinstance(value, list):
        for index in range(len(value)):
            yield from places(value[index], path + (index,))


def at(value, path):
    for token in path:
        value = value[token]
    return value


STRANGE = [None, True, False, 0, 1, 2, 1.5, -1, 1000001, "", "x", "X y", "a--b", "3 deg", " 1 m", "01 m", "1e3 m",
           "go-on", "repeat", "caution", "reading", "pose", "within-limits", "at-least", [], ["a"], ["a", "a"], {},
           {"entry": "a"}, {"low": "1 m"}]


def spoiled(base, keys, chance):
    procedure = copy.deepcopy(base)
    for _ in range(chance.choice([1, 1, 2])):
        paths = [path for path in places(procedure) if path]
        path = chance.choice(paths)
        parent = at(procedure, path[:-1])
        kind = chance.random()
        if kind < 0.35:
            del parent[path[-1]]
        elif kind < 0.75:
            other = chance.choice(STRANGE) if chance.random() < 0.7 else at(procedure, chance.choice(paths))
            parent[path[-1]] = copy.deepcopy(other)
        else:
            target = at(procedure, path)
            if isinstance(target, dict):
                target[chance.choice(keys)] = copy.deepcopy(chance.choice(STRANGE))
            elif isinstance(target, list):
                target.append(copy.deepcopy(chance.choice(target + STRANGE)))
    return procedure


def disagreements(procedures, count):
    chance = random.Random(20240611)
    bases = list(procedures.values())
    keys = sorted({token for base in bases for path in places(base) for token in path if isinstance(token, str)})
    keys += ["expires", "use", "approach", "detail", "count", "value", "then", "mark"]
    documents = [spoiled(chance.choice(bases), keys, chance) for _ in range(count)]
    lines = "".join(json.dumps(document) + "\n" for document in documents)
    judged = subprocess.run([sys.argv[2]], input=lines, capture_output=True, text=True, check=True).stdout.split("\n")
    seen = collections.Counter()
    wrong = 0
    for document, verdict in zip(documents, judged):
        fits = validator.is_valid(document)
        seen[fits] += 1
        if fits == (verdict == "taken"):
            continue
        wrong += 1
        print(f"the schema says {fits}, the reader says {verdict}")
        for error in validator.iter_errors(document):
            print(f"    {error.json_path}: {error.message[-300:]}")
    print(f"{count} spoiled procedures: {seen[True]} fit, {seen[False]} don't, {wrong} judged otherwise by the reader")
    # Both answers must come often, else the comparison shows nothing.
    return wrong + (min(seen[True], seen[False]) < count // 10)


def main():
    procedures = every_procedure()
    failures = misfits(procedures)
    print(f"{len(procedures)} procedure files, {failures} misfits")
    failures += disagreements(procedures, int(os.environ.get("SPOILED_PROCEDURES", "500")))
    return 1 if failures else 0


sys.exit(main())
