"""Container form 2 decoded from docs/code-format.md alone, sections 14 and 15, which are read for their tables."""
import pathlib
import re

PAGE = pathlib.Path(__file__).parents[2] / "docs/code-format.md"
WORD = 2 ** 64
GOLDEN = 0x9E3779B97F4A7C15


def require(condition, reason):
    if not condition:
        raise ValueError(reason)


def clamp(value, least, most):
    return max(least, min(value, most))


def tables():
    """The indented blocks of number rows in the two sections, and the text that words learn from."""
    page = PAGE.read_text(encoding="utf-8")
    section = page[page.index("\n## 14. "):]
    blocks = re.findall(r"(?<=\n\n)((?:    -?\d+(?: -?\d+)*\n)+)", section)
    numbers = [[[int(n) for n in row.split()] for row in block.strip().split("\n")] for block in blocks]
    primer = re.search(r"nothing is written:\n\n((?:    .*\n)+)", section)[1]
    return numbers, " ".join(line.strip() for line in primer.strip().split("\n"))


(KNOT_ROWS, GRID_ROWS, LARGER_ROWS, NEGATIVE_ROWS), PRIMER = tables()
KNOTS = [n for row in KNOT_ROWS for n in row]
assert len(KNOTS) == 33 and len(GRID_ROWS) == 61 and len(LARGER_ROWS) == 24 and len(NEGATIVE_ROWS) == 3


def squash(x):
    j, f = (x + 2048) >> 7, (x + 2048) & 127
    return (KNOTS[j] * (128 - f) + KNOTS[j + 1] * f + 64) >> 7


def logits():
    table, x = [], -2047
    for q in range(4096):
        while x < 2047 and squash(x) < 16 * q + 8:
            x += 1
        table.append(x)
    return table


LOGITS = logits()


class Coder:
    """Reads decisions; keeps what an encoder would have written."""

    def __init__(self, data):
        self.data, self.at, self.written = data, 0, bytearray()
        self.low, self.high, self.value = 0, WORD - 1, 0
        for _ in range(8):
            self.value = self.value * 256 + self.next_byte()

    def next_byte(self):
        self.at += 1
        return self.data[self.at - 1] if self.at <= len(self.data) else 0

    def decide(self, p=32768):
        p = clamp(p, 24, 65536 - 24)
        middle = self.low + ((self.high - self.low) >> 16) * p
        yes = self.value <= middle
        if yes:
            self.high = middle
        else:
            self.low = middle + 1
        while self.low >> 56 == self.high >> 56:
            self.written.append(self.low >> 56)
            self.low = self.low * 256 % WORD
            self.high = (self.high * 256 + 255) % WORD
            self.value = (self.value * 256 + self.next_byte()) % WORD
        return yes

    def number(self, bits):
        value = 0
        for _ in range(bits):
            value = value * 2 + self.decide()
        return value

    def count(self):
        bits = 1
        while bits < 16 and self.decide():
            bits += 1
        return 2 ** (bits - 1) + self.number(bits - 1)

    def whole(self):
        for zeros in range(8, -1, -1):
            unit = 256 ** zeros
            tail = -(-self.low // unit) * unit
            if tail <= self.high:
                break
        return bytes(self.written + tail.to_bytes(8, "big")).rstrip(b"\0")


class Silent:
    """Takes the decisions that are dictated to it."""

    def __init__(self):
        self.bits = []

    def decide(self, _):
        return self.bits.pop(0)


class Learned:
    __slots__ = ("yes", "seen", "tag")

    def __init__(self, yes=32768, seen=0, tag=0):
        self.yes, self.seen, self.tag = yes, seen, tag

    def learn(self, bit):
        self.yes += ((65535 if bit else 0) - self.yes) * (655360 // (10 * self.seen + 13)) >> 16
        self.seen = min(self.seen + 1, 120)


class Mixer:
    def __init__(self, contexts, table_bits, weights):
        self.bits = table_bits
        self.tables = [{} for _ in range(contexts)]
        self.weights = weights
        self.last = [[8192 // len(weights)] * len(weights) for _ in weights[0]]

    def place(self, table, number):
        spread = number * GOLDEN % WORD
        tag = spread >> (56 - self.bits) & 255
        found = self.tables[table].get(spread >> (64 - self.bits))
        if found is None or found.tag != tag:
            found = self.tables[table][spread >> (64 - self.bits)] = Learned(tag=tag)
        return found

    def decide(self, coder, numbers, choices):
        places = [self.place(i, number) for i, number in enumerate(numbers)]
        inputs = [LOGITS[p.yes >> 4] if p.seen else 0 for p in places] + [256]
        chosen = [self.weights[k][choice] for k, choice in enumerate(choices)]
        last = self.last[choices[0]]
        x = [clamp(sum(w * i for w, i in zip(row, inputs)) >> 13, -2047, 2047) for row in chosen]
        p = squash(clamp(sum(w * i for w, i in zip(last, x)) >> 13, -2047, 2047))
        yes = coder.decide(p)
        bit = 65536 if yes else 0
        for k, row in enumerate(chosen):
            missed = bit - squash(x[k]) >> 1
            for i, value in enumerate(inputs):
                row[i] = clamp(row[i] + (missed * value + 2 ** 16 >> 17), -32768, 32767)
        missed = bit - p >> 1
        for k, value in enumerate(x):
            last[k] = clamp(last[k] + (missed * value + 2 ** 17 >> 18), -32768, 32767)
        for learned in places:
            learned.learn(yes)
        return yes


class Words:
    def __init__(self):
        start = [8192 * 35 // 100] * 6 + [0]
        self.mixer = Mixer(6, 12, [[start[:] for _ in range(n)] for n in (256, 3)])
        self.before = [b""] * 4
        self.letters = 12000
        silent = Silent()
        primer = PRIMER.encode()
        for i, byte in enumerate(primer):
            silent.bits = [bool(byte >> bit & 1) for bit in range(7, -1, -1)]
            self.letter(silent, 0, primer[:i])

    def letter(self, coder, field, text):
        old = self.before[field]
        expected = None
        if old.startswith(text):
            expected = 256 + (old[len(text)] if len(old) > len(text) else 0)
        behind = [text[-back] if len(text) >= back else 0 for back in (1, 2, 3)]
        one = behind[0]
        two = one * 256 + behind[1]
        three = two * 256 + behind[2]
        node = 1
        for bit in range(7, -1, -1):
            held = expected is not None and expected >> bit + 1 == node
            following = 1 + (expected >> bit & 1) if held else 0
            numbers = [node, field * 256 + node, one * 256 + node, two * 256 + node, three * 256 + node,
                       following * 256 + min(len(text), 15)]
            node = node * 2 + self.mixer.decide(coder, numbers, [node, following])
        return node & 255

    def text(self, coder, field, most):
        text = b""
        while True:
            require(self.letters > 0, "letters")
            self.letters -= 1
            byte = self.letter(coder, field, text)
            if byte == 0:
                break
            text += bytes([byte])
            require(len(text) <= 4 * most, "text length")
        self.before[field] = text
        decoded = text.decode("utf-8")
        require(len(decoded) <= most, "text length")
        return decoded

    def read(self, coder):
        words = {name: self.text(coder, field, 120) for field, name in enumerate(("title", "author", "licence"))}
        count = coder.count() - 1
        require(count <= 64, "number of tags")
        words["tags"] = [self.text(coder, 3, 40) for _ in range(count)]
        written = [tag.encode() for tag in words["tags"]]
        require(all(a < b for a, b in zip(written, written[1:])), "order of tags")
        return words


def halved(value):
    return value // 2 if value >= 0 else -(-value // 2)


class Differences:
    def __init__(self):
        self.larger = [[Learned(256 * n, 12) for n in row] for row in LARGER_ROWS]
        self.negative = [[Learned(256 * n, 12) for n in row] for row in NEGATIVE_ROWS]
        self.bits = 0

    @staticmethod
    def decide(coder, learned):
        yes = coder.decide(learned.yes)
        learned.learn(yes)
        return yes

    def read(self, coder, channel):
        row = self.larger[channel * 8 + min(self.bits, 7)]
        bits = 0
        while bits < 8 and self.decide(coder, row[bits]):
            bits += 1
        self.bits = bits
        if bits == 0:
            return 0
        negative = self.decide(coder, self.negative[channel][min(bits, 3) - 1])
        size = 2 ** (bits - 1) + coder.number(bits - 1)
        return -size if negative else size


def palette_of(coder):
    size = coder.number(8) + 1
    require(size >= 2, "colours")
    transparent = None
    if coder.decide():
        transparent = size - 1 if coder.decide() else coder.number(8)
        require(transparent < size, "transparent index")
    differences, before, colours = Differences(), (0, 0, 0), []
    for i in range(size):
        if i == transparent and coder.decide():
            colours.append((0, 0, 0))
            continue
        r, g, b = before
        green = g + differences.read(coder, 0)
        moved = green - g
        red = clamp(r + moved, 0, 255) + differences.read(coder, 1)
        blue = clamp(b + moved - halved(red - r - moved), 0, 255) + differences.read(coder, 2)
        require(all(0 <= v <= 255 for v in (red, green, blue)), "channel")
        before = (red, green, blue)
        colours.append(before)
    return colours, transparent


def step(difference):
    classes = sum(abs(difference) >= bound for bound in (1, 4, 10, 22, 45, 90))
    return classes + 7 if difference < 0 else classes


def packed(*fields):
    value = 0
    for number, bits in fields:
        value = value << bits | number
    return value


def weights_of_grids():
    rows = [[128 * n for n in row] for row in GRID_ROWS]
    return [rows[:12], rows[12:60], [rows[60][:] for _ in range(90)]]


class Grids:
    def __init__(self, cells):
        bits = 10
        while bits < 16 and 2 ** bits < 2 * cells:
            bits += 1
        self.mixer = Mixer(15, bits, weights_of_grids())
        self.history, self.places = [], [[-1] * 4096, [-1] * 4096]
        self.before, self.questions = None, 100000

    def read(self, coder, width, height, palette, transparent, number):
        base, history = len(self.history), self.history
        before = self.before[1] if self.before and self.before[0] == (width, height) else None
        light = [(2 * r + 5 * g + b) >> 3 for r, g, b in palette]
        redder = [r - g for r, g, _ in palette]
        bluer = [b - g for _, g, b in palette]
        if transparent is not None:
            light[transparent], redder[transparent], bluer[transparent] = -300, 0, 0
        order, often = list(range(len(palette))), [0] * len(palette)
        pointers, lengths = [None, None], [0, 0]

        def at(x, y):
            if not 0 <= x < width or y < 0:
                return None
            place = base + y * width + x
            return history[place] if place < len(history) else None

        def a(cell, o):
            return 2 if cell is None else int(cell == o)

        for y in range(height):
            for x in range(width):
                def stand(dx, dy, other):
                    cell = at(x + dx, y + dy)
                    return other if cell is None else cell
                w = stand(-1, 0, stand(0, -1, 0))
                n = stand(0, -1, w)
                nw, ne, ww, nn = stand(-1, -1, n), stand(1, -1, n), stand(-2, 0, w), stand(0, -2, n)
                nww, nee, nne = stand(-2, -1, nw), stand(2, -1, ne), stand(1, -2, ne)
                narrow = packed((w == nw, 1), (n == nw, 1), (n == ne, 1), (w == n, 1))
                equal = packed((ne == nne, 1), (ww == nw, 1), (nww == nw, 1), (nee == ne, 1), (w == ne, 1),
                               (nn == n, 1), (ww == w, 1), (narrow, 4))
                slope = light[w] + light[n] - light[nw]
                mean = (2 * light[w] + 2 * light[n] + light[nw] + light[ne] + light[ww] + light[nn]) >> 3
                halves = ((light[w] + light[n]) >> 1, (light[n] + light[ne]) >> 1, (light[nn] + light[ww]) >> 1)
                around = [light[v] for v in (w, n, nw, ne)]
                contrast = step(max(around) - min(around))
                m1 = at(width - 1 - x, y) if 2 * x >= width else None
                m2 = at(x, height - 1 - y) if 2 * y >= height else None
                p1 = at(x - width // 2, y) if x >= width // 2 else None
                p2 = at(x, y - height // 2) if y >= height // 2 else None
                p3 = at((x + width // 2) % width, y - height // 2) if y >= height // 2 else None
                b = history[before + len(history) - base] if before is not None else None
                keys = [packed(*((v, 8) for v in group)) for group in ((w, n, nw, ne, ww, nn, nee, nww), (w, n, nw, ne))]
                hashes = [(key * GOLDEN % WORD) >> 52 for key in keys]
                foretold = []
                for i in (0, 1):
                    if lengths[i]:
                        pointers[i] += 1
                    else:
                        pointers[i] = self.places[i][hashes[i]]
                    foretold.append(history[pointers[i]] if pointers[i] >= 0 else None)

                def state(i, o, most):
                    if foretold[i] is None:
                        return 0
                    return (2 if foretold[i] == o else 1) + 2 * min(lengths[i], most)

                candidates = list(dict.fromkeys([w, n, ne, nw, ww, nn, nee, nww, nne] + order))
                asked = min(len(candidates) - 1, 20)
                for place, o in enumerate(candidates[:asked]):
                    require(self.questions > 0, "questions")
                    self.questions -= 1
                    r, r3, po = min(place, 11), min(place, 3), packed((number & 255, 8), (o, 8))
                    own = light[o]
                    numbers = [
                        packed((equal, 11), (r, 4)),
                        packed((po, 16), (w, 8), (n, 8)),
                        packed((po, 16), (w, 8), (ww, 8), (n, 8), (nn, 8)),
                        packed((po, 16), (w, 8)),
                        packed((po, 16), (n, 8)),
                        packed((step(own - light[w]), 4), (step(own - light[n]), 4), (r3, 2)),
                        packed((step(own - slope), 4), (step(own - mean), 4), (contrast, 4)),
                        packed(*((step(own - light[v]), 4) for v in (w, n, ne, nw))),
                        packed((step(redder[o] - redder[w]), 4), (step(bluer[o] - bluer[w]), 4),
                               (step(redder[o] - redder[n]), 4), (step(bluer[o] - bluer[n]), 4)),
                        packed((a(m1, o), 2), (a(m2, o), 2), (r3, 2)),
                        packed((a(p1, o), 2), (a(p2, o), 2), (a(p3, o), 2), (a(b, o), 2), (r3, 2)),
                        packed((state(0, o, 15), 6), (state(1, o, 7), 6)),
                        packed((po, 16), (n, 8), (ne, 8), (nee, 8), (w, 8)),
                        packed((po, 16), ((slope >> 3) + 128, 8)),
                        packed(*((step(own - h), 4) for h in halves), (contrast, 4)),
                    ]
                    q = 0 if foretold[0] is None else 9 if foretold[0] != o else 1 + min(lengths[0], 7)
                    choices = [r, narrow + 16 * min(r, 2), 9 * q + 3 * a(m1, o) + a(m2, o)]
                    if self.mixer.decide(coder, numbers, choices):
                        cell = o
                        break
                else:
                    rest = candidates[asked:]
                    chosen = coder.number((len(rest) - 1).bit_length())
                    require(chosen < len(rest), "place in the rest")
                    cell = rest[chosen]
                for i in (0, 1):
                    lengths[i] = lengths[i] + 1 if foretold[i] == cell else 0
                    self.places[i][hashes[i]] = len(history)
                history.append(cell)
                often[cell] += 1
                place = order.index(cell)
                while place > 0 and often[order[place - 1]] < often[cell]:
                    order[place - 1], order[place] = order[place], order[place - 1]
                    place -= 1
        self.before = ((width, height), base)
        return history[base:]


def named_palette(coder, palettes):
    fingerprint = f"{coder.number(32) << 32 | coder.number(32):016x}"
    require(fingerprint in palettes, "the palette is not known")
    colours, transparent = palettes[fingerprint]
    return [tuple(bytes.fromhex(colour[1:])) for colour in colours], transparent, fingerprint


def textures_of(stream, palettes_known):
    """The textures in the bytes behind the form number."""
    coder = Coder(stream)
    count = coder.count()
    require(count <= 64, "textures")
    sizes = []
    for i in range(count):
        if i and coder.decide():
            sizes.append(sizes[-1])
            continue
        kind = coder.number(2)
        sizes.append((16 << kind,) * 2 if kind < 3 else (coder.number(8) + 1, coder.number(8) + 1))
        require(sum(w * h for w, h in sizes) <= 32768, "cells")
    require(sum(w * h for w, h in sizes) <= 32768, "cells")
    has_words, by_fingerprint = coder.decide(), coder.decide()
    words, palettes, textures = Words() if has_words else None, [], []
    grids = Grids(sum(w * h for w, h in sizes))
    for width, height in sizes:
        texture = {"width": width, "height": height, "title": "", "author": "", "licence": "", "tags": [],
                   "method": "modelled runs"}
        if has_words:
            texture.update(words.read(coder))
        back = coder.count() if palettes else 1
        require(back <= len(palettes) + 1, "palette")
        if back == len(palettes) + 1:
            made = named_palette(coder, palettes_known) if by_fingerprint else palette_of(coder) + (None,)
            palettes.append(made)
            number = len(palettes) - 1
        else:
            number = len(palettes) - back
        colours, transparent, texture["fingerprint"] = palettes[number]
        texture["palette"] = None if by_fingerprint else ["#%02x%02x%02x" % colour for colour in colours]
        texture["transparent"] = None if by_fingerprint else transparent
        texture["cells"] = grids.read(coder, width, height, colours, transparent, number)
        textures.append(texture)
    require(coder.whole() == bytes(stream), "not the shortest stream")
    return textures
