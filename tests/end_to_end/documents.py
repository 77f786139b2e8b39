"""Every command line of the pages, run on the sample library: none may be refused, and where a page shows what is
printed, that is compared. README.md's own tour is run by tour.py.

usage: documents.py PANTILE SOURCE-FOLDER
"""

import json
import math
import os
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from needed import needed

needed("python3-pil", module="PIL")
from PIL import Image

PANTILE, SOURCE = str(Path(sys.argv[1]).resolve()), Path(sys.argv[2]).resolve()
SAMPLES = SOURCE / "sample_library"

# What the capitals stand for, in the order in which they come. A page with others fails until it is told here.
PLACES = {
    "pantile add sample_library/pictures/lighthouse-at-dusk.png --colours 8 --dither NAME": ["optimal"],
    "pantile backup FILE": ["copy.db"],
    "pantile restore FILE": ["copy.db"],
    "pantile restore BACKUP": ["copy.db"],
    "pantile export all --as json --into DIR": ["plain"],
    "pantile check --repair FILE": ["repaired.db"],
    "pantile board set NAME --display 96x64": ["flash-32k"],
    "pantile load write NAME --into DIR --as header": ["evening", "written"],
    "pantile canvas set NAME --pitch 8 --grid-at 100,60 --bar-at 700,60": ["cells-64"],
    "pantile canvas calibrate NAME --board B --into DIR": ["cells-64", "flash-32k", "calibration"],
    "pantile canvas calibrate NAME --near … --far … --pair-column … --pair-row …":
        ["cells-64", "1,1", "37,37", "7", "9"],  # As on cells of 9 counts, the first at 103,62.
    "pantile show ID": ["17"],
    "pantile seams ID": ["17"],
    "pantile help COMMAND": ["touch"],
}
# Not whole commands: their words and options have to be there, no more.
FORMS = {"pantile touch ID", "pantile [--library FILE] [--json] [--quiet] COMMAND …"}
# Pages whose lines need more than the samples.
BEFORE = {
    "docs/choosing.md": ["shelf put Shore 17 21 3 40"],
    "docs/keeping.md": ["touch 21 --seed 7 --noise 40,1,2,3", "set 21 --stars 5", "tag 21 17 +foam", "remove 17 3",
                        "tags rename foam froth"],
    "docs/player.md": ["load make evening 1 2 --board flash-32k"],
}
# Options of other programs that the pages name.
OTHERS = {"--with-sanitizers", "--install", "--prefix", "--test-dir", "--theme", "--check", "--again",
          "--none", "--gtest"}


def run(folder: Path, words: list[str]) -> subprocess.CompletedProcess:
    return subprocess.run([PANTILE, *words], cwd=folder, capture_output=True, text=True, check=False,
                          env={**os.environ, "NO_COLOR": "1", "PANTILE_LIBRARY": str(folder / "library.db")})


def must(folder: Path, words: list[str]) -> str:
    done = run(folder, words)
    if done.returncode:
        sys.exit(f"pantile {shlex.join(words)}: exit code {done.returncode}\n{done.stdout}{done.stderr}")
    return done.stdout


def make_base(folder: Path) -> None:
    """Samples that are soon drawn, and four pictures; 17 is the buoy and 21 the shingle that the pages speak of."""
    folder.mkdir()
    files = sorted([*(SAMPLES / "textures").glob("[13]*/*.png"), SAMPLES / "textures/64/shingle.png"])
    for place, name in ((17, "channel-buoy"), (21, "shingle")):
        files.sort(key=lambda file: file.stem == name)
        files.insert(place - 1, files.pop())
    must(folder, ["--quiet", "add", *map(str, files)])
    (folder / "sample_library").symlink_to(SAMPLES)
    for ours, name in (("lighthouse-at-dusk", "lighthouse.jpg"), ("harbour-wall", "pier-in-fog.jpg"),
                       ("rock-pool", "gull.png"), ("rock-pool", "mossy-stone.png")):
        with Image.open(SAMPLES / "pictures" / f"{ours}.png") as picture:
            picture = picture.convert("RGB")
            (picture.resize((640, 512)) if name == "lighthouse.jpg" else picture).save(folder / name)
    with Image.open(SAMPLES / "textures/16/starfish.png") as picture:
        cells = picture.convert("RGBA")
    white = Image.new("RGB", cells.size, "white")
    white.paste(cells, mask=cells.getchannel("A"))
    white.resize((192, 192), Image.Resampling.NEAREST).save(folder / "starfish-from-the-forum.jpg", quality=85)


def code_blocks(text: str) -> list[list[str]]:
    """The lines of each block of code, fenced or indented by four blanks."""
    blocks, fence, indented = [], False, False
    for line in text.split("\n"):
        if line.startswith("```"):
            fence = not fence
            blocks.append([])
        elif fence:
            blocks[-1].append(line)
        elif line.startswith("    ") and (indented or not line[4:].startswith(("-", "|"))):
            if not indented:
                blocks.append([])
            blocks[-1].append(line[4:])
        indented = not fence and line.startswith("    ")
    return [block for block in blocks if block]


def commands_of(text: str) -> list[tuple[str, str, list[str]]]:
    """(command, what is said behind it, what it prints) of each command line in a page, in order."""
    found = []
    for block in code_blocks(text):
        for number, line in enumerate(block):
            if re.match(r"(\$ )?pantile ", line):
                command, _, remark = line.removeprefix("$ ").partition("  #")
                printed = []
                if line.startswith("$ "):
                    printed = block[number + 1:]
                    ends = [place for place, other in enumerate(printed) if other.startswith("$ ")]
                    printed = printed[:ends[0]] if ends else printed
                found.append((text.index(line), command.strip(), remark, printed))
    prose = re.sub(r"^```.*?^```", lambda block: " " * len(block[0]), text, flags=re.MULTILINE | re.DOTALL)
    for inline in re.finditer(r"`(pantile\s[^`]+)`", prose):
        found.append((inline.start(), " ".join(inline[1].split()), "", []))
    return [entry[1:] for entry in sorted(found, key=lambda entry: entry[0])]


def filled(command: str) -> list[str]:
    """The words of a command, with its capitals filled in."""
    values = iter(PLACES.get(command, ()))
    capital = re.compile(r"[A-Z]{1,}|…")
    words = [next(values, word) if capital.fullmatch(word) else word for word in shlex.split(command)[1:]]
    left = [word for word in words if capital.fullmatch(word)] + list(values)
    if left:
        sys.exit(f"{command}: say in PLACES of this test what {left[0]} stands for")
    return words


def check_page(page: str, text: str, folder: Path, helps: dict[str, str]) -> int:
    ran = 0
    for before in BEFORE.get(page, ()):
        must(folder, shlex.split(before))
    for command, remark, printed in commands_of(text):
        words = shlex.split(command)
        alone = len(words) == 2 and words[1] in helps  # A command that is only named, unless it needs no more.
        if command in FORMS or alone and words[1] not in ("history", "undo", "redo", "check"):
            check_form(page, command.removeprefix("pantile "), helps)
            continue
        output = must(folder, filled(command))
        ran += 1
        # A remark that quotes quotes the output.
        for quoted in re.findall(r'"([^"]+)"', remark):
            if quoted not in output:
                sys.exit(f"{page}: {command} does not print {quoted!r} but\n{output}")
        if printed and output.splitlines()[:len(printed)] != printed:
            sys.exit(f"{page}: {command} prints\n{output}")
    return ran


def check_form(page: str, form: str, helps: dict[str, str]) -> None:
    """A form such as 'load list|show NAME': its words and options stand in the command's help."""
    command = form.split()[0]
    if command.startswith(("-", "[")) or command == "help":
        return
    if command not in helps:
        sys.exit(f"{page}: there is no command {command!r}")
    known = set(re.findall(r"[a-z0-9-]+", helps[command]))
    for word in re.findall(r"(?<![\w#'+-])(?:--)?[a-z][a-z0-9-]*(?![\w=])", form):
        if word not in known:
            sys.exit(f"{page}: `{form}`: the help of {command} has no {word}")


def check_options(page: str, text: str, helps: dict[str, str]) -> int:
    """Every option in code letters is one of the program, or of another that is named above."""
    known = set(re.findall(r"--[a-z0-9-]+", "\n".join(helps.values()))) | OTHERS
    in_code = " ".join(re.findall(r"`([^`\n]+)`", text))
    named = set(re.findall(r"(?<![\w,-])--[a-z][a-z0-9-]*", in_code))
    if unknown := named - known:
        sys.exit(f"{page}: there is no option {', '.join(sorted(unknown))}")
    return len(named)


def check_scripts(page: str, text: str) -> None:
    """What is to be run from the checkout or the build is there, with its options."""
    targets = "\n".join(path.read_text(encoding="utf-8") for path in SOURCE.glob("**/CMakeLists.txt")
                        if "build" not in path.relative_to(SOURCE).parts[0])
    for line in (line for block in code_blocks(text) for line in block):
        words = line.partition("  #")[0].split()
        if words and words[0].startswith(("tests/", "sample_library/")):
            script = SOURCE / words[0]
            if not os.access(script, os.X_OK):
                sys.exit(f"{page}: {words[0]} is no program")
            for option in (word for word in words[1:] if word.startswith("--")):
                if option not in script.read_text(encoding="utf-8"):
                    sys.exit(f"{page}: {words[0]} has no {option}")
        elif words and words[0].startswith("build/bin/") and not re.search(rf"\b{words[0][10:]}\b", targets):
            sys.exit(f"{page}: the build makes no {words[0]}")


def check_dithers(text: str, folder: Path) -> int:
    """The table of conversion.md: what `add` says of the lighthouse by some dithers."""
    rows = re.findall(r"^\| ([a-z0-9-]+) \| ([\d.]+) \| ([\d.]+) \| (\d+) \| (.*?) \|$", text, re.MULTILINE)
    for dither, plain, perceived, size, time in rows:
        answer = json.loads(must(folder, ["--json", "add", str(SAMPLES / "pictures/lighthouse-at-dusk.png"),
                                          "--colours", "8", "--dither", dither]))
        added = answer["added"][0]
        must(folder, ["remove", str(added["id"])])
        must(folder, ["purge", "--for-good"])
        minutes, seconds = divmod(round(added["draw_seconds"]), 60)
        got = (f"{added['difference']['plain']:.1f}", f"{added['difference']['perceived']:.1f}",
               str(added["load_bytes"]), f"{minutes} min {seconds} s" if minutes else f"{seconds} s")
        if got != (plain, perceived, size, time):
            sys.exit(f"docs/conversion.md: {dither} gives {got}")
    return len(rows)


def check_boards(text: str, folder: Path) -> int:
    """The table of choosing.md: the boards that a new library has."""
    rows = re.findall(r"^\| `([a-z0-9-]+)` \| (\w+) \| (\d+) \| ([\dx ]+) \|", text, re.MULTILINE)
    told = {name: (memory, int(slots), math.prod(map(int, size.split("x")))) for name, memory, slots, size in rows}
    boards = json.loads(must(folder, ["--json", "board", "list"]))
    if told != {board["name"]: (board["memory"], board["slots"], board["bytes"]) for board in boards}:
        sys.exit(f"docs/choosing.md: a new library has {boards}")
    return len(rows)


def check_mistakes(folder: Path) -> None:
    """What the pages show of messages."""
    told = run(folder, ["find", "kelp tagg:wet"])
    block = next(block for block in code_blocks((SOURCE / "docs/query-language.md").read_text(encoding="utf-8"))
                 if block[0].startswith("column"))
    shown = [line.strip() for line in block]
    if [line.strip() for line in told.stderr.removeprefix("pantile: ").splitlines()] != shown or told.returncode != 2:
        sys.exit(f"docs/query-language.md shows another message than\n{told.stderr}")


def check_itself() -> None:
    text = "a `pantile show\nID` b\n\n    pantile fit all  # says \"x\"\n\n```\n$ pantile add x\nAdded 1\n$ pantile undo\n```\n"
    assert commands_of(text) == [("pantile show ID", "", []), ("pantile fit all", ' says "x"', []),
                                 ("pantile add x", "", ["Added 1"]), ("pantile undo", "", [])], commands_of(text)
    for fault in (lambda: filled("pantile show NUMBER"), lambda: check_form("p", "load lost", {"load": "load list"}),
                  lambda: check_form("p", "load --lost", {"load": "load list --last"}),
                  lambda: check_options("p", "`--lost`", {"load": "--last"}),
                  lambda: check_scripts("p", "    build/bin/no_such_program 3\n"),
                  lambda: check_scripts("p", "    tests/run --no-such-option\n")):
        try:
            fault()
        except SystemExit:
            continue
        raise AssertionError("a fault was not seen")


def main() -> None:
    check_itself()
    with tempfile.TemporaryDirectory() as made:
        base = Path(made) / "base"
        make_base(base)
        listed = must(base, ["--help"])
        helps = {command: must(base, ["help", command])
                 for command in re.findall(r"^  ([a-z]+) ", listed.split("For every command")[0], re.MULTILINE)}
        helps["every command"] = listed
        ran = options = 0
        pages = [SOURCE / "README.md", SOURCE / "DEVELOPERS.md", *sorted(SOURCE.glob("docs/*.md")),
                 *sorted(SOURCE.glob("src/*/README.md")), SAMPLES / "README.md"]
        for path in pages:
            page, text = str(path.relative_to(SOURCE)), path.read_text(encoding="utf-8")
            options += check_options(page, text, helps)
            check_scripts(page, text)
            if page == "README.md":
                text = re.sub(r"```console\n.*?```", "", text, flags=re.DOTALL)
            if commands_of(text):
                folder = Path(made) / page.replace("/", "-")
                shutil.copytree(base, folder, symlinks=True)
                if page == "docs/conversion.md":
                    assert check_dithers(text, folder) > 3
                if page == "docs/choosing.md":
                    assert check_boards(text, folder) > 2
                ran += check_page(page, text, folder, helps)
        listing = (SOURCE / "docs/command-line.md").read_text(encoding="utf-8")
        forms = re.findall(r"^\| (`.*?) \| ", listing, re.MULTILINE)
        forms = [form.replace("\\|", "|") for row in forms for form in re.findall(r"`([^`]+)`", row)]
        for form in (form for form in forms if form.split()[0] in helps):
            check_form("docs/command-line.md", form, helps)
        check_mistakes(base)
    assert ran >= 25 and options > 150 and len(forms) > 40, (ran, options, len(forms))
    print(f"{ran} command lines run, {options} options and {len(forms)} forms looked up")


if __name__ == "__main__":
    main()
