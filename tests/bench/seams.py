#!/usr/bin/env python3
"""Seams before and after healing: what `seams` says of pictures of 64x64 cells, and again after --heal-seams both.

usage: seams.py PANTILE FOLDER    FOLDER: pictures, such as sample_library/pictures
For docs/seams-and-colours.md section 3. It decides nothing.
"""

import json
import os
import statistics
import subprocess
import sys
import tempfile


def main():
    with tempfile.TemporaryDirectory() as folder:
        def pantile(*words):
            done = subprocess.run([os.path.abspath(sys.argv[1]), "--library", os.path.join(folder, "library.db"),
                                   "--json", *words], capture_output=True, text=True, check=False)
            return json.loads(done.stdout)

        def numbers(number):
            seams = pantile("seams", number)
            return [seams["vertical"]["ratio"], seams["horizontal"]["ratio"]]

        added = pantile("add", sys.argv[2], "--canvas", "cells-64", "--fit", "cover")["added"]
        before, after = [], []
        for texture in added:
            number = str(texture["id"])
            was = numbers(number)
            pantile("touch", number, "--heal-seams", "both")
            now = numbers(number)
            print(f"{texture['title']}: {was[0]:.2f} and {was[1]:.2f}, healed {now[0]:.2f} and {now[1]:.2f}")
            before += was
            after += now
        # What is:seamless finds has at most this.
        rough = [(was, now) for was, now in zip(before, after) if was > 1.25]
        if rough:
            was, now = (sorted(side) for side in zip(*rough))
            print(f"{len(rough)} of {len(before)} seams above 1.25: {was[0]:.2f} to {was[-1]:.2f}, median "
                  f"{statistics.median(was):.2f}; healed {now[0]:.2f} to {now[-1]:.2f}, median "
                  f"{statistics.median(now):.2f}, {sum(each > 1.25 for each in now)} still above")


if __name__ == "__main__":
    main()
