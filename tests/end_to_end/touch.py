#!/usr/bin/env python3
"""Touch-up through the real program, checked from outside: lines by Bresenham's published steps,
fills, mirrors, turns, cuts and enlarging by Pillow.
usage: touch.py PANTILE"""
import random
import sys

from needed import needed

needed("python3-pil", module="PIL")
from PIL import Image, ImageDraw, ImageOps

from program import pantile, place

chance = random.Random(1965)


def picture():
    """The texture as it is now, its indices as an 8-bit picture."""
    rows = pantile("show", "1")["cells"]
    image = Image.new("L", (len(rows[0]), len(rows)))
    image.putdata([cell for row in rows for cell in row])
    return image


def check(expected, sentence):
    got = picture()
    if got.size != expected.size or got.tobytes() != expected.tobytes():
        sys.exit("wrong: " + sentence)


def bresenham(x, y, to_x, to_y):
    """J. E. Bresenham, 'Algorithm for computer control of a digital plotter', IBM Systems Journal
    4(1), 1965: its recursion of the decision in the first octant, the others by its movements."""
    right, down = (1 if to_x >= x else -1), (1 if to_y >= y else -1)
    a, b = abs(to_x - x), abs(to_y - y)
    axial = (right, 0) if a >= b else (0, down)
    a, b = max(a, b), min(a, b)
    difference = 2 * b - a
    yield x, y
    for _ in range(a):
        step = (right, down) if difference >= 0 else axial
        difference += 2 * b - (2 * a if difference >= 0 else 0)
        x, y = x + step[0], y + step[1]
        yield x, y


grid = place("kelp-bed.csv")
with open(grid, "w", encoding="utf-8") as file:
    file.write("# palette #1b2631 #f2efe4 #b5532d #4f6f52\n")
    for _ in range(24):
        file.write(",".join(str(chance.choice([0, 0, 0, 1])) for _ in range(24)) + "\n")
pantile("add", grid)
first = picture()

expected, words = first.copy(), []
for _ in range(30):
    ends = [chance.randrange(24) for _ in range(4)]
    colour = chance.randrange(4)
    for cell in bresenham(*ends):
        expected.putpixel(cell, colour)
    words += ["--colour", str(colour), "--line", ",".join(map(str, ends))]
answer = pantile("touch", "1", *words)
check(expected, "thirty lines")
changed = sum(one != other for one, other in zip(first.getdata(), expected.getdata()))
if answer != {"id": 1, "revision": 2, "changed": changed, "width": 24, "height": 24}:
    sys.exit(f"wrong: the answer {answer}, {changed} cells changed")

words = []
for _ in range(30):
    place = (chance.randrange(24), chance.randrange(24))
    colour = chance.randrange(4)
    ImageDraw.floodfill(expected, place, colour)
    words += ["--colour", str(colour), "--fill", "%d,%d" % place]
pantile("touch", "1", *words)
check(expected, "thirty fills")

pantile("touch", "1", "--crop", "20,2,3,15", "--mirror", "left-right", "--turn", "90", "--enlarge", "3")
expected = ImageOps.mirror(expected.crop((3, 2, 21, 16))).transpose(Image.ROTATE_270)
check(expected.resize((42, 54), Image.NEAREST), "cut, mirrored, turned and enlarged")

now = picture()
pantile("touch", "1", "--swap", "0,1", "--crop", "0,0,42,53", expect=1)
check(now, "what is refused changes nothing")
pantile("revert", "1", "1")
check(first, "the first revision is back")
revisions = [revision["what"] for revision in pantile("history", "1")["revisions"]]
if revisions != ["added", "content", "content", "content", "reverted"]:
    sys.exit(f"wrong: the history is {revisions}")
if not pantile("check")["ok"]:
    sys.exit("wrong: the library is not sound")
print("lines, fills, sizes and the way back: all as it should be")
