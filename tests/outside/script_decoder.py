#!/usr/bin/env python3
"""An independent decoder of stroke scripts, written from docs/load-format.md alone; standard library only.

usage: script_decoder.py LOAD...    prints the strokes of every slot of loads in card form:
                                    a line 'slot N', then for each stroke its colour and its cells, > before jumps
"""
import struct
import sys

STEPS = [(1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1), (0, -1), (1, -1)]
RIGHT, BACK, LEFT = 2, 4, 6


class Refused(Exception):
    """The script breaks a rule of the page."""


def require(condition, reason):
    if not condition:
        raise Refused(reason)


class Bits:
    """Section 3.1."""

    def __init__(self, data):
        self.bits = "".join(f"{byte:08b}" for byte in data)
        self.place = 0

    def take(self, count=1):
        taken = self.bits[self.place:self.place + count]
        require(len(taken) == count, "breaks off")
        self.place += count
        return int(taken or "0", 2)

    def number(self, k):
        z = 0
        while not self.take():
            z += 1
            require(z + k <= 15, "a number that is too long")
        return 2**k * (2**z - 1) + self.take(z + k)

    def way(self, k):
        n = self.number(k)
        return (n + 1) // 2 if n % 2 else -(n // 2)

    def length(self):
        for cells in range(1, 5):
            if not self.take():
                return cells
        return 5 + self.number(0)

    def finish(self):
        rest = self.bits[self.place:]
        require(len(rest) < 8 and "1" not in rest, "bits behind the end")


class Script:
    """Sections 3, 3.2 and 3.3."""

    def __init__(self, entry, data, jump):
        self.width, self.height = entry[24] + 1, entry[25] + 1
        self.colours = entry[28] + 1
        self.model, self.turns = entry[31] & 15, not entry[31] & 16
        self.jump = jump
        self.bits = Bits(data)
        self.cell = (0, 0)

    def strokes(self):
        strokes = []
        picked = None
        while self.bits.take():
            as_runs = self.bits.take()
            colour = self.bits.take((self.colours - 1).bit_length())
            require(colour < self.colours and colour != picked, "picks what cannot be")
            picked = colour
            count = self.bits.number(2) + 1
            paths = self.runs(count) if as_runs else (self.stroke() for _ in range(count))
            strokes += [(colour, path) for path in paths]
        self.bits.finish()
        return strokes

    def go_to(self, cell):
        require(0 <= cell[0] < self.width and 0 <= cell[1] < self.height, "leaves the grid")
        self.cell = cell
        return cell

    def runs(self, count):
        gaps, mores = self.bits.take(2), self.bits.take(2)
        earliest = 0
        for _ in range(count):
            place = earliest + self.bits.number(gaps)
            row, column = divmod(place, self.width)
            path = [("", self.go_to((column, row)))]
            more = self.bits.number(mores)
            if more:
                path.append(("", self.go_to((column + more, row))))
            last = self.cell[0]
            earliest = row * self.width + last + (1 if last == self.width - 1 else 2)
            yield path

    def move(self, k):
        across = self.bits.way(k)
        down = self.bits.way(k)
        return (self.cell[0] + across, self.cell[1] + down)

    def direction(self):
        return 2 * self.bits.take(2) if self.model in (0, 2) else self.bits.take(3)

    def piece(self, direction, path):
        cells = self.bits.length()
        across, down = STEPS[direction]
        path.append(("", self.go_to((self.cell[0] + cells * across, self.cell[1] + cells * down))))

    def stroke(self):
        path = [("", self.go_to(self.move(3)))]
        if self.model == 3 and self.turns:
            self.jumping(path)
        elif not self.bits.take():
            direction = self.direction()
            self.piece(direction, path)
            if self.turns:
                self.turning(direction, path)
        return path

    def jumping(self, path):
        while True:
            if not self.bits.take():
                self.piece(self.bits.take(3), path)
                continue
            to = self.move(2)
            if to == self.cell:
                return
            far = max(abs(to[0] - self.cell[0]), abs(to[1] - self.cell[1]))
            require(far <= self.jump, "jumps too far")
            path.append((">", self.go_to(to)))

    def turning(self, direction, path):
        side = LEFT
        while True:
            if self.model == 1:
                turn = self.bits.take(3)
            elif self.bits.take():
                turn = side = RIGHT if side == LEFT else LEFT
            elif self.bits.take():
                turn = side
            else:
                turn = BACK if self.bits.take() else 0
            if not turn:
                return
            direction = (direction + turn) % 8
            self.piece(direction, path)


def slots_of(load):
    """Sections 2.1 and 2.2, as far as scripts need them."""
    require(load[:4] == b"PTLD" and load[4] == 1, "no load")
    for index in range(load[6]):
        entry = load[64 + 96 * index:64 + 96 * (index + 1)]
        require(entry[43] == 2, "script encoding")
        offset, length = struct.unpack_from("<II", entry)
        before = 3 * (entry[28] + 1) + entry[44] * entry[45] + (5 if entry[31] & 128 else 0)
        yield Script(entry, load[offset + before:offset + length], load[15] // entry[40])


def main(paths):
    for path in paths:
        with open(path, "rb") as file:
            load = file.read()
        for number, script in enumerate(slots_of(load), 1):
            print("slot", number)
            for colour, cells in script.strokes():
                print(colour, *(f"{how}{cell[0]},{cell[1]}" for how, cell in cells))


if __name__ == "__main__":
    main(sys.argv[1:])
