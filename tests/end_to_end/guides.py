"""The manual page and the completions, used as a reader and three shells use them.

usage: guides.py PANTILE FOLDER    FOLDER: the guides that the build made
What they must say is taken from the program's own help.
"""

import re
import subprocess
import sys
from pathlib import Path

from needed import needed

for shell in ("bash", "zsh", "fish"):
    needed(shell, program=shell)
needed("groff-base", program="groff")

PANTILE, GUIDES = sys.argv[1], Path(sys.argv[2])


def run(*command: str) -> str:
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0 and not done.stderr, (command, done.returncode, done.stderr)
    return done.stdout


def in_help(*words: str, pattern: str) -> list[str]:
    return re.findall(pattern, run(PANTILE, *words), re.MULTILINE)


def from_bash(words: list[str]) -> list[str]:
    quoted = " ".join(f"'{word}'" for word in words)
    return run("bash", "--norc", "-c",
               f"source {GUIDES}/pantile.bash; COMP_WORDS=({quoted}); "
               "COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _pantile; printf '%s\\n' \"${COMPREPLY[@]}\"").split("\n")


def from_zsh(words: list[str]) -> list[str]:
    quoted = " ".join(f"'{word}'" for word in words)
    # zsh itself drops what does not begin with the last word.
    offered = run("zsh", "-fc",
                  "compdef() {}; _describe() { print -lr -- ${(P)4} }; _files() { print -l *(N) }; "
                  f"source {GUIDES}/_pantile; words=({quoted}); CURRENT=$#words; _pantile").split("\n")
    return [offer.split(":")[0] for offer in offered if offer.startswith(words[-1])]


def from_fish(words: list[str]) -> list[str]:
    offered = run("fish", "--no-config", "-c",
                  f"source {GUIDES}/pantile.fish; complete -C '{' '.join(words)}'").split("\n")
    return [offer.split("\t")[0] for offer in offered]


def check_completions(commands: list[str]) -> int:
    checked = 0
    for complete in (from_bash, from_zsh, from_fish):
        offered = {word for word in complete(["pantile", ""]) if re.match("^[a-z]", word)}
        assert offered == set(commands), (complete, offered ^ set(commands))
        for command in commands:
            told = set(in_help("help", command, pattern=r"^  (--[a-z0-9-]+)"))
            shared = {"--library", "--json", "--quiet", "--help", "--version"}
            offered = {word.split("=")[0] for word in complete(["pantile", command, "--"]) if word}
            assert offered == told | shared, (complete, command, offered ^ (told | shared))
            checked += len(offered)
        for begun, whole in ((["load", "mak"], "make"), (["add", "--fit", "con"], "contain"),
                             (["help", "purg"], "purge"), (["--library", "x.db", "fin"], "find")):
            assert whole in complete(["pantile", *begun]), (complete, begun)
        assert not [word for word in complete(["pantile", "add", "--title", "c"]) if word]
    return checked


def check_manual(commands: list[str]) -> None:
    page = run("groff", "-k", "-man", "-ww", "-Tutf8", "-P-cbou", str(GUIDES / "pantile.1"))
    for heading in ("NAME", "SYNOPSIS", "COMMANDS", "EXIT STATUS", "ENVIRONMENT", "FILES"):
        assert re.search(f"^{heading}$", page, re.MULTILINE), heading
    for command in commands:
        assert re.search(f"^   {command}$", page, re.MULTILINE), command
        for option in in_help("help", command, pattern=r"^  (--[a-z0-9-]+)"):
            assert option in page, (command, option)


def main() -> None:
    listed = run(PANTILE, "--help").split("Commands:")[1].split("For every command")[0]
    commands = re.findall(r"^  ([a-z]+) ", listed, re.MULTILINE)
    assert len(commands) > 20
    checked = check_completions(commands)
    assert checked > 300, checked
    check_manual(commands)
    print(f"{len(commands)} commands in three shells and in the manual")


if __name__ == "__main__":
    main()
