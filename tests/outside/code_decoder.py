#!/usr/bin/env python3
"""An independent decoder of text codes, written from docs/code-format.md alone; standard library only.

usage: code_decoder.py [--changes] VECTOR...    checks files such as those in tests/data/codes;
                                                with --changes also that no changed letter is accepted
"""
import sys
import zlib

import modelled_runs

DIGITS = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz"
BLOCK_SYMBOLS = [0, 2, 3, 5, 6, 7, 9, 10, 11]


class Refused(Exception):
    """The text is no code that an encoder writes."""


def require(condition, reason):
    if not condition:
        raise Refused(reason)


def number(symbols):
    value = 0
    for symbol in symbols:
        value = value * 58 + symbol
    return value


def stream_of(code):
    """The symbols of a code as it is written, every mark and line check verified and taken away."""
    lines = code.split("\n")
    require(lines[0].startswith("0I") and lines[-1].endswith("I"), "start or end mark")
    symbols = []
    for n, line in enumerate(lines, 1):
        require(len(line) <= 34 and line[0] == "0", "line mark")
        body = line[2 if n == 1 else 1:len(line) - (n == len(lines))]
        require(all(c in DIGITS for c in body) and len(body) >= 2, "letters")
        values = [DIGITS.index(c) for c in body]
        full = 30 if n == 1 else 31
        require(len(values) - 1 == full or (n == len(lines) and len(values) - 1 < full), "line length")
        total = 0
        for value in values[:-1]:
            total = (total + value) * 3 % 58
        require(values[-1] == (total + n) % 58, "line check")
        symbols += values[:-1]
    return symbols


def armoured_bytes(symbols, form):
    require(len(symbols) >= 10, "cut short")
    written = "".join(DIGITS[s] for s in symbols[:-6]).encode("ascii")
    require(number(symbols[-6:]) == zlib.crc32(written), "CRC-32")
    require(symbols[0] == form, "armour form")
    length = number(symbols[1:4])
    blocks = symbols[4:-6]
    require(len(blocks) == length // 8 * 11 + BLOCK_SYMBOLS[length % 8], "length")
    data = b""
    while len(data) < length:
        size = min(8, length - len(data))
        value = number(blocks[:BLOCK_SYMBOLS[size]])
        require(value < 256 ** size, "block")
        data += value.to_bytes(size, "big")
        blocks = blocks[BLOCK_SYMBOLS[size]:]
    return data


class Reader:
    def __init__(self, data):
        self.data = data
        self.at = 0

    def take(self, count):
        require(self.at + count <= len(self.data), "cut inside a field")
        taken = self.data[self.at:self.at + count]
        self.at += count
        return taken

    def byte(self):
        return self.take(1)[0]

    def varint(self):
        value = 0
        for i in range(4):
            byte = self.byte()
            value |= (byte & 127) << 7 * i
            if byte < 128:
                require(byte != 0 or i == 0, "overlong number")
                return value
        raise Refused("long number")

    def text(self, most_characters):
        size = self.varint()
        require(1 <= size <= 4 * most_characters, "text length")
        try:
            text = self.take(size).decode("utf-8")
        except UnicodeDecodeError:
            raise Refused("UTF-8") from None
        require(len(text) <= most_characters, "text length")
        return text


def part_of(code):
    """Number, number of parts, check value of the whole, and the slice."""
    reader = Reader(armoured_bytes(stream_of(code), 2))
    part, parts = reader.varint() + 1, reader.varint() + 1
    require(2 <= parts <= 8192 and part <= parts, "number of the part")
    whole = int.from_bytes(reader.take(4), "big")
    piece = reader.data[reader.at:]
    require(piece, "empty part")
    return part, parts, whole, piece


def joined_container(codes):
    """The container of codes that are the parts of one, in any order."""
    taken = [part_of(code) for code in codes]
    require(len({(parts, whole) for _, parts, whole, _ in taken}) == 1, "parts of several codes")
    slices = {part: piece for part, _, _, piece in taken}
    parts, whole = taken[0][1:3]
    require(sorted(slices) == list(range(1, parts + 1)), "a part is missing")
    data = b"".join(slices[part] for part in sorted(slices))
    share, more = divmod(len(data), parts)
    require(all(len(slices[part]) == share + (part <= more) for part in slices), "uneven parts")
    require(zlib.crc32(data) == whole, "CRC-32 of the whole")
    return data


def cells_of(method, data, count, colours):
    most = count if colours <= 16 else 2 * count
    if method == 1:
        require(len(data) < most, "deflated length")
        inflater = zlib.decompressobj(wbits=-15)
        data = inflater.decompress(data, most + 1)
        require(inflater.eof and not inflater.unused_data and len(data) <= most, "deflate")
    else:
        require(method == 0, "method")
    reader = Reader(data)
    cells = []
    while len(cells) < count:
        lead = reader.byte()
        if colours > 16:
            colour, length = lead, reader.varint() + 1
        elif lead & 15:
            colour, length = lead >> 4, lead & 15
        else:
            colour, length = lead >> 4, reader.varint() + 16
        require(colour < colours and len(cells) + length <= count, "run")
        require(not cells or cells[-1] != colour, "unmerged runs")
        cells += [colour] * length
    require(reader.at == len(data), "trailing bytes")
    return cells


def fingerprint_of(palette, transparent):
    state = 0xCBF29CE484222325
    data = [len(palette) - 1, transparent is not None, transparent or 0]
    for colour in palette:
        data += bytes.fromhex(colour[1:])
    for byte in data:
        state = (state ^ byte) * 0x100000001B3 % 2 ** 64
    return f"{state:016x}"


def textures_of(data, palettes):
    """All textures of a container; `palettes` has those that may be named, by their fingerprints."""
    if data[:1] != b"\2":
        return [texture_of(data)]
    try:
        return modelled_runs.textures_of(data[1:], palettes)
    except ValueError as refusal:
        raise Refused(str(refusal)) from None


def texture_of(data):
    reader = Reader(data)
    require(reader.byte() == 1, "container form")
    flags = reader.byte()
    require(flags & 0x80 == 0 and flags & 3 in (0, 1), "flags")
    width, height, colours = (reader.byte() + 1 for _ in range(3))
    require(colours >= 2, "colours")
    texture = {"width": width, "height": height, "palette": None, "transparent": None, "fingerprint": None}
    if flags & 3 == 1:
        require(flags & 4 == 0, "transparent index beside a fingerprint")
        texture["fingerprint"] = reader.take(8).hex()
    else:
        if flags & 4:
            texture["transparent"] = reader.byte()
            require(texture["transparent"] < colours, "transparent index")
        texture["palette"] = ["#" + reader.take(3).hex() for _ in range(colours)]
    for bit, field in ((8, "title"), (16, "author"), (32, "licence")):
        texture[field] = reader.text(120) if flags & bit else ""
    texture["tags"] = []
    if flags & 64:
        count = reader.varint()
        require(1 <= count <= 64, "number of tags")
        texture["tags"] = [reader.text(40) for _ in range(count)]
        written = [tag.encode() for tag in texture["tags"]]
        require(all(a < b for a, b in zip(written, written[1:])), "order of tags")
    method = reader.byte()
    texture["method"] = {0: "plain runs", 1: "deflated runs"}.get(method)
    texture["cells"] = cells_of(method, data[reader.at:], width * height, colours)
    return texture


def container_of(code):
    return armoured_bytes(stream_of(code), 1)


def decode(code, palettes):
    return textures_of(container_of(code), palettes)


def fields_of(path):
    fields, key = {}, None
    with open(path, encoding="utf-8") as file:
        for line in file.read().split("\n"):
            if line.startswith("#"):
                continue
            if ":" in line:
                key, value = line.split(":", 1)
                fields[key] = value.strip()
            else:
                fields[key] = (fields[key] + "\n" + line).strip()
    return fields


def check_vector(path):
    """The fields of a vector that the decoder reads otherwise."""
    wanted = fields_of(path)
    palette = wanted["palette"].split()
    transparent = None if wanted["transparent"] == "none" else int(wanted["transparent"])
    palettes = {fingerprint_of(palette, transparent): (palette, transparent)}
    got = decode(wanted["code"], palettes)[int(wanted.get("place", "0"))]
    data = container_of(wanted["code"])
    by_fingerprint = wanted["palette-form"] == "by-fingerprint"
    pairs = {
        "bytes": (data, bytes.fromhex(wanted["bytes"].replace("\n", " "))),
        "size": (f"{got['width']} {got['height']}", wanted["size"]),
        "palette": (got["palette"], None if by_fingerprint else palette),
        "fingerprint": (got["fingerprint"], fingerprint_of(palette, transparent) if by_fingerprint else None),
        "transparent": (got["transparent"], None if by_fingerprint else transparent),
        "cells": (got["cells"], [int(cell) for cell in wanted["cells"].split()]),
        "tags": (got["tags"], wanted["tags"].split()),
    }
    if "parts" in wanted:
        codes = ["0I" + code for code in wanted["parts"].split("0I")[1:]]
        pairs["parts"] = (joined_container([code.strip() for code in codes[::-1]]), data)
    for field in ("title", "author", "licence", "method"):
        pairs[field] = (got[field], wanted[field])
    return [field for field, (have, want) in pairs.items() if have != want]


def refuses_every_changed_letter(path):
    code = fields_of(path)["code"]
    for at, letter in enumerate(code):
        for other in DIGITS:
            if letter == other:
                continue
            try:
                decode(code[:at] + other + code[at + 1:], {})
            except Refused:
                continue
            return False
    return True


def main(arguments):
    changes = arguments[:1] == ["--changes"]
    paths = arguments[changes:]
    bad = 0
    for path in paths:
        try:
            wrong = check_vector(path)
        except Refused as refusal:
            wrong = [f"refused ({refusal})"]
        if changes and not refuses_every_changed_letter(path):
            wrong.append("a changed letter was accepted")
        if wrong:
            print(path, "differs:", ", ".join(wrong))
            bad += 1
    print(f"{len(paths) - bad} of {len(paths)} read as they should")
    return 1 if bad or not paths else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
