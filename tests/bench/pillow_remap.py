#!/usr/bin/env python3
"""Maps pictures to the sixteen colours of CSS level 1 by Pillow's Floyd-Steinberg, for tests/bench/conversion_bench.

usage: pillow_remap.py FROM INTO

Writes INTO/<class>/<name>.png for every FROM/<class>/<name>.png, and prints pictures per second of processor time of the mapping alone.
Package: python3-pil.
"""
import pathlib
import sys
import time

from PIL import Image

# CSS level 1, section 6.3.
CSS = bytes.fromhex('000000 c0c0c0 808080 ffffff 800000 ff0000 800080 ff00ff'
                    '008000 00ff00 808000 ffff00 000080 0000ff 008080 00ffff')


def main():
    source, into = map(pathlib.Path, sys.argv[1:3])
    palette = Image.new('P', (1, 1))
    palette.putpalette(list(CSS) + list(CSS[-3:]) * 240)
    seconds, count = 0, 0
    for path in sorted(source.glob('*/*.png')):
        picture = Image.open(path).convert('RGB')
        start = time.process_time()
        mapped = picture.quantize(palette=palette, dither=Image.Dither.FLOYDSTEINBERG)
        seconds += time.process_time() - start
        count += 1
        target = into / path.parent.name
        target.mkdir(parents=True, exist_ok=True)
        mapped.convert('RGB').save(target / path.name)
    print(f'Pillow, Floyd-Steinberg: {count} pictures, {count / seconds:.0f} a second')


main()
