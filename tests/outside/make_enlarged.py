#!/usr/bin/env python3
"""Writes small art enlarged, as JPEG files of several forms by Pillow.

usage: make_enlarged.py FOLDER   prints the cells as #rrggbb on one line, then a line with the name of each file
"""
import os
import random
import sys

from PIL import Image

CELLS = 16
# A lighthouse on shingle: few colours, far apart.
COLOURS = [(20, 28, 46), (90, 62, 40), (214, 65, 41), (63, 150, 175), (231, 177, 64), (239, 247, 249)]


def art():
    chance = random.Random(85)
    picture = Image.new('RGB', (CELLS, CELLS))
    cells = [chance.choice(COLOURS) for _ in range(CELLS * CELLS)]
    # Runs of one colour, as art has them.
    for i in range(1, len(cells)):
        if i % CELLS and chance.random() < 0.4:
            cells[i] = cells[i - 1]
    picture.putdata(cells)
    return picture


def main():
    small = art()
    print(*('#%02x%02x%02x' % pixel for pixel in small.getdata()))
    for factor in (5, 8):
        large = small.resize((CELLS * factor, CELLS * factor), Image.Resampling.NEAREST)
        for share in ('4:4:4', '4:2:2', '4:2:0'):
            for progressive in (False, True):
                name = f'{factor}-times-{share.replace(":", "")}{"-progressive" * progressive}.jpg'
                large.save(os.path.join(sys.argv[1], name), quality=85, subsampling=share, progressive=progressive)
                print(name)


main()
