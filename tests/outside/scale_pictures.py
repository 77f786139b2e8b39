#!/usr/bin/env python3
"""Scales a seeded picture by Pillow, in linear light, for our scaling to be compared with.

usage: scale_pictures.py FOLDER   writes FOLDER/picture.png and prints, for each case, a line
                                  FILTER WIDTH HEIGHT and the cells as #rrggbb
"""
import os
import random
import sys

from PIL import Image

SIZE = (61, 47)
TARGETS = ((16, 16), (7, 30), (61, 47), (90, 64))
FILTERS = {'area': Image.Resampling.BOX, 'lanczos': Image.Resampling.LANCZOS}


def to_light(value):
    encoded = value / 255
    return encoded / 12.92 if encoded <= 0.04045 else ((encoded + 0.055) / 1.055) ** 2.4


def to_encoded(light):
    light = min(1, max(0, light))
    encoded = light * 12.92 if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
    return round(encoded * 255)


def painting():
    """Slopes, hard edges and noise."""
    draw = random.Random(7)
    picture = Image.new('RGB', SIZE)
    picture.putdata([(x * 4, 255 if (x // 9 + y // 7) % 2 else 20, draw.randrange(256))
                     for y in range(SIZE[1]) for x in range(SIZE[0])])
    return picture


def scaled(channel, target, kernel):
    if kernel == Image.Resampling.BOX:
        # Pillow's box counts a pixel whole or not at all; of pixels cut so that cells hold whole parts of
        # them it makes the mean by area.
        parts = (SIZE[0] * target[0], SIZE[1] * target[1])
        channel = channel.resize(parts, Image.Resampling.NEAREST)
    return channel.resize(target, kernel)


def main():
    picture = painting()
    picture.save(os.path.join(sys.argv[1], 'picture.png'))
    channels = []
    for channel in picture.split():
        light = Image.new('F', SIZE)
        light.putdata([to_light(value) for value in channel.getdata()])
        channels.append(light)
    for name, kernel in FILTERS.items():
        for target in TARGETS:
            if name == 'area' and target[0] >= SIZE[0]:
                continue
            cells = zip(*(scaled(channel, target, kernel).getdata() for channel in channels))
            print(name, *target, *('#%02x%02x%02x' % tuple(map(to_encoded, cell)) for cell in cells))


main()
