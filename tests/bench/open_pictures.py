#!/usr/bin/env python3
"""Makes the pictures that tests/bench/conversion_bench measures: unreduced, 64x64, from open art that Debian packages.

usage: open_pictures.py INTO

Writes INTO/train and INTO/report, each with a folder `paintings` and a folder `photographs`; a picture belongs to one
half by the CRC-32 of its file's name, so that what was tuned on one half is never reported on.
Packages: wesnoth-1.16-data, mate-backgrounds; python3-pil for this script.
"""
import pathlib
import sys
import zlib

from PIL import Image

WESNOTH = pathlib.Path('/usr/share/games/wesnoth/1.16/data/core/images')
PHOTOGRAPHS = pathlib.Path('/usr/share/backgrounds/mate/nature')
SIDE = 64
PAINTINGS_A_HALF = 30


def square(picture, left, top, side):
    return picture.crop((left, top, left + side, top + side)).resize((SIDE, SIDE), Image.Resampling.BOX)


def portraits():
    """Heads and shoulders on a plain ground, where the picture is see-through."""
    for path in sorted((WESNOTH / 'portraits').rglob('*.png')):
        picture = Image.open(path).convert('RGBA')
        if picture.width < 128:
            continue
        left, top, right, bottom = picture.getchannel('A').getbbox()
        side = min(right - left, bottom - top) * 2 // 3
        ground = Image.new('RGBA', picture.size, (196, 186, 168, 255))
        yield path.name, square(Image.alpha_composite(ground, picture).convert('RGB'), (left + right - side) // 2, top, side)


def squares(folder, across, down):
    for path in sorted(folder.glob('*.jpg')):
        picture = Image.open(path).convert('RGB')
        side = picture.height // down
        for number in range(across * down):
            left = (picture.width - side) * (number % across) // (across - 1)
            yield f'{path.stem}-{number}', square(picture, left, number // across * side, side)


def classes():
    paintings = list(portraits())[::2] + list(squares(WESNOTH / 'story', 2, 1))
    yield 'paintings', paintings, PAINTINGS_A_HALF
    yield 'photographs', list(squares(PHOTOGRAPHS, 2, 1)) + list(squares(PHOTOGRAPHS, 3, 2)), 48


def main():
    into = pathlib.Path(sys.argv[1])
    for name, pictures, most in classes():
        for half, folder in ((0, 'train'), (1, 'report')):
            mine = [(n, p) for n, p in pictures if zlib.crc32(n.encode()) & 1 == half]
            mine.sort(key=lambda entry: zlib.crc32(entry[0].encode()) >> 1)
            target = into / folder / name
            target.mkdir(parents=True, exist_ok=True)
            for n, picture in mine[:most]:
                picture.save(target / (pathlib.Path(n).stem + '.png'))
            print(folder, name, len(list(target.iterdir())))


main()
