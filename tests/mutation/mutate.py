"""Tries faults on the built copy of the tree; tests/mutation/run starts it.
usage: mutate.py FOLDER [COUNT] [SEED] | FOLDER --again"""
import hashlib
import json
import os
import pathlib
import random
import re
import resource
import shlex
import signal
import subprocess
import sys
import time

from faults import faults

# The programs whose tests are asked about a fault of each layer, the nearest first.
PROGRAMS = {
    "core": ["core", "codec", "picture", "drawing", "board", "catalogue", "tasks", "outside"],
    "codec": ["codec", "board", "catalogue", "tasks"],
    "drawing": ["drawing", "board", "tasks", "player"],
    "board": ["board", "player", "tasks"],
}
FOLDER = pathlib.Path(sys.argv[1])
TREE, BUILD, TRIAL = FOLDER / "tree", FOLDER / "build", FOLDER / "trial"
RESULTS = FOLDER / "results.jsonl"
MEMORY = 3 << 30


def output_of(*words):
    return subprocess.run(words, cwd=BUILD, capture_output=True, text=True, check=True).stdout


class Built:
    """How the files are compiled and the programs linked, and how long each takes as it is."""

    def __init__(self):
        entries = json.loads((BUILD / "compile_commands.json").read_text())
        self.compile = {entry["file"]: entry["command"] for entry in entries}
        self.link, self.seconds = {}, {}
        for name in sorted({name for names in PROGRAMS.values() for name in names}):
            last = output_of("ninja", "-t", "commands", f"bin/{name}_tests").strip().splitlines()[-1]
            self.link[name] = next(part for part in last.split(" && ") if f"-o bin/{name}_tests" in part)
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            if not self.passes(name, BUILD / "bin" / f"{name}_tests", "*", 600)[0]:
                sys.exit(f"{name}_tests fails without a fault")
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            self.seconds[name] = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime

    def object_of(self, path, text, name):
        """Compiles `text` in the place of the tree's file `path`; nothing if it does not compile."""
        source = TRIAL / path.name
        source.write_text(text)
        target = TRIAL / name
        words = shlex.split(self.compile[str(TREE / path)])
        words[words.index("-o") + 1] = str(target)
        words[words.index("-c") + 1] = str(source)
        words = [word for word in words if word != "-Werror"] + ["-w"]
        done = subprocess.run(words, cwd=BUILD, capture_output=True, check=False)
        return target if done.returncode == 0 else None

    def linked(self, name, changed):
        """The test program with `changed` in front of the libraries, whose own file then stays out; nothing
        if the fault took away what others need, so that it does not link."""
        program = TRIAL / f"{name}_tests"
        words = shlex.split(self.link[name].replace(f"-o bin/{name}_tests", f"{changed} -o {program}"))
        if words[0] == ":":
            words = words[2:]
        done = subprocess.run(words, cwd=BUILD, check=False, capture_output=True)
        return program if done.returncode == 0 else None

    def passes(self, name, program, tests, seconds):
        """Whether all passes, and else the test that failed, or how the program ended."""
        def limit():
            os.setsid()
            resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 1))
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        run = subprocess.Popen([program, "--gtest_fail_fast", f"--gtest_filter={tests}"], cwd=TRIAL,
                               stdout=subprocess.PIPE, stderr=subprocess.STDOUT, preexec_fn=limit)
        try:
            output = run.communicate(timeout=20 * seconds)[0].decode(errors="replace")
        except subprocess.TimeoutExpired:
            os.killpg(run.pid, signal.SIGKILL)
            run.communicate()
            return False, f"{name}: no end"
        if run.returncode == 0:
            return True, None
        failed = re.findall(r"^\[  FAILED  \] (\S+?),? ", output, re.M)
        started = re.findall(r"^\[ RUN      \] (\S+)", output, re.M)
        end = "" if run.returncode > 0 else " (" + signal.Signals(-run.returncode).name + ")"
        return False, f"{name}: {(failed[:1] or started[-1:] or ['start'])[0]}{end}"


def nearest_tests(layer, path):
    """A filter for the tests of the file of the same name."""
    test = TREE / "tests" / layer / f"{path.stem}_test.cpp"
    if not test.exists():
        return None
    suites = set(re.findall(r"^TEST(?:_[FP])?\((\w+),", test.read_text(), re.M))
    return ":".join(form for suite in sorted(suites) for form in (f"{suite}.*", f"*/{suite}.*"))


def try_fault(built, layer, path, changed):
    """The test that catches the fault, or 'no code' if it does not link; nothing if it survives."""
    for name in PROGRAMS[layer]:
        program = built.linked(name, changed)
        if not program:
            return "no code"
        seconds = int(2 * built.seconds[name]) + 3
        nearest = nearest_tests(layer, path) if name == layer else None
        for tests in filter(None, [nearest, "*"]):
            passed, catcher = built.passes(name, program, tests, seconds)
            if not passed:
                return catcher
    return None


def every_fault():
    """kind -> [(path, begin, end, replacement)] over the layers."""
    kinds = {}
    for layer in PROGRAMS:
        for path in sorted((TREE / "src" / layer).glob("*.cpp")):
            for kind, begin, end, new in faults(path.read_text()):
                kinds.setdefault(kind, []).append((path.relative_to(TREE), begin, end, new))
    return kinds


def draws(seed):
    """Faults without end: each kind in its turn, its place by chance, none twice."""
    chance = random.Random(seed)
    kinds = every_fault()
    for places in kinds.values():
        chance.shuffle(places)
    while True:
        for kind in list(kinds):
            if kinds[kind]:
                yield kind, *kinds[kind].pop()


def described(text, begin, end, new):
    first = text.rfind("\n", 0, begin) + 1
    last = text.find("\n", end)
    return {"line": text.count("\n", 0, begin) + 1, "was": text[first:last].strip(),
            "is": (text[first:begin] + new + text[end:last]).strip()}


def verdict_on(built, path, text, begin, end, new):
    """'no code', 'same code', 'survived', or the test that caught the fault."""
    for old in TRIAL.iterdir():
        if old.is_file():
            old.unlink()
    changed = built.object_of(path, text[:begin] + new + text[end:], "changed.o")
    if not changed:
        return "no code"
    plain = built.object_of(path, text, "plain.o")
    if hashlib.sha256(changed.read_bytes()).digest() == hashlib.sha256(plain.read_bytes()).digest():
        return "same code"
    return try_fault(built, path.parts[1], path, changed) or "survived"


def read_results():
    return [json.loads(line) for line in RESULTS.read_text().splitlines()] if RESULTS.exists() else []


def report(results):
    """Writes the survivors and tells the figures by layer and by kind."""
    tried = [one for one in results if one["verdict"] not in ("no code", "same code")]
    survivors = [one for one in tried if one["verdict"] == "survived"]
    with open(FOLDER / "survivors.txt", "w", encoding="utf-8") as out:
        for one in survivors:
            out.write(f"{one['number']} {one['file']}:{one['line']} {one['kind']}\n"
                      f"    - {one['was']}\n    + {one['is']}\n")
    for title, key in (("layer", lambda one: one["file"].split("/")[1]), ("kind", lambda one: one["kind"])):
        for value in sorted({key(one) for one in tried}):
            of_it = [one for one in tried if key(one) == value]
            left = sum(one["verdict"] == "survived" for one in of_it)
            print(f"{title} {value:12} {len(of_it):4} faults, {left:3} survived")
    print(f"{len(tried)} faults, {len(tried) - len(survivors)} caught; "
          f"{len(results) - len(tried)} drawn anew (no code or the same)")
    return len(survivors)


def run(count, seed):
    built, results = Built(), read_results()
    if results and results[0]["seed"] != seed:
        sys.exit(f"{RESULTS} is of seed {results[0]['seed']}: move it away first")
    tried = sum(one["verdict"] not in ("no code", "same code") for one in results)
    for number, (kind, path, begin, end, new) in enumerate(draws(seed)):
        if tried >= count:
            break
        if number < len(results):
            continue
        started = time.monotonic()
        text = (TREE / path).read_text()
        one = {"number": number, "seed": seed, "kind": kind, "file": str(path), "begin": begin, "end": end,
               "new": new} | described(text, begin, end, new)
        one["verdict"] = verdict_on(built, path, text, begin, end, new)
        one["seconds"] = round(time.monotonic() - started, 1)
        results.append(one)
        with open(RESULTS, "a", encoding="utf-8") as out:
            out.write(json.dumps(one) + "\n")
        tried += one["verdict"] not in ("no code", "same code")
        print(f"{tried}/{count} {number} {one['file']}:{one['line']} {kind}: {one['verdict']} "
              f"({one['seconds']} s)", flush=True)
    return report(results)


def again():
    """Survivors once more; the sources must be those that the faults were drawn from."""
    built, results = Built(), read_results()
    for one in results:
        if one["verdict"] != "survived":
            continue
        path = pathlib.Path(one["file"])
        text = (TREE / path).read_text()
        if described(text, one["begin"], one["end"], one["new"])["is"] != one["is"]:
            print(f"{one['number']} {path}: the file has changed since; left as it was")
            continue
        one["verdict"] = verdict_on(built, path, text, one["begin"], one["end"], one["new"])
        print(f"{one['number']} {path}:{one['line']}: {one['verdict']}", flush=True)
    RESULTS.write_text("".join(json.dumps(one) + "\n" for one in results))
    return report(results)


TRIAL.mkdir(parents=True, exist_ok=True)
if sys.argv[2:] == ["--again"]:
    left = again()
else:
    left = run(int(sys.argv[2]) if len(sys.argv) > 2 else 200, int(sys.argv[3]) if len(sys.argv) > 3 else 1)
sys.exit(0 if left == 0 else 1)
