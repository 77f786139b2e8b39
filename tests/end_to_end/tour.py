#!/usr/bin/env python3
"""Runs the tour of README.md and compares every line of output.
usage: tour.py README PROGRAM-FOLDER SOURCE-FOLDER [--write]
In ```console blocks a line that begins with '$ ' is a command, the lines below it are its output.
--write puts the real outputs into the README instead of comparing."""
import os
import re
import subprocess
import sys
import tempfile

readme, programs, source = sys.argv[1:4]
write = sys.argv[4:] == ["--write"]
text = open(readme, encoding="utf-8").read()
blocks = re.findall(r"```console\n(.*?)```", text, re.S)

commands = []  # (command, expected output)
for block in blocks:
    for line in block.splitlines():
        if line.startswith("$ "):
            commands.append([line[2:], []])
        else:
            commands[-1][1].append(line)
if len(commands) < 10:
    sys.exit(f"{readme}: only {len(commands)} commands were found")


def run_all(folder):
    """All commands in one shell, as a reader would type them; the outputs with marks between."""
    os.symlink(os.path.join(source, "sample_library"), os.path.join(folder, "sample_library"))
    os.makedirs(os.path.join(folder, "build"))
    os.symlink(programs, os.path.join(folder, "build", "bin"))
    script = "".join(f"{command}\necho @@@ $?\n" for command, _ in commands)
    shell = subprocess.run(["bash"], input=script, capture_output=True, text=True, cwd=folder,
                           env={**os.environ, "NO_COLOR": "1"})
    news = re.sub(r"^A new library was made: .*\n", "", shell.stderr)  # Where, is another place each time.
    if news:
        sys.exit(f"the tour wrote to standard error:\n{news}")
    return re.split(r"^@@@ (\d+)\n", shell.stdout, flags=re.M)


with tempfile.TemporaryDirectory() as folder:
    parts = run_all(folder)
outputs = parts[0:-1:2]
if len(outputs) != len(commands):
    sys.exit(f"{len(commands)} commands gave {len(outputs)} outputs")

if write:
    new_blocks = iter(outputs)
    lines = []
    in_block = False
    for line in text.splitlines():
        if line.startswith("```"):
            in_block = line == "```console"
        if in_block and not line.startswith(("$ ", "```")):
            continue
        lines.append(line)
        if in_block and line.startswith("$ "):
            lines += next(new_blocks).splitlines()
    open(readme, "w", encoding="utf-8").write("\n".join(lines) + "\n")
    sys.exit(0)

# When a texture was added differs from run to run.
moment = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ")
faults = 0
for (command, expected), output in zip(commands, outputs):
    got = moment.sub("(moment)", output).splitlines()
    wanted = [moment.sub("(moment)", line) for line in expected]
    if got != wanted:
        faults += 1
        print(f"$ {command}\nREADME says:\n" + "\n".join(wanted) + "\nit printed:\n" + "\n".join(got))
print(f"{len(commands)} commands, {faults} with other output")
sys.exit(faults > 0)
