#!/usr/bin/env python3
"""The printed page of a load, read by another program (poppler's pdftotext and pdftoppm): what is
on it, on how many pages, and hostile titles.
usage: print.py PANTILE"""
import os
import subprocess

from needed import needed

needed("python3-pil", module="PIL")
needed("poppler-utils", program="pdftotext")
from PIL import Image

from program import check, pantile, place


def pages(pdf):
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True,
                          capture_output=True, text=True).stdout
    return text.split("\f")[:-1]


def add(number, title):
    path = place(f"{number}.csv")
    with open(path, "w", encoding="utf-8") as file:
        file.write("# palette #1b2631 #f2efe4 #b5532d #4f6f52\n")
        file.write("".join(f"{number % 4},{number // 4 % 4},{number // 16},2\n" for _ in range(4)))
    pantile("add", path, "--title", title)


titles = ["Kelp bed", "<b>Rope</b> & %s", "Ångermüll " + "very long " * 9]
titles += [f"Buoy {number}" for number in range(len(titles), 25)]
for number, title in enumerate(titles):
    add(number, title)
pantile("set", "1", "--author", "Mara Quill of " + "the long pier " * 5, "--licence", "CC0-1.0")
pantile("board", "add", "quay", "--slots", "64", "--bytes", "1000000", "--memory", "card")
pantile("load", "make", "three", "1", "2", "3", "--board", "quay")
pantile("load", "make", "all of them", "all", "--board", "quay")
into = place("printed")

answer = pantile("load", "print", "three", "--into", into)
check(answer["load"] == "three" and os.path.isfile(answer["files"][0]), "the file that is named is there")
page = pages(answer["files"][0])
check(len(page) == 1, "three slots take a page")
for part in ("Load three", "For the board quay: 3 of 64 slots", "1 Kelp bed", "<b>Rope</b> & %s",
             "Ångermüll very", "…", "4x4 cells", "by Mara Quill of", "licence CC0-1.0",
             "Before you plug the board in", "acts as a mouse",
             "Unplug other pointing devices"):
    check(part in page[0], f"the page says '{part}'")

subprocess.run(["pdftoppm", "-r", "100", "-png", answer["files"][0], place("page")], check=True)
image = Image.open(place("page-1.png")).convert("RGB")
check(image.size == (827, 1170), "the page is A4: 210 x 297 mm")
colours = {colour for _, colour in image.getcolors(1 << 24)}
check((0x1B, 0x26, 0x31) in colours and (0xB5, 0x53, 0x2D) in colours, "cells have their exact colours")

many = pages(pantile("load", "print", "all of them", "--into", into)["files"][0])
check(len(many) == 3, "25 slots take three pages")
check(all(f"{number + 1} Buoy {number}" in "".join(many) for number in range(3, 25)), "every slot is there")
check("acts as a mouse" in many[-1] and "acts as a mouse" not in many[0], "the cautions come last")

check(pantile("load", "print", "three", "--into", into, expect=1)["error"]["kind"] == "already-exists",
      "nothing is overwritten silently")
pantile("load", "print", "three", "--into", into, "--replace")
check("three" in pantile("load", "print", "thre", "--into", into, expect=1)["error"]["hint"],
      "a name that is nearly right is told")
pantile("load", "print", "three", expect=2)
