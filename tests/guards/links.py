"""Fails if a link in a page leads nowhere, or a page or comment names a file or section that is not there.

usage: links.py SOURCE-FOLDER
Outside addresses are only looked at, never fetched.
"""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from urllib.parse import unquote, urlsplit

IMAGES = (".png", ".svg", ".jpg", ".jpeg", ".gif", ".webp")
LINK = re.compile(r"(!?)\[((?:[^\[\]]|\[[^\]]*\])*)\]\(([^()\s]*(?:\([^()\s]*\)[^()\s]*)*)(?:\s+\"[^\"]*\")?\)")
# What is named in code letters and begins like a path of the source.
NAMED_PATH = re.compile(r"`((?:src|tests|docs|schema|sample_library)/[A-Za-z0-9_./-]*)`")
MADE_BY_RUNS = {"sample_library/out"}
# "drawing.md section 5.4", "[drawing.md](drawing.md) section 5.4", "section 5.4"; but "its section 2" is
# one of a paper.
NAMED_SECTION = re.compile(r"(?:([a-z-]+\.md)(?:\]\([^)]*\))?,?\s+)?(?<!its )\bsections?\s+(\d+(?:\.\d+)*)")
# Sources name a page by its path, and break the line where a comment ends.
SOURCES = (".h", ".cpp", ".c", ".py", ".sql", ".txt")
PAGE_IN_SOURCE = re.compile(r"docs/([a-z-]+\.md)(?:,?\s+sections?\s+(\d+(?:\.\d+)*))?")


def tracked(source: Path) -> set[str]:
    """The files of the source; without git all that lie in it but for what builds and runs leave."""
    git = ["git", "-C", str(source), "ls-files", "-z"]
    done = subprocess.run(git, capture_output=True, text=True, check=False) if shutil.which("git") else None
    if done and done.returncode == 0 and done.stdout:
        return {name for name in done.stdout.split("\0") if name and (source / name).exists()}
    found = set()
    for folder, folders, files in os.walk(source):
        folders[:] = [name for name in folders if not re.match(r"\.git$|build|out$|tour$|__pycache__$", name)]
        found |= {os.path.relpath(os.path.join(folder, name), source) for name in files}
    return found


def split_code(text: str) -> tuple[str, str]:
    """The text without blocks of code, and that without code letters too; lines keep their numbers."""
    lines, fence = [], ""
    for line in text.split("\n"):
        mark = re.match(r"\s*(```+|~~~+)", line)
        if mark and (not fence or line.strip().startswith(fence)):
            fence = "" if fence else mark[1]
            line = ""
        lines.append("" if fence or re.match("    (?![-*0-9])", line) else line)
    prose = "\n".join(lines)
    return prose, re.sub(r"(`+)[^`]*?\1", "", prose)


def headings(prose: str) -> list[str]:
    return [re.sub(r"\s+#+\s*$", "", line[1]).strip() for line in re.finditer(r"^#{1,6}\s+(.*)$", prose, re.MULTILINE)]


def anchors(prose: str) -> set[str]:
    """The anchors of the headings: small letters, no punctuation, hyphens for spaces, a number for a twin."""
    seen: dict[str, int] = {}
    found = set()
    for heading in headings(prose):
        words = LINK.sub(r"\2", heading)
        slug = re.sub(r"[^\w\- ]", "", words.lower()).replace(" ", "-")
        found.add(f"{slug}-{seen[slug]}" if slug in seen else slug)
        seen[slug] = seen.get(slug, 0) + 1
    return found


def sections(prose: str) -> set[str]:
    return {number[1] for heading in headings(prose) if (number := re.match(r"(\d+(?:\.\d+)*)\.?\s", heading))}


def faults_in_sources(sources: dict[str, str], pages: dict[str, str]) -> list[str]:
    """The pages and sections that comments name, and that are not there."""
    there = {page: sections(split_code(text)[0]) for page, text in pages.items()}
    faults = []
    for name, text in sources.items():
        for page, section in PAGE_IN_SOURCE.findall(re.sub(r"\n\s*(//+|#|\*)\s*", " ", text)):
            if f"docs/{page}" not in there or section and section not in there[f"docs/{page}"]:
                faults.append(f"{name}: docs/{page} {'section ' + section if section else ''} is not there")
    return faults


def faults_of(pages: dict[str, str], files: set[str]) -> list[str]:
    """What is wrong with these pages (path: text) in a source of these files."""
    code = {page: split_code(text) for page, text in pages.items()}
    folders = {os.path.dirname(name[:end]) for name in files for end in range(len(name)) if name[end] == "/"}
    folders |= {os.path.dirname(name) for name in files}
    faults, leads, used = [], {page: set() for page in pages}, set()

    def check_link(page: str, where: str, target: str) -> None:
        if re.match(r"[a-zA-Z][a-zA-Z0-9+.-]*:|//", target):
            parts = urlsplit(target)
            if parts.scheme != "https" or not re.fullmatch(r"([a-z0-9-]+\.)+[a-z]{2,}", parts.netloc):
                faults.append(f"{where}: {target} is no address that begins with https://")
            return
        path, _, anchor = target.partition("#")
        goal = os.path.normpath(os.path.join(os.path.dirname(page), unquote(path))) if path else page
        if goal not in files and goal not in folders:
            faults.append(f"{where}: {target} is not there")
            return
        leads[page].add(goal)
        used.add(goal)
        if anchor and (goal not in code or anchor not in anchors(code[goal][0])):
            faults.append(f"{where}: {goal} has no heading #{anchor}")

    for page, (prose, plain) in code.items():
        def line_of(text: str, found: re.Match) -> str:
            return f"{page}:{text.count(chr(10), 0, found.start()) + 1}"

        for found in LINK.finditer(plain):
            check_link(page, line_of(plain, found), found[3])
            # A picture that is a link stands in the words of the link.
            for inner in LINK.finditer(found[2]):
                check_link(page, line_of(plain, found), inner[3])
        if re.search(r"<(img|a)\s", plain) or re.search(r"^\s*\[[^\]]+\]:\s", plain, re.MULTILINE):
            faults.append(f"{page}: a link in a form that this guard does not read; write [words](target)")
        for found in NAMED_PATH.finditer(prose):
            name = found[1].rstrip("/")
            # A program that the build makes is named without the ending of its source.
            if not {name, name + ".cpp"} & (files | folders | MADE_BY_RUNS):
                faults.append(f"{line_of(prose, found)}: {found[1]} is not there")
        for found in NAMED_SECTION.finditer(prose):
            goal = os.path.join("docs", found[1]) if found[1] else page
            if found[1] and goal not in code:
                faults.append(f"{line_of(prose, found)}: {found[1]} is not there")
            elif found[2] not in sections(code[goal][0]) and (found[1] or sections(code[goal][0])):
                faults.append(f"{line_of(prose, found)}: {goal} has no section {found[2]}")

    reached, waiting = set(), ["README.md"]
    while waiting:
        page = waiting.pop()
        if page not in reached:
            reached.add(page)
            waiting += leads.get(page, ())
    for name in sorted(files):
        if name.startswith("docs/") and name.endswith(".md") and name not in reached:
            faults.append(f"{name}: no way of links leads there from README.md")
        if name.startswith("docs/") and name.endswith(IMAGES) and name not in used:
            faults.append(f"{name}: no page shows it")
    return faults


def check_itself() -> None:
    """Small texts with one fault each, so that a guard that sees nothing is seen."""
    good = {"README.md": "# Top\n[a](docs/a.md#two-words) [docs](docs) `docs/a.md`\n![p](docs/p.png)\n```\n[x](no.md)\n```\n",
            "docs/a.md": "# Two words\n## 1. It's `so`, (now)\n## Twin\n## Twin\nsection 1, [a.md](a.md) section 1 "
                         "[s](#1-its-so-now) [t](#twin-1) [up](../README.md#top) [o](https://example.org/x)\n"}
    files = {*good, "docs/p.png", "src/core/grid.h"}
    assert faults_of(good, files) == [], faults_of(good, files)
    for page, more, message in (
            ("README.md", "[b](docs/b.md)", "docs/b.md is not there"),
            ("README.md", "![b](docs/b.png)", "docs/b.png is not there"),
            ("README.md", "[![b](docs/b.png)](docs/a.md)", "docs/b.png is not there"),
            ("README.md", "[b](docs/a.md#three)", "docs/a.md has no heading #three"),
            ("README.md", "[b](docs/p.png#top)", "docs/p.png has no heading #top"),
            ("docs/a.md", "[b](#Twin)", "docs/a.md has no heading #Twin"),
            ("docs/a.md", "[b](#twin-2)", "docs/a.md has no heading #twin-2"),
            ("docs/a.md", "[b](README.md)", "README.md is not there"),
            ("docs/a.md", "[b](http://example.org)", "is no address"),
            ("docs/a.md", "[b](https://exam ple)", None),  # No link to a reader either.
            ("docs/a.md", "[b](https://nowhere/x)", "is no address"),
            ("docs/a.md", "<img src='p.png'>", "a form that this guard does not read"),
            ("docs/a.md", "[b]: p.png", "a form that this guard does not read"),
            ("docs/a.md", "`src/core/gird.h`", "src/core/gird.h is not there"),
            ("docs/a.md", "a paper and its section 2", None),
            ("docs/a.md", "as section 2 says", "docs/a.md has no section 2"),
            ("README.md", "[a.md](docs/a.md) section 1.4", "docs/a.md has no section 1.4")):
        faults = faults_of({**good, page: good[page] + "\n" + more + "\n"}, files)
        if message:
            assert len(faults) == 1 and message in faults[0], (more, faults)
        else:
            assert not faults, (more, faults)
    for more, fault in (("// See docs/a.md section\n// 1.", False), ("/* docs/a.md, section\n * 7. */", True),
                        ("# docs/b.md", True)):
        assert bool(faults_in_sources({"src/core/grid.h": more}, good)) == fault, more
    assert "no way of links" in faults_of({**good, "docs/b.md": ""}, {*files, "docs/b.md"})[0]
    assert "no page shows it" in faults_of(good, {*files, "docs/images/q.png"})[0]


def main() -> None:
    source = Path(sys.argv[1])
    check_itself()
    files = tracked(source)
    pages = {name: (source / name).read_text(encoding="utf-8") for name in files if name.endswith(".md")}
    if len(pages) < 20:
        sys.exit(f"only {len(pages)} pages were found: is the folder right?")
    here = os.path.relpath(os.path.abspath(__file__), source.resolve())  # It holds the broken cases.
    sources = {name: (source / name).read_text(encoding="utf-8") for name in files
               if name.startswith(("src/", "tests/", "schema/")) and name.endswith(SOURCES) and name != here}
    faults = faults_of(pages, files) + faults_in_sources(sources, pages)
    print("\n".join(sorted(faults)))
    print(f"{len(pages)} pages and {len(sources)} sources, {len(faults)} faults")
    sys.exit(bool(faults))


if __name__ == "__main__":
    main()
