"""What the tests of this folder share: the real program with a library of its own."""
import json
import os
import subprocess
import sys
import tempfile

program = sys.argv[1]
folder = tempfile.TemporaryDirectory()
library = os.path.join(folder.name, "library.db")


def place(name):
    """A path in the test's folder."""
    return os.path.join(folder.name, name)


def pantile(*words, expect=0, stdin=""):
    """Runs a command with --json and gives its answer; ends the test on another exit code."""
    run = subprocess.run([program, "--library", library, "--json", *words], input=stdin,
                         capture_output=True, text=True)
    if run.returncode != expect:
        sys.exit(f"{' '.join(words)}: exit code {run.returncode}, not {expect}\n{run.stdout}{run.stderr}")
    return json.loads(run.stdout)


def check(condition, sentence):
    """Ends the test unless what the sentence says holds."""
    if not condition:
        sys.exit("wrong: " + sentence)
