#!/usr/bin/env python3
"""Counts how palettes of open art step from colour to colour: the tables `larger` and `negative` of
src/codec/start_values.cpp, which are frozen with the format.

usage: count_palette_steps.py FOLDER    the half `train` of what open_art.py made
"""
import pathlib
import sys

from PIL import Image


def colours_of(path):
    """The palette of an indexed PNG in its order, without the transparent colour."""
    picture = Image.open(path)
    size = max(picture.tobytes()) + 1
    flat = (picture.getpalette() + [0] * 768)[:3 * size]
    clear = picture.info.get('transparency')
    return [tuple(flat[3 * i:3 * i + 3]) for i in range(size) if i != clear]


def differences(colours):
    """Channel and difference from the guess, as docs/code-format.md, 14.6, has it."""
    r, g, b = 0, 0, 0
    for red, green, blue in colours:
        moved = green - g
        red_guess = max(0, min(255, r + moved))
        blue_guess = max(0, min(255, b + moved - int((red - r - moved) / 2)))
        yield from ((0, moved), (1, red - red_guess), (2, blue - blue_guess))
        r, g, b = red, green, blue


def main():
    # Starting counts, so that what never occurred stays possible.
    larger = [[0.6, 1.2] for _ in range(3 * 8 * 8)]
    negative = [[1, 2] for _ in range(3 * 3)]
    for path in sorted(pathlib.Path(sys.argv[1]).glob('*/*.png')):
        if path.parent.name.startswith('dithered'):
            continue  # The palettes of the pictures without dither.
        last = 0
        for channel, difference in differences(colours_of(path)):
            bits = abs(difference).bit_length()
            for at in range(min(bits + 1, 8)):
                place = larger[(channel * 8 + min(last, 7)) * 8 + at]
                place[0] += bits > at
                place[1] += 1
            last = bits
            if bits:
                place = negative[3 * channel + min(bits, 3) - 1]
                place[0] += difference < 0
                place[1] += 1
    for table in (larger, negative):
        print([max(1, min(255, round(256 * yes / all_of_them))) for yes, all_of_them in table])


main()
