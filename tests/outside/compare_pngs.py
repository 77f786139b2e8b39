#!/usr/bin/env python3
"""Compares PNG files with Pillow, by a list of lines 'KIND<tab>ORIGINAL<tab>OURS'.

pixels   every pixel's red, green, blue and alpha are equal
cells    the same, but the colour of fully transparent pixels does not matter
indexed  both store the same palette, alphas and indices

usage: compare_pngs.py LIST   prints each difference; exit code 1 if there is one
"""
import struct
import sys

from PIL import Image


def chunks(path):
    """The palette and its alphas (filled up with opaque ones) as the file has them."""
    found = {b"PLTE": b"", b"tRNS": b""}
    with open(path, "rb") as file:
        file.read(8)
        while header := file.read(8):
            length, name = struct.unpack(">I4s", header)
            data = file.read(length)
            file.read(4)
            found[name] = data
    colours = len(found[b"PLTE"]) // 3
    return found[b"PLTE"], found[b"tRNS"].ljust(colours, b"\xff")


def rgba(path):
    with Image.open(path) as image:
        return image.size, list(image.convert("RGBA").getdata())


def indices(path):
    with Image.open(path) as image:
        return image.mode, image.size, image.tobytes()


def difference(kind, original, ours):
    if kind == "indexed":
        if chunks(original) != chunks(ours):
            return "palettes differ"
        if indices(original) != indices(ours):
            return "indices differ"
    (size, wanted), (our_size, got) = rgba(original), rgba(ours)
    if size != our_size:
        return f"{size} is not {our_size}"
    for place, (p, q) in enumerate(zip(wanted, got)):
        if p != q and not (kind == "cells" and p[3] == q[3] == 0):
            return f"pixel {place % size[0]},{place // size[0]}: {p} is not {q}"
    return None


def main():
    faults = 0
    with open(sys.argv[1], encoding="utf-8") as lines:
        for line in lines:
            kind, original, ours = line.rstrip("\n").split("\t")
            if fault := difference(kind, original, ours):
                print(f"{kind} {original}: {fault}")
                faults += 1
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
