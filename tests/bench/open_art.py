#!/usr/bin/env python3
"""Makes the pictures that tests/bench/code_size and learn_start_values read, from open art that Debian packages.

usage: open_art.py INTO

Writes INTO/train and INTO/report, each with a folder of indexed PNGs for each class; a picture belongs to
one half by the CRC-32 of its file's name, so that what was tuned on one half is never reported on.
Packages: minetest-data, wesnoth-1.16-data, freedoom, angband-data; python3-pil for this script.
"""
import pathlib
import struct
import sys
import zlib

from PIL import Image

MINETEST = pathlib.Path('/usr/share/games/minetest')
WESNOTH = pathlib.Path('/usr/share/games/wesnoth/1.16/data/core/images')
ANGBAND = pathlib.Path('/usr/share/angband/xtra/graf')
FREEDOOM = pathlib.Path('/usr/share/games/doom/freedoom1.wad')
COLOURS = 16
PER_CLASS = 200


def lightness(colour):
    red, green, blue = colour
    return (299 * red + 587 * green + 114 * blue, colour)


def indexed(picture, dither=Image.Dither.NONE):
    """At most 16 colours from dark to light, and one transparent index if anything is see-through."""
    rgba = picture.convert('RGBA')
    clear = [a < 128 for a in rgba.getchannel('A').getdata()]
    rgb = rgba.convert('RGB')
    opaque = [p for p, c in zip(rgb.getdata(), clear) if not c]
    if not opaque:
        return None
    if len(set(opaque)) > COLOURS:
        strip = Image.new('RGB', (len(opaque), 1))
        strip.putdata(opaque)
        palette = strip.quantize(COLOURS, Image.Quantize.MEDIANCUT, kmeans=4)
        rgb = rgb.quantize(palette=palette, dither=dither).convert('RGB')
    pixels = list(rgb.getdata())
    colours = sorted({p for p, c in zip(pixels, clear) if not c}, key=lightness)
    if len(colours) < 2:
        return None
    number = {colour: i for i, colour in enumerate(colours)}
    through = any(clear)
    if through:
        colours.append((0, 0, 0))
    out = Image.new('P', rgb.size)
    out.putdata([len(colours) - 1 if c else number[p] for p, c in zip(pixels, clear)])
    out.putpalette([v for colour in colours for v in colour])
    if through:
        out.info['transparency'] = len(colours) - 1
    return out


def flats():
    """The 64x64 floor pictures of an open set of game art."""
    data = FREEDOOM.read_bytes()
    count, place = struct.unpack('<ii', data[4:12])
    inside, palette, out = False, None, []
    for i in range(count):
        at, size, name = struct.unpack('<ii8s', data[place + 16 * i:place + 16 * i + 16])
        name = name.rstrip(b'\0').decode()
        if name == 'PLAYPAL':
            palette = list(data[at:at + 768])
        if name in ('F_START', 'F_END'):
            inside = name == 'F_START'
        elif inside and size == 4096:
            picture = Image.frombytes('P', (64, 64), data[at:at + size])
            out.append((name, picture))
    for _, picture in out:
        picture.putpalette(palette)
    return [(name, picture.convert('RGB')) for name, picture in out]


def files(folder, size=None, pattern='*.png'):
    for path in sorted(folder.rglob(pattern)):
        picture = Image.open(path)
        if size is None or picture.size == size:
            yield str(path.relative_to(folder)).replace('/', '-'), picture.convert('RGBA')


def centre(picture, side):
    left, top = (picture.width - side) // 2, (picture.height - side) // 2
    return picture.crop((left, top, left + side, top + side))


def sheet(path, side):
    """The tiles of a sheet; its black ground counts as see-through where it fills a corner."""
    whole = Image.open(path).convert('RGB')
    for top in range(0, whole.height, side):
        for left in range(0, whole.width, side):
            tile = whole.crop((left, top, left + side, top + side))
            if len(tile.getcolors(side * side)) > 2:
                yield f'sheet-{top}-{left}.png', tile


def is_ground(tile):
    return tile.getpixel((0, 0)) == (0, 0, 0)


def without_ground(tile):
    rgba = tile.convert('RGBA')
    rgba.putdata([(r, g, b, 0 if (r, g, b) == (0, 0, 0) else 255) for r, g, b in tile.getdata()])
    return rgba


def paintings(dither):
    for name, picture in files(WESNOTH / 'portraits'):
        if picture.width < 128:
            continue
        left, top, right, bottom = picture.getchannel('A').getbbox()
        side = min(right - left, bottom - top) * 2 // 3
        left = (left + right - side) // 2
        part = picture.crop((left, top, left + side, top + side))
        yield name, indexed(part.resize((64, 64), Image.Resampling.BOX), dither)
    for name, picture in files(WESNOTH / 'story', pattern='*.jpg'):
        side = picture.height // 2
        for number in range(8):
            left, top = (picture.width - side) * (number % 4) // 3, side * (number // 4)
            part = picture.crop((left, top, left + side, top + side))
            small = part.resize((64, 64), Image.Resampling.BOX)
            yield f'{pathlib.Path(name).stem}-{number}.png', indexed(small, dither)


def classes():
    def art_16():
        yield from ((n, indexed(p)) for n, p in files(MINETEST, (16, 16)))
        for name, tile in sheet(ANGBAND / '16x16.png', 16):
            yield name, indexed(without_ground(tile) if is_ground(tile) else tile)

    def art_64():
        yield from ((name, indexed(picture)) for name, picture in flats())
        for name, picture in files(WESNOTH / 'units', (72, 72)):
            if zlib.crc32(name.encode()) % 16 == 1:
                yield name, indexed(centre(picture, 64))

    tiles = list(sheet(ANGBAND / '32x32.png', 32))
    yield 'art-16', art_16()
    yield 'tiles-32', ((n, indexed(t)) for n, t in tiles if not is_ground(t))
    yield 'sprites-32', ((n, indexed(without_ground(t))) for n, t in tiles if is_ground(t))
    yield 'art-64', art_64()
    yield 'paintings-64', paintings(Image.Dither.NONE)
    yield 'dithered-64', paintings(Image.Dither.FLOYDSTEINBERG)


def main():
    into = pathlib.Path(sys.argv[1])
    for name, pictures in classes():
        done = [(n, p) for n, p in pictures if p is not None]
        done.sort(key=lambda entry: zlib.crc32(entry[0].encode()) >> 1)
        halves = {0: [], 1: []}
        seen = set()
        for n, p in done:
            key = (p.size, p.tobytes(), tuple(p.getpalette()))
            if key in seen: continue
            seen.add(key)
            halves[zlib.crc32(n.encode()) & 1].append((n, p))
        for half, folder in ((0, 'train'), (1, 'report')):
            target = into / folder / name
            target.mkdir(parents=True, exist_ok=True)
            for n, p in halves[half][:PER_CLASS // 2]:
                save = {'transparency': p.info['transparency']} if 'transparency' in p.info else {}
                p.save(target / (pathlib.Path(n).stem + '.png'), **save)
        print(name, len(done), [len(h) for h in halves.values()])


main()
