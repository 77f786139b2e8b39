#!/usr/bin/env python3
"""Look-alikes through the real program: edits made by Pillow of pictures drawn here, said when they
are added, found by similar, duplicates and like:, and mistakes answered with what to do.
usage: look_alikes.py PANTILE"""
import random
import subprocess

from needed import needed

needed("python3-pil", module="PIL")
from PIL import Image, ImageChops, ImageOps

from program import check, library, pantile, place, program

SIDE = 16
chance = random.Random(1968)


def drawn(colours):
    """Patches of a few colours, with no symmetry."""
    image = Image.new("RGB", (SIDE, SIDE), colours[0])
    for _ in range(60):
        left, top = chance.randrange(SIDE), chance.randrange(SIDE)
        image.paste(chance.choice(colours), (left, top, left + chance.randrange(1, 5), top + 2))
    return image


def recoloured(image, colours):
    """Each colour another one, no two the same."""
    before = sorted(set(image.getdata()))
    others = dict(zip(before, colours))
    copy = image.copy()
    copy.putdata([others[cell] for cell in image.getdata()])
    return copy


def touched(image):
    """Two cells in the colour of another cell."""
    copy = image.copy()
    for _ in range(2):
        colour = image.getpixel((0, 0))
        while True:
            spot = (chance.randrange(SIDE), chance.randrange(SIDE))
            if copy.getpixel(spot) != colour:
                break
        copy.putpixel(spot, colour)
    return copy


def saved(name, image):
    image.save(place(name + ".png"))
    return place(name + ".png")


def enlarged(image, factor):
    return image.resize((SIDE * factor, SIDE * factor), Image.NEAREST)


shingle = [(27, 38, 49), (90, 99, 110), (150, 150, 142), (205, 200, 186)]
kelp = [(18, 40, 30), (60, 92, 48), (110, 122, 60), (30, 60, 80)]
brass = [(60, 30, 10), (140, 90, 20), (210, 160, 60), (250, 220, 140)]
wet_sand = [(230, 214, 180), (200, 180, 140), (180, 160, 120), (240, 230, 210)]

originals = {"shingle": drawn(shingle), "kelp": drawn(kelp), "wet-sand": drawn(wet_sand)}
first = originals["shingle"]
edits = {
    "mirrored": (ImageOps.mirror(first), "mirrored left to right"),
    "turned": (first.transpose(Image.ROTATE_270), "turned a quarter to the right"),
    "shifted": (ImageChops.offset(first, 3, 5), "shifted 3 to the right and 5 down"),
    "enlarged": (enlarged(first, 3), "enlarged 3 times"),
    "recoloured": (recoloured(first, brass), "recoloured"),
    "all": (enlarged(ImageChops.offset(ImageOps.flip(recoloured(first, brass)), 0, 2), 2),
            "mirrored top to bottom, shifted 4 down, enlarged 2 times, recoloured"),
    "touched": (touched(first), "nearly the same: 2 of 256 cells differ"),
}

AS_THEY_ARE = ["--fit", "exact", "--enlarged", "keep"]
answer = pantile("add", *(saved(*entry) for entry in originals.items()), *AS_THEY_ARE)
check([entry["alike"] for entry in answer["added"]] == [None] * 3,
      "pictures of their own are said to be like others")
check(pantile("duplicates") == {"groups": []}, "groups of pictures of their own")

# Said on adding: what each of them is of the first.
ids = {}
for name, (image, how) in edits.items():
    added = pantile("add", saved(name, image), *AS_THEY_ARE)["added"][0]
    ids[name] = added["id"]
    alike = added["alike"]
    check(alike is not None, f"nothing is said of the {name} one")
    check(alike["distance"] == (1 if name == "touched" else 0), f"{name}: distance {alike['distance']}")
    # What is plainest may come from an edit that was added before.
    if name != "all":
        check(alike["id"] == 1 and alike["how"] == how, f"{name}: {alike}")
check(pantile("add", saved("again", first), *AS_THEY_ARE)["known"][0]["id"] == 1,
      "the very cells are stored again")

# Asked for.
groups = pantile("similar", "1")["groups"]
check(len(groups) == 1, f"{len(groups)} groups of one texture")
check({entry["id"]: entry["how"] for entry in groups[0]} ==
      {ids[name]: how for name, (_, how) in edits.items()}, f"similar 1 finds {groups[0]}")
check([entry["distance"] for entry in groups[0]] == [0] * 6 + [1], "the likest are not first")
check(ids["touched"] not in [entry["id"] for entry in pantile("similar", "1", "--within", "0")["groups"][0]],
      "a changed cell is no difference")
check(pantile("similar", "2") == {"groups": []}, "kelp is like something")

exact = pantile("duplicates")["groups"]
check([[entry["id"] for entry in group] for group in exact] ==
      [[1, *(ids[name] for name in edits if name != "touched")]], f"duplicates are {exact}")
near = pantile("duplicates", "--within", "2")["groups"]
check([entry["id"] for entry in near[0]][-1] == ids["touched"], "duplicates --within 2 leaves one out")

found = pantile("find", "like:1~0 -width:48", "--sort", "id")["textures"]
check([texture["id"] for texture in found] ==
      [ids[name] for name in edits if name not in ("touched", "enlarged")], "like: finds others")
check(pantile("find", "like:1")["total"] == len(edits), "like: without a distance finds others")

# A selection is a query too; what is removed is no longer found, and comes back.
check(pantile("remove", "like:1")["changed"] == len(edits), "a selection by likeness")
check(pantile("similar", "1") == {"groups": []}, "removed textures are found")
pantile("recover", "like:1 is:removed", expect=1)  # A removed one is like nothing,
pantile("recover", str(ids["mirrored"]))  # but by its number it comes back.
check(pantile("similar", "1")["groups"][0][0]["how"] == "mirrored left to right",
      "a recovered texture is not found")

# Touched up, a texture is compared as it is now.
pantile("touch", str(ids["mirrored"]), "--colour", "0", "--filled-rectangle", "0,0,9,9")
check(pantile("similar", "1") == {"groups": []}, "a texture is compared as it was")

# Mistakes are answered with what to do.
for words, sentence in ((["similar", "99"], "there is no texture 99"),
                        (["find", "like:99"], "there is no texture 99")):
    check(sentence in pantile(*words, expect=1)["error"]["message"], f"{words} is not refused so")
for words, hint in ((["similar"], "similar ID"),
                    (["similar", "shingle"], "find"),
                    (["similar", "1", "--within", "300"], "0 to 100"),
                    (["duplicates", "1"], "similar 1"),
                    (["find", "like:shingle"], "17~10"),
                    (["find", "lik:1"], "did you mean 'like:'"),
                    (["simmilar", "1"], "did you mean similar")):
    check(hint in pantile(*words, expect=2)["error"]["hint"], f"{words} has another hint")

# As a person reads it.
spoken = subprocess.run([program, "--library", library, "add", saved("half-turn", first.rotate(180)),
                         *AS_THEY_ARE], capture_output=True, text=True).stdout
check("you have this: 1 \"shingle\", turned upside down" in spoken, f"add says {spoken}")
spoken = subprocess.run([program, "--library", library, "similar", "1"],
                        capture_output=True, text=True).stdout
check("turned upside down" in spoken and "1 texture looks like texture 1" in spoken,
      f"similar says {spoken}")
