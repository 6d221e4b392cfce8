"""The JSON Schemas against the writers and readers, judged by a general JSON Schema library (python3-jsonschema).

usage: schema_test.py SOURCE FILE_SAMPLES
  Every file that is written, every golden file and every example brief validates. Every spoiled file of
  tests/golden/file/refused.txt that is marked "schema" is refused by its schema too. And files spoiled one place at a
  time: what a schema refuses no reader takes, and what a reader refuses for its structure the schema refuses.
"""
import copy
import json
import pathlib
import re
import subprocess
import sys
import tempfile

import jsonschema

KINDS = ("grid", "strip", "panel", "machine", "plan", "certificate", "yarn", "article", "article-choices", "brief")
# Codes for what a schema can say. It cannot compare two places, know a key that stood twice, or parse a broken text.
STRUCTURE = {"missing_field", "unknown_field", "wrong_format", "newer_version", "bad_letter", "bad_value"}


def validators(source):
    made = {}
    for kind in KINDS:
        schema = json.loads((source / f"src/file/schema/{kind}.schema.json").read_text(encoding="utf-8"))
        validator = jsonschema.validators.validator_for(schema)
        assert validator is jsonschema.Draft202012Validator, kind
        validator.check_schema(schema)
        made[kind] = validator(schema)
    return made


def refused_entries(source):
    """(kind, code, words, reason, text) of each entry; the file says how it is written."""
    entries = []
    for line in (source / "tests/golden/file/refused.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("@ "):
            words, reason = line[2:].split(": ", 1)
            kind, code, *rest = words.split()
            entries.append([kind, code, rest, reason, ""])
        elif entries:
            entries[-1][4] += line + "\n"
    return entries


def places(value, path=()):
    """Every value within, with the keys that lead to it."""
    yield path
    members = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, member in members:
        yield from places(member, path + (key,))


def kind_of(name):
    """Of a sample: "yarn" of "yarn-3.json"."""
    return re.match(r"[a-z-]+?(?=-\d)", name).group()


def at(document, path):
    for key in path:
        document = document[key]
    return document


def spoiled(document):
    """The document with one thing changed, for each thing that can be."""
    for path in places(document):
        value = at(document, path)
        if isinstance(value, dict):
            copied = copy.deepcopy(document)
            at(copied, path)["unheard_of"] = 1
            yield copied
        if not path:
            continue
        others = [None, True, -1, 0, 0.5, 1 << 40, 1 << 70, "", "k", "L1", [], {}]
        for other in others:
            if type(other) is type(value) and other == value:
                continue
            copied = copy.deepcopy(document)
            at(copied, path[:-1])[path[-1]] = other
            yield copied
        copied = copy.deepcopy(document)
        del at(copied, path[:-1])[path[-1]]
        yield copied


def read_verdicts(program, folder):
    output = subprocess.run([program, "read", folder], check=True, capture_output=True, text=True).stdout
    return {line.split(" ", 2)[0]: line.split(" ")[1:] for line in output.splitlines()}


def main():
    source, program = pathlib.Path(sys.argv[1]), sys.argv[2]
    schemas = validators(source)
    failures = []
    counts = {}

    def count(what):
        counts[what] = counts.get(what, 0) + 1

    def wants_valid(kind, document, name):
        count("valid")
        error = jsonschema.exceptions.best_match(schemas[kind].iter_errors(document))
        if error is not None:
            failures.append(f"{name}: {error.json_path}: {error.message[:200]}")

    seeds = {}
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([program, "write", folder], check=True)
        written = sorted(pathlib.Path(folder).glob("*.json"))
        for path in written:
            kind = kind_of(path.name)
            document = json.loads(path.read_text(encoding="utf-8"))
            wants_valid(kind, document, path.name)
            if len(path.read_bytes()) < 3000:
                seeds.setdefault(kind, []).append(document)
        if {kind_of(path.name) for path in written} != set(KINDS):
            failures.append("file_samples did not write every kind")

    known = sorted((source / "tests/golden/file").glob("*.json")) + sorted((source / "examples").glob("**/*.json"))
    for path in known:
        document = json.loads(path.read_text(encoding="utf-8"))
        form = document.get("format", "") if isinstance(document, dict) else ""
        if form.removeprefix("latchwork-") in KINDS and form.startswith("latchwork-"):
            kind = form.removeprefix("latchwork-")
            count("golden and example files")
            wants_valid(kind, document, path.name)
            if "parts" in document or kind == "machine":
                seeds.setdefault(kind, []).insert(0, document)

    for kind, code, words, reason, text in refused_entries(source):
        if "schema" not in words and "beyond" not in words:
            failures.append(f"refused.txt: {reason}: neither schema nor beyond")
        if "schema" in words:
            count("refused by both")
            if schemas[kind].is_valid(json.loads(text)):
                failures.append(f"refused.txt: {kind}: {reason}: the schema takes it")
            if code not in STRUCTURE | {"bad_argument"}:  # the latter where a type's own check looks at ranges too
                failures.append(f"refused.txt: {kind}: {reason}: {code} is not for a schema")

    with tempfile.TemporaryDirectory() as folder:
        documents = {}
        for kind in KINDS:
            for i, seed in enumerate(seeds[kind][:4]):
                ways = list(spoiled(seed))
                for j, document in enumerate(ways[:: 1 + len(ways) // 700]):
                    name = f"{kind}-{i}-{j}.json"
                    documents[name] = document
                    (pathlib.Path(folder) / name).write_text(json.dumps(document), encoding="utf-8")
        for name, verdict in read_verdicts(program, folder).items():
            kind = kind_of(name)
            valid = schemas[kind].is_valid(documents[name])
            code = verdict[0]
            count("spoiled, read" if code == "read" else "spoiled, refused")
            if code == "read" and not valid:
                failures.append(f"{name}: read, but the schema refuses {json.dumps(documents[name])[:600]}")
            # Which axis lies on the panel depends on its width, which a schema cannot know.
            if code in STRUCTURE and valid and verdict[1:] != ["axis_half_columns"]:
                failures.append(f"{name}: {' '.join(verdict)}, but the schema takes {json.dumps(documents[name])[:600]}")

    for failure in failures[:20]:
        print(failure)
    print(", ".join(f"{number} {what}" for what, number in sorted(counts.items())), f"; {len(failures)} failures")
    return 1 if failures else 0


sys.exit(main())
