#!/usr/bin/env python3
"""Jumps of the sampled pen, and fills: what the program plans for two seeded pictures of 64x64 cells in 16 colours.

usage: jumps_and_fills.py PANTILE
The pictures are those of tests/drawing/requests.h, `detailedField` and `ditheredGradient`. For docs/drawing.md section 8.
"""

import json
import os
import subprocess
import sys
import tempfile

SIDE, LEVELS, MASK = 64, 16, (1 << 64) - 1


def seeded(seed):
    """SplitMix64, as tests/support/random.h has it: numbers from least to most."""
    state = seed

    def between(least, most):
        nonlocal state
        state = state + 0x9E3779B97F4A7C15 & MASK
        z = state
        z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9 & MASK
        z = (z ^ z >> 27) * 0x94D049BB133111EB & MASK
        return least + (z ^ z >> 31) % (most - least + 1)

    return between


def hills(seed):
    between = seeded(seed)

    def lattice(spacing):
        count = SIDE // spacing + 2
        return [[between(0, 1023) for _ in range(count)] for _ in range(count)]

    def height(heights, spacing, x, y):
        (j, v), (i, u) = divmod(y, spacing), divmod(x, spacing)
        top = heights[j][i] * (spacing - u) + heights[j][i + 1] * u
        bottom = heights[j + 1][i] * (spacing - u) + heights[j + 1][i + 1] * u
        return (top * (spacing - v) + bottom * v) // (spacing * spacing)

    coarse, fine = lattice(16), lattice(4)
    return [[(2 * height(coarse, 16, x, y) + height(fine, 4, x, y) + between(0, 127)) * LEVELS // (3 * 1024 + 128)
             for x in range(SIDE)] for y in range(SIDE)]


def gradient():
    unit = 1024
    wanted = [[(2 * x + y) * (LEVELS - 1) * unit // (3 * SIDE) for x in range(SIDE)] for y in range(SIDE)]
    cells = [[0] * SIDE for _ in range(SIDE)]
    for y in range(SIDE):
        for x in range(SIDE):
            cells[y][x] = min(max(int((wanted[y][x] + unit // 2) / unit), 0), LEVELS - 1)
            error = wanted[y][x] - cells[y][x] * unit
            for dx, dy, share in ((1, 0, 7), (-1, 1, 3), (0, 1, 5), (1, 1, 1)):
                if 0 <= x + dx < SIDE and y + dy < SIDE:
                    wanted[y + dy][x + dx] += int(error * share / 16)  # Towards zero.
    return cells


def patched(cells):
    """Every other 7 x 5 cells in one colour."""
    return [[0 if (x // 7 + y // 5) % 2 else cells[y][x] for x in range(SIDE)] for y in range(SIDE)]


def main():
    program = os.path.abspath(sys.argv[1])
    pictures = [hills(1), gradient(), patched(hills(1)), patched(gradient())]
    with tempfile.TemporaryDirectory() as folder:
        def pantile(*words, text=""):
            done = subprocess.run([program, "--library", os.path.join(folder, "library.db"), "--json", *words],
                                  input=text, capture_output=True, text=True, check=True)
            return json.loads(done.stdout)

        palette = "# palette " + " ".join(f"#{17 * i:02x}{17 * i:02x}{17 * i:02x}" for i in range(LEVELS)) + "\n"
        for cells in pictures:
            pantile("add", "-", text=palette + "\n".join(",".join(map(str, row)) for row in cells) + "\n")
        canvas = ["--width", "64", "--height", "64", "--colours", "16", "--grid-at", "4,4", "--bar-at", "544,8"]
        for name, more in (("whole", ["--pen", "whole-cells"]), ("sampled", ["--pen", "sampled"]),
                           ("fill", ["--pen", "whole-cells", "--fill-at", "544,300"])):
            pantile("canvas", "add", name, *canvas, *more)
        size = ["--slots", "5", "--bytes", "22528", "--timing", "quick"]
        for name, more in (("quick", []), ("quick, s' 127", ["--step-down", "127"]), ("quick, r 1", ["--report-ms", "1"]),
                           ("quick, r 1, s' 127", ["--report-ms", "1", "--step-down", "127"])):
            pantile("board", "add", name, *size, *more)
        for numbers, name, boards in (((1, 2), "whole", ("quick", "quick, r 1")),
                                      ((1, 2), "sampled", ("quick, s' 127", "quick, r 1, s' 127")),
                                      ((3, 4), "whole", ("quick",)), ((3, 4), "fill", ("quick",))):
            for board in boards:
                for number in numbers:
                    plan = pantile("plan", str(number), "--canvas", name, "--board", board)
                    over = 100 * (plan["seconds"] / plan["bound_seconds"] - 1)
                    print(f"picture {number}, {name}, {board}: {plan['seconds']:.1f} s, {over:.1f} % over the cheap bound")


if __name__ == "__main__":
    main()
