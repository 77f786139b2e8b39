#!/usr/bin/env python3
"""The main job through the real program on the sample library, checked from outside: pictures by
Pillow, the library by Python's own SQLite, the load by its files and by damaging it.
usage: main_job.py PANTILE SOURCE-FOLDER"""
import csv
import os
import sqlite3
import sys

from needed import needed

needed("python3-pil", module="PIL")
from PIL import Image

from program import check, library, pantile, place, program

source = sys.argv[2]
samples = os.path.join(source, "sample_library")

# Gather: every texture keeps palette and indices as an independent reader sees them.
with open(os.path.join(samples, "textures", "contents.csv"), encoding="utf-8") as listing:
    rows = list(csv.DictReader(listing))
check(len(rows) >= 24, "the sample library has at least 24 textures")
check({tuple(map(int, (row["file"].split("/")[0],) * 2)) for row in rows} == {(16, 16), (32, 32), (64, 64)},
      "there are textures of three sizes")
shown_by_id = {}
for row in rows:
    path = os.path.join(samples, "textures", row["file"])
    tags = [word for tag in row["tags"].split() for word in ("--tag", tag)]
    added = pantile("add", path, "--fit", "exact", "--title", row["title"], *tags)["added"]
    check(len(added) == 1, f"{row['file']} is added once")
    shown = shown_by_id[added[0]["id"]] = pantile("show", str(added[0]["id"]))
    image = Image.open(path)
    check(image.mode == "P", f"{row['file']} is indexed")
    cells = list(image.getdata())
    check([cell for line in shown["cells"] for cell in line] == cells, f"indices of {row['file']} are kept")
    colours = ["#%02x%02x%02x" % tuple(image.getpalette()[3 * i:3 * i + 3]) for i in range(len(shown["palette"]))]
    check(shown["palette"] == colours, f"the palette of {row['file']} is kept")
again = pantile("add", os.path.join(samples, "textures"))
check(len(again["known"]) == len(rows) and not again["added"], "nothing is stored twice")
pictures = pantile("add", os.path.join(samples, "pictures"), "--tag", "picture", "--dither", "floyd-steinberg")
check([(p["width"], p["height"]) for p in pictures["added"]] == [(64, 64)] * 4, "four pictures are converted")
for picture in pictures["added"]:
    check(0 < picture["difference"]["perceived"] < picture["difference"]["plain"], "dithers mix from a distance")
    check(picture["load_bytes"] > 0 and picture["draw_seconds"] > 0, "a conversion tells its costs")

# Organise.
stones = [row for row in rows if "stone" in row["tags"].split()]
check(pantile("find", "tag:stone")["total"] == len(stones), "the search finds by tag")

# Share: all codes in one text, with prose around, come back as the same textures.
codes = pantile("code", "all")["codes"]
thread = "\n\n".join(f"Look at this, number {code['id']}:\n{code['code']}\nNice?" for code in codes)
read = pantile("read", "-", stdin=thread)
check(not read["damaged"] and len(read["textures"]) == len(codes), "all codes are read back")
for code, texture in zip(codes, read["textures"]):
    shown = shown_by_id.get(code["id"]) or pantile("show", str(code["id"]))
    for field in ("title", "tags", "palette", "transparent", "cells"):
        check(texture[field] == shown[field], f"{field} of texture {code['id']} survives its code")
forum = pantile("read", os.path.join(samples, "forum-thread.txt"), expect=1)
check([texture["repaired"] for texture in forum["textures"]] == [0, 0, 0, 1] and len(forum["damaged"]) == 2,
      "three codes of the thread are whole, one is put right, two are not")
check(all(word in d["where"] + d["reason"] for word, d in zip(["line 3", "cut short"], forum["damaged"])),
      "what is damaged is named")
posts = [post for code in pantile("code", "all", "--limit", "280", "--for", "chat")["codes"] for post in code["parts"]]
check(all(len(post) <= 280 for post in posts), "no post is longer than its limit")
joined = pantile("read", "-", stdin="\n\n".join(reversed(posts)))
check(not joined["damaged"] and len(joined["textures"]) == len(codes), "parts in any order are joined")

# Choose, draw, verify; then every tenth byte of the card is damaged and found.
fit = pantile("fit", "tag:picture | tag:stone", "--board", "flash-32k")
check(fit["proven_best"] and len(fit["loads"][0]["textures"]) == 5, "five slots are filled")
check(len(fit["left_out"]) == len(stones) + 4 - 5, "each texture left out has its reason")
pantile("load", "make", "evening", "tag:picture | tag:stone", "--board", "flash-32k", "--best")
written = pantile("load", "write", "evening", "--into", place("load"), "--as", "both")
check(written["verified"] and len(written["files"]) == 3, "both forms are written and verified")
card = place("load/evening/load.bin")
check(os.path.getsize(card) == fit["loads"][0]["bytes"], "the load has the bytes that were foretold")
check(pantile("load", "verify", place("load/evening.h"))["verified"], "the header is right")
whole = open(card, "rb").read()
for at in range(0, len(whole), max(1, len(whole) // 40)):
    damaged = bytearray(whole)
    damaged[at] ^= 0x20
    open(place("damaged.bin"), "wb").write(damaged)
    pantile("load", "verify", place("damaged.bin"), expect=1)

# Practice, common and without a source: two to five minutes for detailed 64x64 art by simple means.
for picture in pictures["added"]:
    plan = pantile("plan", str(picture["id"]))
    check(120 <= plan["by_row_seconds"] <= 300, f"{picture['title']} by rows takes {plan['by_row_seconds']} s")
    check(plan["bound_seconds"] <= plan["seconds"] <= plan["by_row_seconds"], "the plan lies between its bounds")

# Keep: SQLite itself, another program, finds the file sound.
check(pantile("check")["ok"], "the library is sound")
with sqlite3.connect(library) as database:
    check(database.execute("PRAGMA integrity_check").fetchall() == [("ok",)], "integrity_check says ok")
    check(database.execute("PRAGMA foreign_key_check").fetchall() == [], "foreign keys are whole")
print(f"{len(rows)} textures, 4 pictures, {len(codes)} codes, {len(written['slots'])} slots: all as it should be")
