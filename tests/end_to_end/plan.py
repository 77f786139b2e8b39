#!/usr/bin/env python3
"""Plans through the real program, checked from outside: strokes and jumps painted again here, the SVG
read as XML, the frames by Pillow, Ctrl-C in the middle of a proof.
usage: plan.py PANTILE"""
import json
import random
import re
import signal
import subprocess
import time
import xml.etree.ElementTree as ElementTree

from needed import needed

needed("python3-pil", module="PIL")
from PIL import Image

from program import check, library, pantile, place, program

chance = random.Random(7)
PALETTE = ["#1b2631", "#f2efe4", "#b5532d", "#4f6f52"]


def add(name, rows, title):
    with open(place(name), "w", encoding="utf-8") as file:
        file.write(f"# palette {' '.join(PALETTE)}\n")
        file.writelines(",".join(map(str, row)) + "\n" for row in rows)
    return pantile("add", place(name), "--title", title)["added"][0]["id"]


def way(a, b):
    """The cells behind a up to b, in a row, a column or a diagonal."""
    while a != b:
        a = tuple(p + (q > p) - (q < p) for p, q in zip(a, b))
        yield a


def painted(plan, width, height):
    cells = {(x, y): plan["fill"] for x in range(width) for y in range(height)}
    for stroke in plan["strokes_list"]:
        pen = tuple(stroke["path"][0])
        cells[pen] = stroke["colour"]
        for number, cell in enumerate(map(tuple, stroke["path"])):
            for passed in [cell] if number in stroke.get("jumps", []) else way(pen, cell):
                cells[passed] = stroke["colour"]
            pen = cell
    return [[cells[x, y] for x in range(width)] for y in range(height)]


# A calm shore with a few grains, and a title that is no XML.
TITLE = 'Kelp & "rope" <b>'
rows = [[chance.choice([2] * 40 + [0, 1, 3]) for _ in range(12)] for _ in range(12)]
rows[3][2], rows[8][5], rows[6][10] = 0, 1, 3
shore = str(add("shore.csv", rows, TITLE))
pantile("canvas", "add", "shore", "--width", "12", "--height", "12")
plain = pantile("plan", shore, "--strokes")
check(painted(plain, 12, 12) == rows, "the strokes do not paint the texture")
check(plain["fill"] is None, "nothing can be filled here")

# What it says of a faster setting is what that setting then takes; find and show know it too.
said = {each["how"]: each for each in plain["faster"]}
for how in ("board set flash-32k --timing quick", "board set flash-32k --report-ms 1"):
    pantile(*how.split())
    then = pantile("plan", shore)
    check(then["seconds"] == said[how]["seconds"], how)
    check(abs(plain["seconds"] - said[how]["seconds"] - said[how]["saves"]) < 0.002, how)
    check(pantile("show", shore)["draw_seconds"] == then["seconds"], "show keeps an old time")
    check(pantile("find")["textures"][0]["draw_seconds"] == then["seconds"], "find keeps an old time")
    pantile("board", "set", "flash-32k", "--timing", "careful")

# A fill button, and a pen that jumps.
pantile("canvas", "set", "shore", "--fill-at", "136,300")
filled = pantile("plan", shore, "--strokes")
check(filled["fill"] == 2 and filled["seconds"] < plain["seconds"], "the fill does not pay")
check(painted(filled, 12, 12) == rows, "fill and strokes do not paint the texture")
pantile("canvas", "set", "shore", "--pen", "sampled", "--fill-at", "none")
pantile("board", "set", "flash-32k", "--step-down", "127")
jumping = pantile("plan", shore, "--strokes")
check(painted(jumping, 12, 12) == rows, "jumps do not paint the texture")
check(jumping["lifts"] == 4, "one stroke for each colour")
check(any("jumps" in stroke for stroke in jumping["strokes_list"]), "no jump")
pantile("load", "make", "tide", shore, "--board", "flash-32k")
check(pantile("load", "write", "tide", "--into", place("load"))["verified"], "the load is not right")

# Pictures.
files = pantile("plan", shore, "--svg", place("plan.svg"), "--frames", place("film"))["files"]
root = ElementTree.parse(place("plan.svg")).getroot()
check(root.tag == "{http://www.w3.org/2000/svg}svg", "no SVG")
check(root.find("{http://www.w3.org/2000/svg}title").text == TITLE, "the title is another one")
frames = [Image.open(name).convert("RGBA") for name in files[1:]]
check(2 <= len(frames) <= 102, "too many frames or too few")
check(frames[0].getextrema()[3] == (0, 0), "the first frame is not empty")
factor = frames[0].width // 12
for y, row in enumerate(rows):
    for x, index in enumerate(row):
        pixel = frames[-1].getpixel((x * factor, y * factor))
        check("#%02x%02x%02x" % pixel[:3] == PALETTE[index] and pixel[3] == 255,
             f"the last frame at {x}, {y}")
pantile("plan", shore, "--svg", place("plan.svg"), expect=1)
pantile("plan", shore, "--frames", place("film"), "--frame-seconds", "0.001", "--replace", expect=2)

# Ctrl-C in the middle of a proof that would take long.
rows = [[chance.randrange(4) for _ in range(32)] for _ in range(32)]
grains = str(add("grains.csv", rows, "Grains"))
prover = subprocess.Popen([program, "--library", library, "--json", "plan", grains, "--prove",
                           "--canvas", "cells-32", "--board", "card-64", "--budget-ms", "600000"],
                          stdout=subprocess.PIPE, text=True)
# It takes signals itself from then on; under other tools it begins slowly.
while not int(re.search(r"SigBlk:\s*(\w+)", open(f"/proc/{prover.pid}/status").read())[1], 16) >> (signal.SIGINT - 1) & 1:
    time.sleep(0.05)
time.sleep(1)
prover.send_signal(signal.SIGINT)
answer = json.loads(prover.communicate(timeout=60)[0])
check(prover.returncode == 1 and answer["error"]["kind"] == "cancelled", "Ctrl-C does not stop it")

# Slips.
for words, code in [(["plan"], 2), (["plan", "kelp"], 2), (["plan", "99"], 1),
                    (["plan", shore, "--boards", "x"], 2), (["plan", shore, "--budget-ms", "ten"], 2),
                    (["plan", shore, "--board", "flash-33k"], 1),
                    (["canvas", "set", "shore", "--fill-at", "4,4"], 1)]:
    check("error" in pantile(*words, expect=code), "no error")
print("plans are right")
