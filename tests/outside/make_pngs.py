#!/usr/bin/env python3
"""Writes PNG files of every kind that Pillow can write, for our reader to read.

usage: make_pngs.py FOLDER   prints the name of each file
"""
import os
import sys

from PIL import Image

SIZE = (37, 23)  # sides that fill no whole byte at 1, 2 or 4 bits


def painting():
    image = Image.new("RGBA", SIZE)
    image.putdata([(x * 6, y * 11, x * y % 256, (x * 37 + y * 5) % 256)
                   for y in range(SIZE[1]) for x in range(SIZE[0])])
    return image


def main():
    folder = sys.argv[1]
    rgba = painting()
    rgb = rgba.convert("RGB")
    grey = rgba.convert("L")

    def save(name, image, **options):
        path = os.path.join(folder, name + ".png")
        image.save(path, **options)
        print(path)

    save("rgb", rgb)
    save("rgb-one-transparent", rgb, transparency=rgb.getpixel((5, 5)))
    save("rgba", rgba)
    save("grey", grey)
    save("grey-one-transparent", grey, transparency=grey.getpixel((5, 5)))
    save("grey-alpha", rgba.convert("LA"))
    save("grey-1-bit", grey.convert("1"))
    for colours, bits in ((2, 1), (3, 2), (4, 2), (5, 4), (16, 4), (17, 8), (256, 8)):
        few = rgb.quantize(colours)
        save(f"indexed-{colours}", few, bits=bits)
        save(f"indexed-{colours}-alphas", few, bits=bits,
             transparency=bytes(i * 255 // (colours - 1) for i in range(colours)))
        save(f"indexed-{colours}-one-transparent", few, bits=bits, transparency=colours - 1)


if __name__ == "__main__":
    main()
