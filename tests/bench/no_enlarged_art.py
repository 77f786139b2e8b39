#!/usr/bin/env python3
"""Makes the pictures that tests/bench/pixel_scale must not take for enlarged art: photographs, paintings, noise, slopes.

usage: no_enlarged_art.py INTO

Parts of open pictures that Debian packages, as PNG and as JPEG of three qualities. The seed is fixed.
Packages: wesnoth-1.16-data, mate-backgrounds; python3-pil for this script.
"""
import pathlib
import random
import sys

from PIL import Image

WESNOTH = pathlib.Path('/usr/share/games/wesnoth/1.16/data/core/images')
PHOTOGRAPHS = pathlib.Path('/usr/share/backgrounds/mate/nature')
SIDES = (48, 64, 100, 128, 200, 256, 400)
PARTS = {'portraits': 2, 'story': 14, 'nature': 28}
QUALITIES = (40, 75, 90)


def sources():
    yield from sorted((WESNOTH / 'portraits').rglob('*.png'))
    yield from sorted((WESNOTH / 'story').glob('*.jpg'))
    yield from sorted(PHOTOGRAPHS.glob('*.jpg'))


def parts(chance):
    for path in sources():
        picture = Image.open(path).convert('RGBA')
        picture = Image.alpha_composite(Image.new('RGBA', picture.size, (196, 186, 168, 255)), picture).convert('RGB')
        kind = next(part for part in path.parts if part in PARTS)
        for number in range(PARTS[kind]):
            shrunk = chance.choice((1, 1, 2, 3))
            side = min(chance.choice(SIDES), *(s // shrunk for s in picture.size))
            left, top = (chance.randrange(s - side * shrunk + 1) for s in picture.size)
            part = picture.crop((left, top, left + side * shrunk, top + side * shrunk))
            yield f'{kind}-{path.stem}-{number}', part.resize((side, side), Image.Resampling.BOX)


def made(chance):
    for number in range(20):
        side = chance.choice(SIDES)
        yield f'noise-{number}', Image.frombytes('RGB', (side, side), chance.randbytes(3 * side * side))
        slopes = [[chance.uniform(-1, 1) for _ in range(3)] for _ in range(2)]
        picture = Image.new('RGB', (side, side))
        picture.putdata([tuple(max(0, min(255, int(128 + x * p + y * q))) for p, q in zip(*slopes))
                         for y in range(side) for x in range(side)])
        yield f'slope-{number}', picture


def main():
    into = pathlib.Path(sys.argv[1])
    into.mkdir(parents=True, exist_ok=True)
    chance = random.Random(16)
    for name, picture in [*parts(chance), *made(chance)]:
        picture.save(into / f'{name}.png', compress_level=1)
        for quality in QUALITIES:
            picture.save(into / f'{name}-{quality}.jpg', quality=quality)
    print(len(list(into.iterdir())))


main()
