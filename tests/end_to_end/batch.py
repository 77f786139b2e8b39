#!/usr/bin/env python3
"""A folder of pictures through the real program on a terminal of its own: the progress bar, Ctrl-C
in the middle, and the same command again.
usage: batch.py PANTILE [PICTURES]   12 pictures, or so many"""
import json
import os
import pty
import random
import re
import signal
import subprocess
import sys
import tempfile
import time

from needed import needed

needed("python3-pil", module="PIL")
from PIL import Image, ImageFilter

program = sys.argv[1]
count = int(sys.argv[2]) if len(sys.argv) > 2 else 12
folder = tempfile.TemporaryDirectory()
pictures = os.path.join(folder.name, "pictures")
OPTIONS = ["--dither", "floyd-steinberg", "--colours", "16"]


def check(condition, sentence):
    if not condition:
        sys.exit("wrong: " + sentence)


def pantile(library, *words):
    run = subprocess.run([program, "--library", os.path.join(folder.name, library), "--json", *words],
                         capture_output=True, text=True)
    check(run.returncode == 0, f"{' '.join(words)} ends with {run.returncode}: {run.stdout}{run.stderr}")
    return json.loads(run.stdout)


def textures(library):
    return {row["title"]: row["id"] for row in pantile(library, "find", "--limit", "100000")["textures"]}


def cells(library, identity):
    shown = pantile(library, "show", str(identity))
    return shown["palette"], shown["cells"]


# Pebbles in soft light, of a fixed seed.
chance = random.Random(20)
os.mkdir(pictures)
for i in range(count):
    small = Image.frombytes("RGB", (16, 12), chance.randbytes(16 * 12 * 3))
    soft = small.resize((640, 480), Image.Resampling.BICUBIC).filter(ImageFilter.GaussianBlur(3))
    soft.save(os.path.join(pictures, f"pebbles {i:04}.png"), compress_level=1)

# All of it without a stop; on the way, the time that it takes.
begin = time.monotonic()
whole = pantile("whole.db", "add", pictures, *OPTIONS)
print(f"{count} pictures in {time.monotonic() - begin:.1f} s")
check(len(whole["added"]) == count and not whole["refused"], "all pictures are added")
check([t["title"] for t in whole["added"]] == [f"pebbles {i:04}" for i in range(count)], "they keep their order")

# The same on a terminal, stopped when the bar says that a quarter is done.
stop_at = count // 4
child, terminal = pty.fork()
if child == 0:
    os.execv(program, [program, "--library", os.path.join(folder.name, "stopped.db"), "add", pictures, *OPTIONS])
shown = b""
sent = False
while True:
    try:
        piece = os.read(terminal, 65536)
    except OSError:  # What a terminal says when the program behind it has ended.
        break
    if not piece:
        break
    shown += piece
    bars = [int(n) for n in re.findall(rb"(\d+) of %d" % count, shown)]
    if not sent and bars and bars[-1] >= stop_at:
        os.kill(child, signal.SIGINT)
        sent = True
code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
check(sent, "a bar with 'N of M' was shown")
check(code == 1, f"a stopped run ends with 1, not {code}")
check(b"stopped after" in shown, "it says after how many files it stopped")

kept = textures("stopped.db")
check(stop_at <= len(kept) < count, f"what was done stays and no more: {len(kept)} of {count}")
check(pantile("stopped.db", "check")["ok"], "the library is whole")
entire = textures("whole.db")
for title, identity in list(kept.items())[::max(1, len(kept) // 50)]:
    check(cells("stopped.db", identity) == cells("whole.db", entire[title]), f"'{title}' is no half texture")

rest = pantile("stopped.db", "add", pictures, *OPTIONS)
check((len(rest["known"]), len(rest["added"])) == (len(kept), count - len(kept)), "the same command adds the rest")
print(f"stopped after {len(kept)} of {count}, and went on")
